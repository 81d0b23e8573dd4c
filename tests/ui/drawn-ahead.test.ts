// Seasons drawn before anyone asked: handed over for the order they are of, and for no other.

import { expect, test } from 'vitest';
import { type Command, Draws, rows, uncertainInputs, type Workbook } from '../../engine/index.ts';
import { DrawnAhead } from '../../ui/browser/what-if/drawn-ahead.ts';
import type { SeasonsOrder } from '../../ui/browser/what-if/draws-messages.ts';
import { streams } from '../../ui/chance.ts';
import { openFarm } from '../document/farm.ts';

const ORDER: SeasonsOrder = {
  figures: [{ figure: 'formula', formula: 'SUM(Plantings[Length])' }],
  weekly: [],
  from: 5,
  until: 25,
  seed: 3,
};

function farm(): Workbook {
  const workbook = openFarm();
  const row = workbook.document.rowIdOf('plantings', rows(workbook, 'plantings')[0] ?? 0) ?? '';
  const command: Command = { command: 'set cell', sheet: 'plantings', row, column: 'length', entry: '25..35 ft' };
  workbook.do([command], { code: 'work', parts: {} });
  return workbook;
}

function drawsOf(workbook: Workbook, { figures, weekly, from, until, seed }: SeasonsOrder): Draws {
  const inputs = uncertainInputs(workbook, ['plantings']);
  return new Draws(workbook, { inputs, asked: { figures, weekly }, from, until }, streams(seed));
}

test('what was drawn ahead is drawn on from there, and gives what is drawn at once', () => {
  const workbook = farm();
  const ahead = new DrawnAhead();
  const draws = drawsOf(workbook, ORDER);
  draws.step(7);
  ahead.keep(ORDER, draws);
  const taken = ahead.take(structuredClone(ORDER));
  expect(taken?.done).toBe(7);
  taken?.step(100);
  const atOnce = drawsOf(farm(), ORDER);
  atOnce.step(100);
  expect(taken?.result()).toEqual(atOnce.result());
  expect(new Set(atOnce.result().figures[0]?.values).size).toBe(20);
  // Whoever took it has drawn it to its end.
  expect(ahead.take(ORDER)).toBeUndefined();
});

test.each<Partial<SeasonsOrder>>([
  { seed: 4 },
  { from: 0 },
  { until: 26 },
  { figures: [{ figure: 'formula', formula: 'MAX(Plantings[Length])' }] },
])('of another order, %o, nothing was drawn', (other) => {
  const ahead = new DrawnAhead();
  ahead.keep(ORDER, drawsOf(farm(), ORDER));
  expect(ahead.take({ ...ORDER, ...other })).toBeUndefined();
  expect(ahead.take(ORDER)).toBeUndefined();
});
