// Curves against spacing say what the sheet says: at today's spacing the sheet's own cells, at any other what the sheet
// would show were it typed, and for a standard sheet what the yield model itself gives.

import { describe, expect, test } from 'vitest';
import { demoFarm } from '../../demo/farm.ts';
import { spacingCurve } from '../../engine/agronomy/best-spacing.ts';
import { cellView, fromCanonical, rowId, type SheetView, sheetView, type Workbook } from '../../engine/index.ts';
import { SEASON } from '../../sheets-templates/index.ts';
import { PLANTING, PLANTINGS } from '../../ui/browser/panels/columns.ts';
import { figureAt, readBed } from '../../ui/browser/panels/read.ts';
import {
  CURVES_WITH_MONEY,
  type CurvePoint,
  curveOf,
  curveReadings,
  curveSentence,
} from '../../ui/browser/panels/spacing/curve.ts';
import { type Study, studying } from '../../ui/browser/panels/spacing/study.ts';
import type { RowAt } from '../../ui/browser/store/selection.ts';
import { columnOf, unitOf } from '../../ui/browser/store/sheets.ts';
import { type Book, started } from '../book.ts';
import { runs } from '../runs.ts';

function openDemo(): Book {
  const opened = started(SEASON, demoFarm);
  if (!opened.ok) throw new Error(opened.problems.join(' '));
  return opened.workbook;
}

const book = openDemo();
const { workbook } = book;
const plantings = plantingsOf(workbook);
const rows = rowsOf(book);

function plantingsOf(of: Workbook): SheetView {
  const sheet = sheetView(of, PLANTINGS);
  if (sheet === undefined) throw new Error('There are no plantings.');
  return sheet;
}

function rowsOf(of: Book): readonly RowAt[] {
  return [...of.rows('Plantings')].map((slot) => ({ slot, id: rowId(of.workbook, PLANTINGS, slot) }));
}

/** The study of a planting, all its parts together. */
function studied(row: RowAt): Study {
  const parts = studying(workbook, plantings, row, CURVES_WITH_MONEY);
  for (;;) {
    const part = parts.next();
    if (part.done) return part.value;
  }
}

/** A figure as shown. */
function shown(slot: number, column: string, of: Workbook = workbook): number {
  return cellView(of, PLANTINGS, slot, column).number ?? Number.NaN;
}

function shownUnit(column: string) {
  const unit = unitOf(columnOf(plantings, column));
  if (unit === undefined) throw new Error(`${column} has no unit.`);
  return unit;
}

function firstRow(of: readonly RowAt[]): RowAt {
  const [first] = of;
  if (first === undefined) throw new Error('There is no row.');
  return first;
}

describe('the curve of every planting of the demo farm', () => {
  test("passes through the sheet's own figures at today's spacing", () => {
    let met = 0;
    for (const [at, row] of rows.entries()) {
      const now = shown(row.slot, PLANTING.spacing);
      // Of every sixth the whole curve is drawn, as the page does; of the others the point that is looked at.
      const points =
        at % runs(6, 1) === 0 ? studied(row).points : [...curveOf(workbook, plantings, row, [now], CURVES_WITH_MONEY)];
      const point = points.find(({ spacing }) => Math.abs(spacing - now) < 1e-6);
      expect(point).toBeDefined();
      for (const column of CURVES_WITH_MONEY) {
        const cell = cellView(workbook, PLANTINGS, row.slot, column).number;
        if (cell === undefined) continue;
        met += 1;
        const drawn = point?.figures.get(column) ?? Number.NaN;
        expect(Math.abs(drawn - cell)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(cell)));
      }
    }
    expect(met).toBeGreaterThan(rows.length * 3);
  });

  test('leaves the workbook as it was', () => {
    const margins = () => rows.map(({ slot }) => cellView(workbook, PLANTINGS, slot, PLANTING.margin).value);
    const before = margins();
    const steps = workbook.history.done.length;
    for (const row of rows.slice(0, 3)) studied(row);
    expect(margins()).toEqual(before);
    expect(workbook.history.done.length).toBe(steps);
  });
});

test('a curve is of the workbook as it was when it was begun, whatever is done between its points', () => {
  const other = openDemo();
  const row = firstRow(rowsOf(other));
  const whole = [...curveOf(other.workbook, plantingsOf(other.workbook), row, [6, 8], CURVES_WITH_MONEY)];
  const parts = curveOf(other.workbook, plantingsOf(other.workbook), row, [6, 8], CURVES_WITH_MONEY);
  const first = parts.next().value;
  other.edit([{ edit: 'cell', table: 'Plantings', row: row.slot, column: 'Rows', entry: '1' }]);
  expect([first, parts.next().value]).toEqual(whole);
  const after = [...curveOf(other.workbook, plantingsOf(other.workbook), row, [8], CURVES_WITH_MONEY)];
  expect(after).not.toEqual(whole.slice(1));
});

