// How much of the crop library is recalled: counted cell by cell for the crops that every grower's list holds, and printed.

import { describe, expect, it } from 'vitest';
import { figureSources, LIBRARY } from '../../sheets-templates/library/library.ts';
import { WORK_RATES } from '../../sheets-templates/library/work-rates.ts';

/** The first 49 crops of the library, whose share is held down. */
const FIRST_CROPS: readonly string[] = [
  'Onion, bulb',
  'Onion, bunching',
  'Shallot',
  'Garlic',
  'Leek',
  'Lettuce, head',
  'Salad mix, baby leaf',
  'Spinach',
  'Chard',
  'Arugula',
  'Kale',
  'Collards',
  'Cabbage',
  'Broccoli',
  'Cauliflower',
  'Brussels sprouts',
  'Kohlrabi',
  'Bok choy',
  'Napa cabbage',
  'Radish',
  'Salad turnip',
  'Storage radish',
  'Rutabaga',
  'Beet',
  'Carrot',
  'Parsnip',
  'Potato',
  'Sweet potato',
  'Tomato',
  'Tomato, cherry',
  'Pepper, sweet',
  'Eggplant',
  'Cucumber',
  'Squash, summer',
  'Squash, winter',
  'Melon',
  'Watermelon',
  'Bean, snap bush',
  'Bean, snap pole',
  'Pea, snap',
  'Sweet corn',
  'Okra',
  'Fennel, bulb',
  'Celery',
  'Celeriac',
  'Parsley',
  'Cilantro',
  'Basil',
  'Dill',
];

const WORK_COLUMNS = ['Picking', 'Packing', 'Weeding', 'Thinning', 'Trellising', 'Cover', 'Cleaning'];

interface Count {
  readonly cells: number;
  readonly recalled: number;
  readonly practice: number;
}

/**
 * Every filled cell of the crops counts once, the low and the high of a range each as a cell of its own; a figure taken
 * over from a relative is recalled. Cells that stand at a default formula are not the library's and do not count.
 */
function countFigures(names: readonly string[]): Count {
  const all = names.flatMap((name) => figureSources(name));
  return {
    cells: all.length,
    recalled: all.filter(({ source }) => source === 'memory').length,
    practice: all.filter(({ source }) => source === 'common practice').length,
  };
}

/** Low, likely and high of each rate of work that the crops use: where a source gives one of the three, two are recalled. */
function countRates(names: readonly string[]): Count {
  const used = new Set(
    names.flatMap((name) =>
      figureSources(name).flatMap((one) => (WORK_COLUMNS.includes(one.column) ? [one.text] : [])),
    ),
  );
  const rates = WORK_RATES.filter(({ work }) => used.has(work));
  const recalled = rates.map(({ source, basis }) => {
    if (source.cite === 'memory' || basis.includes('assumed')) return 3;
    return basis.includes('memory') ? 2 : 0;
  });
  return { cells: rates.length * 3, recalled: recalled.reduce((sum: number, one) => sum + one, 0), practice: 0 };
}

function together(...counts: readonly Count[]): Count {
  return counts.reduce((sum, one) => ({
    cells: sum.cells + one.cells,
    recalled: sum.recalled + one.recalled,
    practice: sum.practice + one.practice,
  }));
}

function share(count: Count): number {
  return (100 * count.recalled) / count.cells;
}

/** The same with names and choices of common practice left out of both sides: measured figures alone. */
function strictShare(count: Count): number {
  return (100 * count.recalled) / (count.cells - count.practice);
}

function said(what: string, count: Count): string {
  return `${what}: ${count.recalled} of ${count.cells} cells recalled, ${share(count).toFixed(1)} %; ${strictShare(count).toFixed(1)} % without ${count.practice} cells of common practice`;
}

describe('what of the library is recalled', () => {
  const first = together(countFigures(FIRST_CROPS), countRates(FIRST_CROPS));
  const names = LIBRARY.map(({ name }) => name);
  const all = together(countFigures(names), countRates(names));

  it('is below 48 % of the cells of the first 49 crops, their rates of work among them', () => {
    process.stdout.write(`${said('first 49 crops', first)}\n${said(`all ${names.length} crops`, all)}\n`);
    expect(FIRST_CROPS.filter((name) => !names.includes(name))).toEqual([]);
    expect(share(first)).toBeLessThan(48);
    expect(strictShare(first)).toBeLessThan(48);
  });

  it('is told of every crop', () => {
    for (const name of names)
      expect(
        figureSources(name).every(({ source }) => source !== ''),
        name,
      ).toBe(true);
  });
});
