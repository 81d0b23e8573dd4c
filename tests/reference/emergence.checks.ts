// Days until seedlings come up in trays, as a service prints them for home growers, beside those of a planting raised where the seed
// has the warmth it likes best.

import { isoDate } from '../../engine/index.ts';
import { seasonOf } from '../sheets/season.ts';
import type { Fact, Publication } from './check.ts';
import { numberOf, offOf, readTable, textOf } from './table.ts';

const MONTEREY: Publication = {
  author: 'UC Master Gardeners of Monterey and Santa Cruz Counties',
  year: 'undated, post 9462 of their journal',
  title: 'Starting seeds: weeks to transplant and days to germination by crop',
  publisher: 'University of California Agriculture and Natural Resources',
};

const SOWN = '2027-03-15';
const rows = readTable('emergence-chart');
const crops = rows.map((row) => textOf(row, 'crop'));

const season = seasonOf(
  {
    Varieties: crops.map((crop) => ({ Variety: crop, Crop: crop })),
    Plantings: crops.map((crop) => ({
      Planting: crop,
      Variety: crop,
      Start: 'cells',
      Sown: SOWN,
      'Planted out': '2027-05-15',
    })),
  },
  { Latitude: '37' },
);

function daysUp(crop: string): number {
  const [up, sown] = ['Emergence', 'Sown'].map((column) => Number(season.value('Plantings', crop, column)));
  return isoDate(sown ?? Number.NaN) === SOWN ? (up ?? Number.NaN) - (sown ?? Number.NaN) : Number.NaN;
}

export const facts: readonly Fact[] = rows.map((row): Fact => {
  const crop = textOf(row, 'crop');
  const [from, to] = [numberOf(row, 'from_days'), numberOf(row, 'to_days')];
  return {
    kind: 'published',
    fact: `days until ${crop.toLowerCase()} comes up in trays`,
    unit: 'd',
    source: MONTEREY,
    at: 'chart: days to germination',
    points: [
      {
        what: `middle of ${from} to ${to} days`,
        given: (from + to) / 2,
        computed: () => daysUp(crop),
        tolerance: (to - from) / 2,
        ...offOf(row),
      },
    ],
  };
});
