// A season whose first questions are half answered, told from one that is begun in earnest.

import { describe, expect, test } from 'vitest';
import { message } from '../../../engine/index.ts';
import { bedCommands } from '../../../ui/browser/first-visit/first-beds.ts';
import { cropsFound, toggleCrop } from '../../../ui/browser/first-visit/first-crops.ts';
import { hasOnlyFirstAnswers, isHalfWay } from '../../../ui/browser/first-visit/half-way.ts';
import { demoBook } from '../../browser/workbook-page.ts';
import { type Season, seasonOf } from '../../sheets/season.ts';

function tick(season: Season, name: string): void {
  const book = season.book.workbook;
  const crop = cropsFound(book, name)[0];
  if (crop === undefined) throw new Error(`The library has no ${name}.`);
  const { commands, said } = toggleCrop(book, crop);
  expect(book.do(commands, said).refused).toBe(false);
}

function type(season: Season, sheet: string, row: string, column: string, entry: string): void {
  const command = { command: 'set cell', sheet, row, column, entry } as const;
  expect(season.book.workbook.do([command], message('trial')).refused).toBe(false);
}

describe('a season of first answers', () => {
  test('is half way with a latitude and crops, and no longer once climate and beds are there too', () => {
    const season = seasonOf({});
    const book = season.book.workbook;
    type(season, 'farm', 'only', 'latitude', '51.5');
    tick(season, 'kale');
    tick(season, 'carrot');
    expect(isHalfWay(book)).toBe(true);
    type(season, 'farm', 'only', 'average-last-frost', '20 Apr 2027');
    expect(isHalfWay(book)).toBe(true);
    expect(book.do(bedCommands(book, 4), message('trial')).refused).toBe(false);
    expect(isHalfWay(book)).toBe(false);
    expect(hasOnlyFirstAnswers(book)).toBe(true);
  });

  test('is more than that once anything else is typed', () => {
    const others: readonly ((season: Season) => void)[] = [
      (season) => type(season, 'plantings', plantingOf(season), 'in-row-spacing', '8 in'),
      (season) => type(season, 'crops', 'kale', 'in-row-spacing', '8 in'),
      (season) => {
        const record = {
          command: 'insert row',
          sheet: 'records',
          entries: { planting: 'Kale', what: 'sown' },
        } as const;
        expect(season.book.workbook.do([record], message('trial')).refused).toBe(false);
      },
    ];
    for (const other of others) {
      const season = seasonOf({});
      tick(season, 'kale');
      expect(isHalfWay(season.book.workbook)).toBe(true);
      other(season);
      expect(hasOnlyFirstAnswers(season.book.workbook)).toBe(false);
      expect(isHalfWay(season.book.workbook)).toBe(false);
    }
  });

  test('is not the demo farm', () => {
    expect(hasOnlyFirstAnswers(demoBook().workbook)).toBe(false);
  });
});

function plantingOf({ book }: Season): string {
  const [row] = book.workbook.data().rows.plantings ?? [];
  return row?.id ?? '';
}
