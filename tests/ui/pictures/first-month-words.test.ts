// Twelve months said back as they were read.

import { describe, expect, test } from 'vitest';
import { asReadWords } from '../../../ui/browser/first-visit/month-words.ts';
import { MONTH_NAMES } from './month-names.ts';

describe('months as they were read', () => {
  const said = (low: string, high: string, usual: string): string | undefined =>
    asReadWords(
      MONTH_NAMES.map((month) => ({ month, low, high })),
      usual,
    );

  test('are said in the one scale they stand in, whether or not it is the workbook’s', () => {
    expect(said('46', '61', '°F')).toMatch(/^Low and high as read, in °F: January 46 to 61, February 46 to 61, /);
    expect(said('19 °C', '26 °C', '°F')).toMatch(/^Low and high as read, in °C: January 19 to 26, /);
    expect(said('46 °F', '61 °F', '°C')).toMatch(/^Low and high as read, in °F: January 46 to 61, /);
  });

  test('of which some stand in another scale have it at each figure', () => {
    expect(said('-8', '30 °F', '°C')).toMatch(/^Low and high as read: January -8 °C to 30 °F, /);
  });

  test('are not said before all are in', () => {
    expect(said('', '61', '°F')).toBeUndefined();
  });
});
