// A note that gives a figure of a measured column says in the same sentence in what it is: a grower types from notes.

import { expect, test } from 'vitest';
import type { ColumnDeclaration } from '../../engine/index.ts';
import { inOwnUnits } from '../../engine/queries/own-units.ts';
import { createVocabulary } from '../../engine/units/vocabulary.ts';
import { SEASON } from '../../sheets-templates/index.ts';

const vocabulary = createVocabulary({ currency: 'USD' });

/** What is counted, where a note counts: '60 heads', '19 times in 20', '15 points above the least'. */
const COUNTED = new Set(['plants', 'heads', 'bunches', 'times', 'points']);

/** A figure or several ('12, 13.5', '3 to 4', '20 and 30'), no part of a name ('P2O5') or of a fraction ('1/mass'), and what follows. */
const FIGURES =
  /(?<![\w./-])\d+(?:\.\d+)?(?:(?:,| to| or| and) \d+(?:\.\d+)?)*(?![\d/])\s*([^\s,;:.)]*)[ ]?([^\s,;:.)]*)/g;

/** Sentences that give figures of which none says what it is a figure of. */
function bare(note: string): readonly string[] {
  // What stands in brackets is where a figure comes from: names, years, pages.
  const sentences = note.replace(/\([^)]*\)/g, '').split(/(?<=\.)\s+(?=[A-Z])/);
  return sentences.filter((sentence) => {
    const followed = [...sentence.matchAll(FIGURES)].map(([, next = '', after = '']) => [next, after] as const);
    return followed.length > 0 && !followed.some(([next, after]) => isNamed(next, after));
  });
}

function isNamed(next: string, after: string): boolean {
  // '300 an hour', '2 to 3 a minute', '1000 a square metre'.
  if (/^an?$/.test(next)) return after === 'square' || isUnit(after);
  return COUNTED.has(next) || isUnit(next);
}

function isUnit(word: string): boolean {
  return word !== '' && vocabulary.find(word) !== undefined;
}

function isMeasured({ type }: ColumnDeclaration): boolean {
  return type.type === 'temperature' || (type.type === 'number' && type.unit.us !== '');
}

test('a figure without its unit is found, one with it is not', () => {
  expect(bare('Onions: 3 to 4 is common practice.')).toHaveLength(1);
  expect(bare('Row cover 2 to 4 Cdeg. Tunnel 0 to 2.')).toEqual(['Tunnel 0 to 2.']);
  expect(bare('Of air, 2 to 3 a minute. P, not P2O5. 1/mass of one (Brewster 2008).')).toEqual([]);
});

test.each(['us', 'si'] as const)(
  'every note of a measured column that gives a figure names its unit, in %s units',
  (units) => {
    const found = SEASON.sheets.flatMap((sheet) =>
      sheet.columns
        .filter(isMeasured)
        .flatMap((column) =>
          bare(inOwnUnits(column.note, units)).map((sentence) => `${sheet.name} / ${column.name}: ${sentence}`),
        ),
    );
    expect(found).toEqual([]);
  },
);
