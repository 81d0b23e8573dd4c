// Amounts of plantings chosen on a farm of one bed and two plantings, against every pair of lengths tried in the workbook itself.

import { beforeAll, describe, expect, test } from 'vitest';
import { type Command, figureIn, numberOf, rowId, rowNamed, type Workbook } from '../../engine/index.ts';
import { chooseAmounts } from '../../sheets-templates/index.ts';
import { linearSolver } from '../../ui/linear-solver.ts';
import { seasonOf } from './season.ts';

const FEET = 30;
const STEP = 5;

describe('a farm of one bed', () => {
  let workbook: Workbook;
  beforeAll(() => {
    const planting = (name: string, variety: string, more: Readonly<Record<string, string>>) => ({
      Planting: name,
      Variety: variety,
      Bed: 'Only',
      'Bed length used': '15 ft',
      ...more,
    });
    workbook = seasonOf({
      Beds: [{ Bed: 'Only', Length: `${FEET} ft` }],
      Varieties: [
        { Variety: 'Root', Crop: 'Carrot' },
        { Variety: 'Leaf', Crop: 'Lettuce, head' },
      ],
      Plantings: [
        planting('Roots', 'Root', { Sown: '2027-05-01', Price: '3 USD/lb' }),
        planting('Leaves', 'Leaf', { 'Planted out': '2027-05-15', Price: '2 USD/lb' }),
      ],
    }).book.workbook;
  });

  const lengths = (roots: number, leaves: number): readonly Command[] =>
    [['Roots', roots] as const, ['Leaves', leaves] as const].map(([name, number]) => ({
      command: 'put cell',
      sheet: 'plantings',
      row: rowId(workbook, 'plantings', rowNamed(workbook, 'plantings', name) ?? 0),
      column: 'bed-length-used',
      content: { number, unit: 'ft' },
    }));
  const total = (book: Workbook, column: string): number =>
    numberOf(figureIn(book, { figure: 'formula', formula: `SUM(Plantings[${column}])` })) ?? Number.NaN;
  const tried = (commands: readonly Command[]): Workbook => {
    const branch = workbook.branch();
    const done = branch.do(commands, { code: 'trial', parts: {} });
    if (done.refused) throw new Error(done.why);
    return branch;
  };

  test('no pair of lengths within the bed has more margin than the one chosen', () => {
    const act = chooseAmounts(workbook, linearSolver, { goal: 'margin', within: ['beds'] });
    if (!act.ok) throw new Error(act.why);
    const chosen = total(tried(act.commands), 'Margin');
    const margins: number[] = [];
    for (let roots = STEP; roots <= FEET; roots += STEP) {
      for (let leaves = STEP; roots + leaves <= FEET; leaves += STEP)
        margins.push(total(tried(lengths(roots, leaves)), 'Margin'));
    }
    expect(Math.max(...margins)).toBeGreaterThan(total(workbook, 'Margin') - 1e-9);
    // Stations are whole, so margins grow with length but nearly; by 3 % at these lengths.
    expect(chosen).toBeGreaterThan(Math.max(...margins) * 0.97);
    expect(act.chosen?.heldBackBy[0]?.name).toContain('the beds in the week of');
    expect(act.chosen?.heldBackBy[0]?.more).toBe('a foot more');
  });

  test('an empty Demand is no limit: the prices of Plantings tell what is earned, and it says so', () => {
    const bare = chooseAmounts(workbook, linearSolver);
    const byPrices = chooseAmounts(workbook, linearSolver, {
      goal: 'margin',
      within: ['beds', 'hands', 'bench', 'stores'],
    });
    if (!bare.ok || !byPrices.ok) throw new Error('no choice');
    expect(bare.chosen?.lengths).toEqual(byPrices.chosen?.lengths);
    expect(bare.chosen?.gain).toMatch(/at the prices of Plantings since Demand is empty$/);
  });

  test('what outgrows its bed has none any more, and is told', () => {
    const act = chooseAmounts(workbook, linearSolver, { goal: 'margin', within: [] });
    if (!act.ok) throw new Error(act.why);
    expect(act.said).toMatch(/2 are longer than the beds they had: split them/);
    expect(total(tried(act.commands), 'Bed length used')).toBeCloseTo(2 * 3 * 15 * 0.3048, 6);
    expect(act.commands.filter((one) => one.command === 'put cell' && one.column === 'bed')).toHaveLength(2);
  });

  test('for the least hours the margin there is is earned again', () => {
    const act = chooseAmounts(workbook, linearSolver, { goal: 'hours', within: ['beds'] });
    if (!act.ok) throw new Error(act.why);
    const branch = tried(act.commands);
    expect(total(branch, 'Hours')).toBeLessThanOrEqual(total(workbook, 'Hours'));
    expect(total(branch, 'Margin')).toBeGreaterThan(total(workbook, 'Margin') * 0.9);
  });
});

test('where nothing has a price, or nothing is planted, it says so', () => {
  const said = (plantings: readonly Readonly<Record<string, string>>[]): string => {
    const rows = { Varieties: [{ Variety: 'Root', Crop: 'Carrot' }], Plantings: plantings };
    const act = chooseAmounts(seasonOf(rows).book.workbook, linearSolver);
    return act.ok ? act.said : act.why;
  };
  expect(said([])).toBe('There are no plantings yet: enter some in Plantings first.');
  expect(said([{ Planting: 'Roots', Variety: 'Root', Sown: '2027-05-01' }])).toMatch(/^No planting has a price yet/);
});
