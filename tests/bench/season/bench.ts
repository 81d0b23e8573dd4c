// npm run bench -- season: the season template with the demo's plantings copied, at several sizes: what the engine takes in CPU
// time, where an edit's time goes by column, and how cost grows from one size to the next, all beside a
// program written by hand for the same columns (floor/), which is checked equal before and after.

import type { Workbook } from '../../../engine/index.ts';
import { copiedBook } from './copies.ts';
import { commandsOf, EDITS, type EditKind } from './edits.ts';
import { differences } from './floor/agree.ts';
import { type SeasonFloor, seasonFloor } from './floor/floor.ts';
import {
  columnsOnScreen,
  editing,
  type Figure,
  importing,
  importingOnScreen,
  onScreen,
  opening,
  others,
} from './measured.ts';
import { peerFigures } from './peer.ts';
import { sharesOfAll, stepCosts } from './where.ts';

/** Past so many plantings the peer takes minutes. */
const PEER_MOST = 2000;
/** Rows of a large import, taken where there are so many plantings or more. */
const [LARGE_IMPORT, LARGE_FROM] = [20_000, 2000];

interface Measured {
  readonly size: number;
  readonly figures: readonly Figure[];
}

/** Prints each figure as it is measured, then the growth. `dearest`: how many columns are told of each kind of edit. */
export function benchSeason(sizes: readonly number[], dearest: number, withPeer: boolean): void {
  const all = sizes.map((size) => measure(size, dearest, withPeer));
  for (const [index, larger] of all.entries()) {
    const smaller = all[index - 1];
    if (smaller !== undefined) printGrowth(smaller, larger);
  }
}

function measure(size: number, dearest: number, withPeer: boolean): Measured {
  const book = copiedBook(size);
  const { workbook } = book;
  // Edits are first measured with everything asked for, then with what one view shows.
  workbook.recalculateAll();
  const floor = seasonFloor(workbook);
  floor.all();
  agreed(workbook, floor);
  console.log(`\n${size} plantings: ${floor.columnCount} columns of the floor are the workbook’s. CPU time in ms:`);
  console.log(
    `  ${''.padEnd(38)} ${['p50', 'p95', 'floor', 'Dibble/floor'].map((cell) => cell.padStart(12)).join(' ')}`,
  );
  const figures: Figure[] = [];
  const take = (measured: readonly Figure[]): void => {
    figures.push(...measured);
    for (const one of measured) printFigure(one);
  };
  take(opening(book, floor));
  take(others(workbook, floor));
  printShares(workbook, floor);
  for (const kind of EDITS) {
    const { warm, calls } = callsOf(kind, size);
    const own = seasonFloor(workbook);
    own.all();
    take([editing(workbook, own, kind, warm, calls)]);
    agreed(workbook, own);
    if (dearest > 0) printSteps(workbook, kind, size, dearest);
  }
  take(importing(workbook, floor));
  workbook.watch(() => columnsOnScreen(workbook));
  for (const kind of EDITS) {
    const { warm, calls } = callsOf(kind, size);
    take(onScreen(workbook, kind, warm, calls));
  }
  if (size >= LARGE_FROM) {
    take(importingOnScreen(workbook, 'beds', 'bed', LARGE_IMPORT));
    take(importingOnScreen(workbook, 'plantings', 'planting', LARGE_IMPORT));
  }
  if (withPeer && size <= PEER_MOST) printPeer(workbook, figures);
  return { size, figures };
}

/** Nothing is timed against a floor that holds something else. */
function agreed(workbook: Workbook, floor: SeasonFloor): void {
  const found = differences(workbook, floor);
  if (found.length > 0) throw new Error(`The floor differs from the workbook:\n${found.join('\n')}`);
}

/** Fewer of what takes long. */
function callsOf(kind: EditKind, size: number): { readonly warm: number; readonly calls: number } {
  const often = kind.name === 'climate edit' ? 6 : kind.name === 'variety edit' ? 24 : 100;
  const calls = Math.max(5, Math.round(size >= 2000 ? often / 4 : often));
  return { warm: Math.ceil(calls / 3), calls };
}

function printSteps(workbook: Workbook, kind: EditKind, size: number, dearest: number): void {
  const { warm, calls } = callsOf(kind, size);
  const edits = Math.min(calls, 40);
  const steps = stepCosts(workbook, commandsOf(kind, workbook, edits + warm, 2), warm);
  const sum = steps.reduce((total, { cost }) => total + cost, 0);
  console.log(`    ${show(sum)} ms of a ${kind.name} in the graph, of it`);
  for (const { name, cost, runs, rows } of steps.slice(0, dearest)) {
    const changed = rows === Number.POSITIVE_INFINITY ? 'all rows' : `${show(rows)} rows`;
    console.log(`    ${show(cost).padStart(8)} ms  ${name}, in ${runs} of ${edits} edits, ${changed} changed an edit`);
  }
}

/** The floor is a part of the season: how much of the time goes to that part, and how much to the rest. */
function printShares(workbook: Workbook, floor: SeasonFloor): void {
  const { shares, floor: own } = sharesOfAll(workbook, floor, 15);
  const { floor: same, other, shared } = shares;
  const sum = same.cost + other.cost + shared.cost;
  console.log(
    `    of everything again ${show(same.cost)} ms (${show((same.cost / sum) * 100)} %) in the ${same.steps} columns of the floor, ${show(same.cost / own)} times the floor’s ${show(own)};`,
  );
  console.log(
    `    ${show(other.cost)} ms in ${other.steps} columns that the floor has not, ${show(shared.cost)} ms in ${shared.steps} indexes and totals`,
  );
}

function printFigure({ what, cost, floor }: Figure): void {
  const against = floor === undefined ? ['–', '–'] : [show(floor.p50), show(cost.p50 / floor.p50)];
  const cells = [show(cost.p50), show(cost.p95), ...against].map((cell) => cell.padStart(12));
  console.log(`  ${what.padEnd(38)} ${cells.join(' ')}`);
}

/** The peer, which holds a tenth of the columns, beside Dibble, which works out all. */
function printPeer(workbook: Workbook, figures: readonly Figure[]): void {
  const floor = seasonFloor(workbook);
  floor.all();
  const peer = peerFigures(workbook, floor);
  const beside = (cost: number, what: string): string => {
    const own = figures.find((one) => one.what === what)?.cost.p50 ?? Number.NaN;
    return `${show(cost)} (${show(cost / own)} times Dibble)`;
  };
  console.log(
    `  peer, ${peer.columns} columns: build ${beside(peer.build, 'open')}, spacing edit ${beside(peer.spacing.p50, 'spacing edit')}, date edit ${beside(peer.date.p50, 'date edit')}`,
  );
}

function printGrowth(smaller: Measured, larger: Measured): void {
  console.log(`\nFrom ${smaller.size} to ${larger.size} plantings, ${show(larger.size / smaller.size)} times as many`);
  for (const { what, cost } of larger.figures) {
    const before = smaller.figures.find((one) => nameOf(one.what) === nameOf(what));
    if (before !== undefined) console.log(`  ${what.padEnd(38)} ${show(cost.p50 / before.cost.p50).padStart(8)} times`);
  }
}

/** 'import of 100 rows' and 'import of 500 rows' are the same at two sizes. */
const nameOf = (what: string): string => what.replace(/\d+/, '');

const show = (value: number): string => (value >= 100 ? value.toFixed(0) : value.toPrecision(3));
