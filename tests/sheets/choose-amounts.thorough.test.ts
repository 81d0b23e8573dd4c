// Amounts of plantings chosen on a farm of one bed and two plantings, against every pair of lengths tried in the workbook itself.

import { beforeAll, describe, expect, test } from 'vitest';
import { demoFarm } from '../../demo/farm.ts';
import {
  type Command,
  cellView,
  figureIn,
  noteOn,
  numberOf,
  rowId,
  rowNamed,
  rows,
  type Workbook,
} from '../../engine/index.ts';
import { type ChooseWish, chooseAmounts, SEASON } from '../../sheets-templates/index.ts';
import { linearSolver } from '../../ui/linear-solver.ts';
import { started } from '../book.ts';
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
    expect(bare.chosen?.gain).toMatch(/, at the prices of Plantings since Demand is empty/);
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
    expect(total(branch, 'Margin')).toBeGreaterThanOrEqual(total(workbook, 'Margin') - 0.01);
  });
});

test.each([
  ['us', 'ft', 41, 4, 1],
  ['si', 'm', 9, 2, 0.2],
] as const)('no two lengths of %s sold by Demand earn more than those chosen', (units, unit, bed, wanted, step) => {
  const planting = { Bed: 'Only', 'Bed length used': `${bed / 2} ${unit}` };
  const rows = {
    Beds: [{ Bed: 'Only', Length: `${bed} ${unit}` }],
    Outlets: [{ Outlet: 'Stall', From: '2027-06-01', Until: '2027-10-31' }],
    Products: [
      { Product: 'Roots', Crop: 'Carrot' },
      { Product: 'Leaves', Crop: 'Lettuce, head' },
    ],
    Demand: [
      { Outlet: 'Stall', Product: 'Roots', Weight: `${wanted} lb`, Price: '3 USD/lb' },
      { Outlet: 'Stall', Product: 'Leaves', Weight: `${2 * wanted} lb`, Price: '2 USD/lb' },
    ],
    Varieties: [
      { Variety: 'Root', Crop: 'Carrot' },
      { Variety: 'Leaf', Crop: 'Lettuce, head' },
    ],
    Plantings: [
      { Planting: 'Roots', Variety: 'Root', Sown: '2027-05-01', ...planting },
      { Planting: 'Leaves', Variety: 'Leaf', 'Planted out': '2027-05-15', ...planting },
    ],
  };
  const { workbook } = seasonOf(rows, { Wage: '12 USD/h' }, { units }).book;
  const act = chooseAmounts(workbook, linearSolver);
  if (!act.ok) throw new Error(act.why);
  const earned = (commands: readonly Command[]): number =>
    workbook.onBranch((branch) => {
      if (branch.do(commands, { code: 'trial', parts: {} }).refused) throw new Error('refused');
      const formula = 'SUM(Plantings[Sales by outlets]) - SUM(Plantings[Costs])';
      return numberOf(figureIn(branch, { figure: 'formula', formula })) ?? Number.NaN;
    });
  const ids = ['Roots', 'Leaves'].map((name) =>
    rowId(workbook, 'plantings', rowNamed(workbook, 'plantings', name) ?? 0),
  );
  const ofLengths = (lengths: readonly number[]): number =>
    earned(
      lengths.map((length, i) => ({
        command: 'put cell',
        sheet: 'plantings',
        row: ids[i] ?? '',
        column: 'bed-length-used',
        content: { number: Number(length.toFixed(1)), unit },
      })),
    );
  let most = Number.NEGATIVE_INFINITY;
  for (let roots = step; roots < bed; roots += step) {
    for (let leaves = step; roots + leaves <= bed + 1e-9; leaves += step)
      most = Math.max(most, ofLengths([roots, leaves]));
  }
  expect(most).toBeGreaterThan(ofLengths([bed / 2, bed / 2]));
  expect(earned(act.commands)).toBeGreaterThan(most - 0.01);
});

