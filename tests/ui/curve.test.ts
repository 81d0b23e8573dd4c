// Curves against spacing say what the sheet says: at today's spacing the sheet's own cells, at any other what the sheet
// would show were it typed, and for a standard sheet what the yield model itself gives.

import { beforeAll, describe, expect, test } from 'vitest';
import { demoFarm } from '../../demo/farm.ts';
import { spacingCurve } from '../../engine/agronomy/best-spacing.ts';
import { createWorkbook, fromCanonical, type TableView, type Workbook } from '../../engine/index.ts';
import { CURVES, type CurvePoint, curveOf, curveSentence } from '../../ui/browser/row-panel/curve.ts';
import { columnOf, figure, PLANTINGS, readBed, SPACING, unitOf } from '../../ui/browser/row-panel/planting.ts';
import { studyOf } from '../../ui/browser/row-panel/study.ts';

let workbook: Workbook;
let table: TableView;
let rows: readonly number[];

beforeAll(() => {
  const opened = createWorkbook(demoFarm);
  if (!opened.ok) throw new Error(opened.problems.join(' '));
  workbook = opened.workbook;
  const plantings = workbook.table(PLANTINGS);
  if (plantings === undefined) throw new Error('The demo farm has no plantings.');
  table = plantings;
  rows = [...workbook.rows(PLANTINGS)];
});

function shownUnit(column: string) {
  const unit = unitOf(columnOf(table, column));
  if (unit === undefined) throw new Error(`${column} has no unit.`);
  return unit;
}

describe('the curve of every planting of the demo farm', () => {
  test("passes through the sheet's own figures at today's spacing", () => {
    let met = 0;
    for (const row of rows) {
      const { points } = studyOf(workbook, table, row);
      const now = workbook.cell(PLANTINGS, row, SPACING).number;
      const point = points.find(({ spacing }) => Math.abs(spacing - (now ?? Number.NaN)) < 1e-6);
      expect(point).toBeDefined();
      for (const column of CURVES) {
        const cell = workbook.cell(PLANTINGS, row, column).number;
        if (cell === undefined) continue;
        met += 1;
        const drawn = point?.figures.get(column) ?? Number.NaN;
        expect(Math.abs(drawn - cell)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(cell)));
      }
    }
    expect(met).toBeGreaterThan(rows.length * 3);
  });

  test('leaves the workbook as it was', () => {
    const before = rows.map((row) => workbook.cell(PLANTINGS, row, 'Margin').value);
    const undo = workbook.undoState();
    for (const row of rows.slice(0, 3)) studyOf(workbook, table, row);
    expect(rows.map((row) => workbook.cell(PLANTINGS, row, 'Margin').value)).toEqual(before);
    expect(workbook.undoState()).toEqual(undo);
  });
});

test('typing another spacing gives what the curve showed for it', () => {
  const row = rows[0] ?? 0;
  const [point] = curveOf(workbook, table, row, [6]);
  const before = workbook.cell(PLANTINGS, row, SPACING).entry;
  workbook.edit([{ edit: 'cell', table: PLANTINGS, row, column: SPACING, entry: '6 in' }], 'Spacing');
  for (const column of ['Stations', 'Mean plant mass', 'Marketable yield', 'Seeds needed', 'Margin']) {
    expect(point?.figures.get(column)).toBeCloseTo(workbook.cell(PLANTINGS, row, column).number ?? Number.NaN, 9);
  }
  workbook.undo();
  expect(workbook.cell(PLANTINGS, row, SPACING).entry).toBe(before);
});

test('mean mass and stations of an onion bed are those of the yield-density model (Shinozaki & Kira 1956)', () => {
  const row = workbook.rowOf(PLANTINGS, 'Keeper clumps') ?? -1;
  const bed = readBed(workbook, row);
  const variety = figure(workbook, PLANTINGS, row, 'Variety') ?? -1;
  const read = (column: string, of: string = PLANTINGS, at: number = row): number =>
    figure(workbook, of, at, column) ?? Number.NaN;
  if (bed === undefined) throw new Error('The bed has no measures.');
  const spacings = [4, 6, 8, 10, 12];
  const model = spacingCurve(
    {
      length: bed.length,
      width: bed.width,
      pattern: bed.pattern,
      plantsPerStation: read('Plants per station') * read('Field survival'),
      isolated: read('Isolated plant mass', 'Varieties', variety),
      ceiling: read('Ceiling yield', 'Varieties', variety),
      squarenessLoss: read('Squareness loss'),
      clumpFactor: read('Clump factor') * read('Season factor'),
      spread: read('Diameter spread'),
      shape: read('Shape factor', 'Varieties', variety),
      bands: [],
    },
    spacings.map((inches) => ({ spacing: inches * 0.0254, rows: bed.rows })),
  );
  const points = curveOf(workbook, table, row, spacings);
  points.forEach(({ figures }, index) => {
    expect(figures.get('Stations')).toBe(model[index]?.stations);
    const mass = fromCanonical(shownUnit('Mean plant mass'), model[index]?.meanMass ?? Number.NaN);
    expect((figures.get('Mean plant mass') ?? Number.NaN) / mass).toBeCloseTo(1, 9);
  });
});

test('a formula that the grower changed changes the curve', () => {
  const opened = createWorkbook(workbook.declaration());
  if (!opened.ok) throw new Error(opened.problems.join(' '));
  const other = opened.workbook;
  const row = rows[0] ?? 0;
  const changed = other.edit(
    [{ edit: 'formula', table: PLANTINGS, column: 'Marketable yield', formula: '[Total yield] * 50%' }],
    'Half is sold',
  );
  expect(changed.refused).toBe(false);
  const view = other.table(PLANTINGS);
  if (view === undefined) throw new Error('No plantings.');
  const [point] = curveOf(other, view, row, [8]);
  other.edit([{ edit: 'cell', table: PLANTINGS, row, column: SPACING, entry: '8 in' }], 'Spacing');
  expect(point?.figures.get('Marketable yield')).toBeCloseTo(
    (other.cell(PLANTINGS, row, 'Total yield').number ?? Number.NaN) / 2,
    9,
  );
});

describe('the sentence under a curve', () => {
  const points: readonly CurvePoint[] = [4, 6, 8, 12].map((spacing) => ({
    spacing,
    figures: new Map([['Yield', 240 / spacing]]),
  }));
  const units = { spacing: 'in', figure: 'lb' };

  test('says today, closer and wider', () => {
    expect(curveSentence(points, 8, 'Yield', units)).toBe(
      'Now at 8 in, 30 lb; closer at 6 in, 40 lb; wider at 12 in, 20 lb.',
    );
  });

  test('says nothing of a side that is not offered, and nothing at all without a figure', () => {
    expect(curveSentence(points, 12, 'Yield', units)).toBe('Now at 12 in, 20 lb; closer at 8 in, 30 lb.');
    expect(curveSentence(points, 8, 'Mass', units)).toBe('');
  });
});
