// The page on functions says what the functions are: it is made from them. `npx vitest run tests/functions/page.test.ts -u`
// writes it anew after a change.

import { expect, test } from 'vitest';
import { functionsPage } from '../../engine/functions/page.ts';

test('FUNCTIONS.md is what the functions say of themselves', async () => {
  await expect(functionsPage()).toMatchFileSnapshot('../../engine/functions/FUNCTIONS.md');
});
