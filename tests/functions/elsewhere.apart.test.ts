// The list of functions that other spreadsheets have and formulas here have not is fetched by faces once they stand: what is said
// of such a name before and after. Alone in its process, since what is fetched stays.

import { expect, test } from 'vitest';
import { leftOut, loadLeftOut } from '../../engine/functions/elsewhere.ts';
import { answers } from './formulas.ts';

test('a name that is left out is no function, and once the list is here what to use instead is told', async () => {
  expect(leftOut('OFFSET')).toBeUndefined();
  expect(answers(['OFFSET(1; 2)'])[0]).toMatchObject({
    is: 'refused',
    why: expect.stringMatching(/^There is no function/),
  });
  await loadLeftOut();
  expect(leftOut('offset')?.use).toContain('XLOOKUP');
  expect(answers(['OFFSET(1; 2)'])[0]).toMatchObject({
    is: 'refused',
    why: expect.stringMatching(/^There is no OFFSET here\. .* Use instead: .*XLOOKUP/),
  });
  expect(leftOut('SUM')).toBeUndefined();
});