test('typing another spacing gives what the curve showed for it', () => {
  const other = openDemo();
  const row = firstRow(rowsOf(other));
  const [point] = [...curveOf(other.workbook, plantingsOf(other.workbook), row, [6], CURVES_WITH_MONEY)];
  other.edit([{ edit: 'cell', table: 'Plantings', row: row.slot, column: 'In-row spacing', entry: '6 in' }]);
  for (const column of [PLANTING.stations, PLANTING.mass, PLANTING.yield, PLANTING.seeds, PLANTING.margin]) {
    expect(point?.figures.get(column)).toBeCloseTo(shown(row.slot, column, other.workbook), 9);
  }
});

test('mean mass and stations of an onion bed are those of the yield-density model (Shinozaki & Kira 1956)', () => {
  const slot = book.rowOf('Plantings', 'Keeper clumps') ?? -1;
  const bed = readBed(workbook, slot);
  const variety = figureAt(workbook, PLANTINGS, slot, 'variety') ?? -1;
  const read = (column: string, of: string = PLANTINGS, at: number = slot): number =>
    figureAt(workbook, of, at, column) ?? Number.NaN;
  if (bed === undefined) throw new Error('The bed has no measures.');
  const spacings = [4, 6, 8, 10, 12];
  const model = spacingCurve(
    {
      length: bed.length,
      width: bed.width,
      pattern: bed.pattern,
      plantsPerStation: read('plants-per-station') * read('field-survival'),
      isolated: read('isolated-plant-mass', 'varieties', variety),
      ceiling: read('ceiling-yield', 'varieties', variety),
      squarenessLoss: read('squareness-loss'),
      clumpFactor: read('clump-factor') * read('season-factor'),
      spread: read('diameter-spread'),
      shape: read('shape-factor', 'varieties', variety),
      bands: [],
    },
    spacings.map((inches) => ({ spacing: inches * 0.0254, rows: bed.rows })),
  );
  const points = [
    ...curveOf(workbook, plantings, { slot, id: rowId(workbook, PLANTINGS, slot) }, spacings, CURVES_WITH_MONEY),
  ];
  points.forEach(({ figures }, index) => {
    expect(figures.get(PLANTING.stations)).toBe(model[index]?.stations);
    const mass = fromCanonical(shownUnit(PLANTING.mass), model[index]?.meanMass ?? Number.NaN);
    expect((figures.get(PLANTING.mass) ?? Number.NaN) / mass).toBeCloseTo(1, 9);
  });
});

test('a formula that the grower changed changes the curve', () => {
  const other = openDemo();
  const row = firstRow(rowsOf(other));
  const changed = other.edit([
    { edit: 'formula', table: 'Plantings', column: 'Marketable yield', formula: '[Total yield] * 50%' },
  ]);
  expect(changed.refused).toBe(false);
  const [point] = [...curveOf(other.workbook, plantingsOf(other.workbook), row, [8], CURVES_WITH_MONEY)];
  other.edit([{ edit: 'cell', table: 'Plantings', row: row.slot, column: 'In-row spacing', entry: '8 in' }]);
  expect(point?.figures.get(PLANTING.yield)).toBeCloseTo(shown(row.slot, 'total-yield', other.workbook) / 2, 9);
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

  test('it is read spacing by spacing', () => {
    expect(curveReadings(points, 'Yield', units).slice(0, 2)).toEqual([
      { x: 4, words: '4 in: 60 lb.' },
      { x: 6, words: '6 in: 40 lb.' },
    ]);
    expect(curveReadings(points, 'Mass', units)).toEqual([]);
  });
});

test('a study that is broken off lets its branch go: the next change copies nothing', () => {
  const { workbook: own } = openDemo();
  const row = firstRow(rows);
  const spacings = () => {
    const { program, store } = own.document;
    const column = program.sheet(PLANTINGS)?.column(PLANTING.spacing);
    if (column === undefined) throw new Error('There are no spacings.');
    return store.column(column.def).values;
  };
  const type = (entry: string): void => {
    const cell = { sheet: PLANTINGS, row: row.id, column: PLANTING.spacing, entry };
    expect(own.do([{ command: 'set cell', ...cell }], { code: 'test', parts: {} }).refused).toBe(false);
  };
  type('7 in');
  const before = spacings();
  const parts = studying(own, plantingsOf(own), row, CURVES_WITH_MONEY);
  for (let made = 0; made < 3; made += 1) expect(parts.next().done).toBe(false);
  type('8 in');
  const copied = spacings();
  expect(copied).not.toBe(before);
  const left: Generator<void, Study | undefined> = parts;
  left.return(undefined);
  type('9 in');
  expect(spacings()).toBe(copied);
});
