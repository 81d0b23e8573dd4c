// Where a fresh workbook begins.

import { expect, test } from 'vitest';
import { unitsHere } from '../../ui/browser/files/fresh.ts';

test('a fresh workbook has the measures of the country whose language the browser speaks', () => {
  const told = ['en-US', 'en', 'es-US', 'en-GB', 'de', 'fr-CA', 'nl-NL', 'en-AU'].map((locale) => unitsHere(locale));
  expect(told).toEqual(['us', 'us', 'us', 'si', 'si', 'si', 'si', 'si']);
});