describe('the demo farm, which sells some by price and some by outlets alone', () => {
  let plan: Workbook;
  beforeAll(() => {
    const opened = started(SEASON, demoFarm);
    if (!opened.ok) throw new Error(opened.problems.join('\n'));
    plan = opened.workbook.workbook;
  });

  const MARGIN = 'SUM(Plantings[Margin])';
  const BY_OUTLETS = 'SUM(Plantings[Sales by outlets]) - SUM(Plantings[Costs])';
  const figure = (book: Workbook, formula: string): number =>
    numberOf(figureIn(book, { figure: 'formula', formula })) ?? Number.NaN;
  /** What was said of the branch and of the plan, and what the branch has. */
  const chosen = (wish: ChooseWish, formula: string) => {
    const act = chooseAmounts(plan, linearSolver, wish);
    if (!act.ok) throw new Error(act.why);
    const [, ofBranch = '', ofPlan = ''] =
      /of ([\d.,-]+) USD in the branch, where the plan has ([\d.,-]+) USD/.exec(act.said) ?? [];
    const branch = plan.branch();
    branch.do(act.commands, act.message);
    const said = [ofBranch, ofPlan].map((one) => Number(one.replaceAll(',', '')));
    const has = [figure(branch, formula), figure(plan, formula)];
    const length = (book: Workbook, name: string): number =>
      figure(book, `SUMIFS(Plantings[Bed length used]; Plantings[Planting]; "${name}")`);
    return { act, branch, said, has, grows: (name: string) => length(branch, name) > length(plan, name) };
  };

  test.each([
    ['margin', ['beds', 'hands', 'bench', 'stores'], MARGIN, 'a Margin of'],
    ['margin', ['beds', 'hands', 'bench', 'stores', 'demand'], BY_OUTLETS, 'Sales by outlets less Costs of'],
    ['hours', ['beds', 'hands', 'bench', 'stores'], MARGIN, 'a Margin of'],
    ['hours', ['beds', 'hands', 'bench', 'stores', 'demand'], BY_OUTLETS, 'Sales by outlets less Costs of'],
  ] as const)('for the %s within %j what is said is what the branch has', (goal, within, formula, word) => {
    const { act, branch, said, has } = chosen({ goal, within }, formula);
    expect(act.said).toContain(word);
    expect(said[0]).toBeCloseTo(has[0] ?? Number.NaN, 2);
    expect(said[1]).toBeCloseTo(has[1] ?? Number.NaN, 2);
    if (goal === 'margin') expect(has[0]).toBeGreaterThan(has[1] ?? Number.NaN);
    else {
      // The margin there is now is there in the branch too.
      expect(has[0]).toBeGreaterThan((has[1] ?? Number.NaN) - 0.01);
      expect(figure(branch, 'SUM(Plantings[Hours])')).toBeLessThan(figure(plan, 'SUM(Plantings[Hours])'));
    }
  });

  test('no more is grown of what outlets take all they want of already, Demand kept within or not', () => {
    const { grows } = chosen({ goal: 'margin', within: ['beds', 'hands', 'bench', 'stores'] }, MARGIN);
    // Their outlets are short of nothing in those weeks; spinach has a price of its own.
    for (const name of ['Salad 8', 'Arugula 9', 'Bunched radish 7']) expect(grows(name)).toBe(false);
    expect(grows('Spinach')).toBe(true);
  });
});

