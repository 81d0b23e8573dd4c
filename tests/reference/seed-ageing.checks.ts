// Germination of seed kept for months in known air, as the Department of Agriculture measured it, beside the viability equation with
// the library's constants and oil. Lots of one kind differ: a single test of a hundred seeds lies within ten of the next.

import { seedMoisture } from '../../engine/agronomy/seed-moisture.ts';
import { seedViability } from '../../engine/agronomy/seed-viability.ts';
import type { Fact, Publication } from './check.ts';
import { numberOf, offOf, type Row, readTable, textOf } from './table.ts';
import { cropFigure } from './workbook.ts';

const HANDBOOK_506: Publication = {
  author: 'Justice, O. L. & Bass, L. N.',
  year: 1978,
  title: 'Principles and practices of seed storage (Agriculture Handbook 506)',
  publisher: 'U.S. Department of Agriculture, Washington',
};

/** Percent: two tests of one lot. */
const TWO_TESTS = 10;

function germinationAfter(row: Row): number {
  const crop = textOf(row, 'crop');
  const [ke, cw, ch, cq] = ['KE', 'CW', 'CH', 'CQ'].map((column) => cropFigure(crop, column));
  const temperature = numberOf(row, 'degC');
  const moisture = seedMoisture(numberOf(row, 'humidity') / 100, temperature, cropFigure(crop, 'Seed oil') / 100);
  const before = numberOf(row, 'before') / 100;
  const [a, b, c, d] = [ke, cw, ch, cq].map((constant) => constant ?? Number.NaN);
  return (
    100 *
    seedViability(
      before,
      numberOf(row, 'days'),
      moisture,
      temperature,
      a ?? Number.NaN,
      b ?? Number.NaN,
      c ?? Number.NaN,
      d ?? Number.NaN,
    )
  );
}

const rows = readTable('seed-storage-506');
const crops = [...new Set(rows.map((row) => textOf(row, 'crop')))];

export const facts: readonly Fact[] = crops.map(
  (crop): Fact => ({
    kind: 'published',
    fact: `germination of ${crop.toLowerCase()} seed after months in store`,
    unit: '%',
    source: HANDBOOK_506,
    at: 'Table 13, germination after 110 and 250 days by temperature and humidity',
    points: rows
      .filter((row) => textOf(row, 'crop') === crop)
      .map((row) => ({
        what: `from ${textOf(row, 'before')} %, ${textOf(row, 'days')} days at ${textOf(row, 'degC')} C and ${textOf(row, 'humidity')} % humidity`,
        given: numberOf(row, 'after'),
        computed: () => germinationAfter(row),
        tolerance: TWO_TESTS,
        ...offOf(row),
      })),
  }),
);
