// Cells gathered once for all formulas that read them: what they give is what each formula would gather for itself, whatever
// changes on the way, in whichever branch, and whether many rows are looked at or few in between.

import { expect, test } from 'vitest';
import type { Frame } from '../../engine/calculation/frame.ts';
import { cellKernel } from '../../engine/calculation/kernels/kept-cells.ts';
import type { Kernel, Vector } from '../../engine/calculation/kernels/vector.ts';
import { Layout } from '../../engine/calculation/layout.ts';
import { BLANK, FILLED } from '../../engine/values/column.ts';
import { emptyFrame } from './frames.ts';

/** Weeks that lead to lots, and lots to what they are of: three of each. */
function small() {
  const layout = new Layout();
  const [weeks, lots, kinds] = [layout.addTable('weeks'), layout.addTable('lots'), layout.addTable('kinds')];
  const lot = layout.addColumn(weeks, 'lot', true);
  const kind = layout.addColumn(lots, 'kind', true);
  const mass = layout.addColumn(kinds, 'mass', false);
  const frame = emptyFrame(layout);
  for (const table of [weeks, lots, kinds]) frame.addRows(table, 3);
  [2, 0, 1].forEach((to, row) => {
    frame.write(lot, row, to, FILLED);
    frame.write(kind, row, to, FILLED);
    frame.write(mass, row, (row + 1) * 10, FILLED);
  });
  const make = (): Kernel => cellKernel(layout, [lot, kind, mass]);
  return { layout, lot, kind, mass, frame, one: make(), other: make() };
}

function all(kernel: Kernel, frame: Frame, from = 0, count = 3): Vector {
  return kernel({ frame, rows: undefined, from, count });
}

function told({ values, states, at, clean }: Vector, count = 3): string {
  const said = (i: number) => (clean || states[i] === FILLED ? `${values[i]}` : '-');
  return Array.from({ length: count }, (_, i) => said(at + i)).join(' ');
}

test('formulas that read through the same links are given the very same cells, for as long as nothing changes', () => {
  const { frame, one, other } = small();
  // Week 0 leads to lot 2, that to kind 1.
  expect(told(all(one, frame))).toBe('20 30 10');
  expect(all(other, frame)).toBe(all(one, frame));
});

test('a change of a link, of a link on the way or of a cell is seen, blanks too', () => {
  const { frame, lot, kind, mass, one, other } = small();
  all(one, frame);
  frame.write(mass, 1, 25, FILLED);
  expect(told(all(other, frame))).toBe('25 30 10');
  frame.write(kind, 2, 0, FILLED);
  expect(told(all(one, frame))).toBe('10 30 10');
  frame.write(lot, 1, 1, FILLED);
  expect(told(all(other, frame))).toBe('10 10 10');
  frame.write(kind, 1, 0, BLANK);
  expect(told(all(one, frame))).toBe('10 - -');
  frame.ownColumn(mass).put(0, 11, FILLED);
  frame.ownColumn(mass).touched();
  expect(told(all(other, frame))).toBe('11 - -');
});

test('branches that differ are each given their own', () => {
  const { frame, mass, one, other } = small();
  const branch = frame.branch();
  branch.write(mass, 1, 99, FILLED);
  expect(told(all(one, frame))).toBe('20 30 10');
  expect(told(all(other, branch))).toBe('99 30 10');
  expect(told(all(one, frame))).toBe('20 30 10');
});

test('other rows side by side are gathered anew; one row, or rows that are listed, disturb nothing', () => {
  const { frame, one, other } = small();
  expect(told(all(one, frame, 1, 2), 2)).toBe('30 10');
  const kept = all(other, frame);
  expect(told(all(one, frame, 1, 1), 1)).toBe('30');
  expect(told(one({ frame, rows: Int32Array.of(2, 0), from: 0, count: 2 }), 2)).toBe('10 20');
  expect(told(kept)).toBe('20 30 10');
});

test('links of the rows themselves are kept as doubles, and doubles are read where they lie', () => {
  const { layout, frame, lot, mass } = small();
  const [one, other] = [cellKernel(layout, [lot]), cellKernel(layout, [lot])];
  expect(told(all(one, frame))).toBe('2 0 1');
  expect(all(other, frame)).toBe(all(one, frame));
  frame.write(lot, 0, 1, FILLED);
  expect(told(all(other, frame))).toBe('1 0 1');
  expect(all(cellKernel(layout, [mass]), frame).values).toBe(frame.column(mass).values);
});
