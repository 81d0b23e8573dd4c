// A percent sign stands at its figure wherever it is written, in the panel of a row as in the sentence beside it.

import { expect, test } from 'vitest';
import { unitBehind, withUnit } from '../../ui/browser/store/shown.ts';

test('a percent sign stands at its figure, any other unit apart from it', () => {
  expect(`223${unitBehind('%')}`).toBe('223%');
  expect(withUnit('223', '%')).toBe('223%');
  expect(`12,5${unitBehind('cm')}`).toBe('12,5 cm');
  expect(withUnit('12,5', 'cm')).toBe('12,5 cm');
});
