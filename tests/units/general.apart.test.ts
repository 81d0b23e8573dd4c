// Units in general use before and after their list is fetched: until then no such word is a unit, that one was asked for is
// noted, and nothing else asks for the list.

import { expect, test } from 'vitest';
import { demoFarm } from '../../demo/farm.ts';
import { createVocabulary, loadGeneralUnits, newDocument, Workbook, wantsGeneralUnits } from '../../engine/index.ts';
import { toCanonical } from '../../engine/units/unit.ts';
import { SEASON, templateShelf } from '../../sheets-templates/index.ts';

function openDemo(): Workbook | undefined {
  let last = 0;
  const newId = (): string => `r${++last}`;
  const made = newDocument(SEASON, demoFarm, newId);
  if (!made.ok) return undefined;
  return Workbook.open(made.data, { newId, now: () => 0, actor: 'a', templates: templateShelf() });
}

test('opening the demo farm asks for no general unit', () => {
  expect(openDemo()).toBeDefined();
  expect(wantsGeneralUnits()).toBe(false);
});

test('a word that is no unit anywhere, or none here on purpose, asks for nothing', () => {
  const vocabulary = createVocabulary({ currency: 'EUR' });
  for (const word of ['lb', 'Inches', 'x', 'months', 'newton', 'lb/ft2']) vocabulary.find(word);
  expect(wantsGeneralUnits()).toBe(false);
});

test('a unit of the list is unknown until it is fetched, in a vocabulary that was made before, too', async () => {
  const vocabulary = createVocabulary({ currency: 'EUR' });
  expect(vocabulary.find('rod')).toBeUndefined();
  expect(vocabulary.find('lb/rod')).toBeUndefined();
  expect(wantsGeneralUnits()).toBe(true);
  await loadGeneralUnits();
  expect(wantsGeneralUnits()).toBe(false);
  const rod = vocabulary.find('rod');
  // 1 rod = 16 1/2 ft (NIST Handbook 44, appendix C), and 1 ft = 0.3048 m.
  expect(rod && toCanonical(rod, 1)).toBeCloseTo(16.5 * 0.3048, 12);
  expect(vocabulary.find('lb/rod')?.symbol).toBe('lb/rod');
});