// In metres 48 times 0.3048 comes to a speck more than 48 ft.
test.each(['30 ft', '48 ft'])('a planting that becomes as long as its bed of %s stays in it', (bed) => {
  const planting = { Planting: 'Roots', Variety: 'Root', Bed: 'Only', Sown: '2027-05-01', Price: '3 USD/lb' };
  const { workbook } = seasonOf({
    Beds: [{ Bed: 'Only', Length: bed }],
    Varieties: [{ Variety: 'Root', Crop: 'Carrot' }],
    Plantings: [{ ...planting, 'Bed length used': '20 ft' }],
  }).book;
  const act = chooseAmounts(workbook, linearSolver, { goal: 'margin', within: ['beds'] });
  if (!act.ok) throw new Error(act.why);
  expect(act.chosen?.lengths).toEqual([{ name: 'Roots', before: '20 ft', after: bed }]);
  expect(act.said).not.toMatch(/longer than the bed/);
  expect(act.commands.filter((one) => one.command === 'put cell' && one.column === 'bed')).toEqual([]);
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

describe('what is named by rows of one’s own and left out', () => {
  const column = { group: '', note: '', formula: '', role: 'entered' } as const;
  const looks = (): Workbook => {
    const planting = { Bed: 'Only', 'Bed length used': '15 ft' };
    const { workbook } = seasonOf({
      Beds: [{ Bed: 'Only', Length: '30 ft' }],
      Varieties: [
        { Variety: 'Root', Crop: 'Carrot' },
        { Variety: 'Leaf', Crop: 'Lettuce, head' },
      ],
      Plantings: [
        { Planting: 'Roots', Variety: 'Root', Sown: '2027-05-01', Price: '3 USD/lb', ...planting },
        { Planting: 'Leaves', Variety: 'Leaf', 'Planted out': '2027-05-15', Price: '0.01 USD/lb', ...planting },
      ],
    }).book;
    const looked = (look: string, name: string): Command => ({
      command: 'insert row',
      sheet: 'looks',
      entries: { look, planting: name },
    });
    const done = workbook.do(
      [
        {
          command: 'put sheet',
          sheet: {
            id: 'looks',
            name: 'Looks',
            question: 'Own sheets',
            about: '',
            rows: { from: 'entry' },
            key: 'look',
            columns: [
              { ...column, id: 'look', name: 'Look', type: { type: 'text' } },
              { ...column, id: 'planting', name: 'Planting', type: { type: 'link', sheet: 'plantings' } },
            ],
            checks: [],
            cautions: [],
          },
        },
        looked('First', 'Leaves'),
        looked('Second', 'Roots'),
        looked('Third', 'Leaves'),
      ],
      { code: 'trial', parts: {} },
    );
    if (done.refused) throw new Error(done.why);
    return workbook;
  };

  test('is no hindrance: what names it is kept aside, counted, and noted on its cell; taken back, all is as before', () => {
    const workbook = looks();
    const before = workbook.data();
    const act = chooseAmounts(workbook, linearSolver, { goal: 'margin', within: ['beds'] });
    if (!act.ok) throw new Error(act.why);
    expect(act.said).toMatch(/ 1 is left out, .* Plantings left out are still named \(Looks: 2 rows\): /);
    expect(workbook.data()).toEqual(before);
    expect(workbook.do(act.commands, act.message)).toMatchObject({ refused: false });
    const [first = '', second = ''] = Array.from(rows(workbook, 'looks'), (slot) => rowId(workbook, 'looks', slot));
    expect(Array.from(rows(workbook, 'looks'), (slot) => cellView(workbook, 'looks', slot, 'planting').text)).toEqual([
      '',
      'Roots',
      '',
    ]);
    expect(noteOn(workbook, 'looks', first, 'planting')).toContain('Leaves');
    expect(noteOn(workbook, 'looks', second, 'planting')).toBe('');
    workbook.undo();
    expect(workbook.data()).toEqual(before);
  });

  test('what is said of it is what the branch has', () => {
    const workbook = looks();
    const act = chooseAmounts(workbook, linearSolver, { goal: 'margin', within: ['beds'] });
    if (!act.ok) throw new Error(act.why);
    const [, ofBranch = ''] = /a Margin of ([\d.,-]+) USD in the branch/.exec(act.said) ?? [];
    workbook.do(act.commands, act.message);
    const has = numberOf(figureIn(workbook, { figure: 'formula', formula: 'SUM(Plantings[Margin])' }));
    expect(Number(ofBranch.replaceAll(',', ''))).toBeCloseTo(has ?? Number.NaN, 2);
  });
});
