// npm run bench: the same small season worked out by Dibble, by hand-written loops over typed arrays (the floor) and by hyperformula
// (the peer), in one run and checked against each other first. `--sizes 1000,10000` chooses sizes; `--without-peer` leaves
// the peer out; its rollups are built up to 10,000 plantings, past that it is marked as too slow.

import {
  type Command,
  cellValue,
  ONLY_ROW,
  readWorkbookFile,
  rowId,
  rows as rowsOf,
  type Template,
  Workbook,
} from '../../../engine/index.ts';
import { wordOf } from '../../../sheets-templates/names.ts';
import { opened, templateOf, testWorld } from '../../book.ts';
import { type Spread, timeEach, timePair } from '../measure.ts';
import { type Floor, makeFloor } from './floor.ts';
import { makePeer, type Peer } from './peer.ts';
import { BEDS, seasonFigures, seasonWorkbook, sequence, VARIETIES } from './season.ts';

const PEER_MOST = 10_000;

interface Line {
  readonly size: number;
  readonly what: string;
  readonly dibble: number;
  readonly floor: number | undefined;
  readonly peer: number | undefined;
  readonly unit: string;
}

function open(text: string, template: Template): Workbook {
  const world = testWorld(template);
  const read = readWorkbookFile(text, world.templates);
  if (!read.ok) throw new Error(read.why);
  const workbook = Workbook.open(read.data, world);
  if (workbook === undefined) throw new Error('The template is not known.');
  return workbook;
}

const EDIT = { code: 'edit', parts: {} };

function set(workbook: Workbook, sheet: string, row: string, column: string, entry: string): void {
  const command: Command = { command: 'set cell', sheet, row, column, entry };
  const done = workbook.do([command], EDIT);
  if (done.refused) throw new Error(done.why);
}

function largestDifference(a: ArrayLike<number>, b: ArrayLike<number>): number {
  let worst = 0;
  for (let i = 0; i < a.length; i++) {
    const scale = Math.max(1e-300, Math.abs(a[i] ?? 0), Math.abs(b[i] ?? 0));
    if (scale > 1e-9) worst = Math.max(worst, Math.abs((a[i] ?? 0) - (b[i] ?? 0)) / scale);
  }
  return worst;
}

function columnOf(workbook: Workbook, table: string, column: string): number[] {
  return Array.from(rowsOf(workbook, table), (row) => Number(cellValue(workbook, table, row, column)));
}

/** The same numbers, or there is nothing to compare. */
function agree(workbook: Workbook, floor: Floor): void {
  for (const [name, values] of Object.entries(floor.columns)) {
    const difference = largestDifference(columnOf(workbook, 'plantings', wordOf(name)), values);
    if (difference > 0) throw new Error(`${name} differs from the floor by ${difference} of its size`);
  }
  const cost = largestDifference(columnOf(workbook, 'seed-order', 'cost'), floor.order.cost);
  const free = largestDifference(columnOf(workbook, 'beds', 'free-length'), floor.beds.free);
  if (cost > 0 || free > 0) throw new Error(`Rollups differ from the floor by ${Math.max(cost, free)} of their size`);
}

/** How many whole numbers the peer, which rounds up raw doubles, gets otherwise. */
function disagreements(floor: Floor, peer: Peer, column: 'Target' | 'Cells' | 'Seeds'): number {
  const values = floor.columns[column];
  return peer.read(column).filter((value, i) => value !== values[i]).length;
}

function bench(size: number, withPeer: boolean): readonly Line[] {
  const lines: Line[] = [];
  const figures = seasonFigures(size);
  const declaration = seasonWorkbook(figures);
  const template = templateOf(declaration);
  const text = opened(declaration).file();
  const add = (
    what: string,
    dibble: number,
    floor: number | undefined,
    peer: number | undefined,
    unit = 'ms',
  ): void => {
    lines.push({ size, what, dibble, floor, peer, unit });
  };
  let workbook = open(text, template);
  const builds = timeEach(size >= 100_000 ? 3 : 5, () => {
    workbook = open(text, template);
  });
  const floor = makeFloor(figures);
  const floorBuild = timeEach(3, () => makeFloor(figures).all());
  floor.all();
  agree(workbook, floor);

  let peer: Peer | undefined;
  let peerBuild: Spread | undefined;
  if (withPeer && size <= PEER_MOST) {
    peerBuild = timeEach(1, () => {
      peer = makePeer(figures, true);
    });
    if (peer !== undefined) {
      const said = (['Target', 'Cells', 'Seeds'] as const).map(
        (name) => `${name} ${disagreements(floor, peer as Peer, name)}`,
      );
      console.log(`${size} plantings: rows where the peer rounds binary dust up: ${said.join(', ')}`);
    }
  }
  add('build from file', builds.median, floorBuild.median, peerBuild?.median);

  for (let warm = 0; warm < 5; warm++) {
    workbook.recalculateAll();
    floor.all();
  }
  const [full, floorFull] = timePair(
    size >= 100_000 ? 15 : 410_000 / size,
    () => workbook.recalculateAll(),
    () => floor.all(),
  );
  add('full recalculation', full.median, floorFull.median, undefined);

  const next = sequence(7);
  const edits = Array.from({ length: 600 }, () => ({
    row: Math.floor(next() * size),
    spacing: Math.round(5 + next() * 55) / 100,
  }));
  const plantings = Array.from(rowsOf(workbook, 'plantings'), (row) => rowId(workbook, 'plantings', row));
  const varietyIds = Array.from(rowsOf(workbook, 'varieties'), (row) => rowId(workbook, 'varieties', row));
  const editSpacing = (call: number): void => {
    const edit = edits[call % edits.length];
    if (edit === undefined) return;
    set(workbook, 'plantings', plantings[edit.row] ?? '', 'spacing', String(edit.spacing));
  };
  const floorSpacing = (call: number): void => {
    const edit = edits[call % edits.length];
    if (edit !== undefined) floor.spacing(edit.row, edit.spacing);
  };
  timeEach(600, editSpacing);
  const spacing = timeEach(600, editSpacing);
  timeEach(600, floorSpacing);
  const floorSpacings = timeEach(600, floorSpacing);
  const peerEdits = size <= 1000 ? 10 : 3;
  const peerSpacing =
    peer === undefined
      ? undefined
      : timeEach(peerEdits, (call) => peer?.spacing(edits[call]?.row ?? 0, edits[call]?.spacing ?? 1));
  add('one spacing edit, median', spacing.median, floorSpacings.median, peerSpacing?.median);
  add('one spacing edit, 95th percentile', spacing.p95, floorSpacings.p95, peerSpacing?.p95);

  const varieties = Array.from({ length: 60 }, () => ({
    variety: Math.floor(next() * VARIETIES),
    germination: Math.round(60 + next() * 35) / 100,
  }));
  const editVariety = (call: number): void => {
    const edit = varieties[call % varieties.length];
    if (edit === undefined) return;
    set(workbook, 'varieties', varietyIds[edit.variety] ?? '', 'germination', String(edit.germination));
  };
  const floorVariety = (call: number): void => {
    const edit = varieties[call % varieties.length];
    if (edit !== undefined) floor.germination(edit.variety, edit.germination);
  };
  timePair(60, editVariety, floorVariety);
  const [variety, floorVarieties] = timePair(60, editVariety, floorVariety);
  const peerVariety =
    peer === undefined
      ? undefined
      : timeEach(3, (call) => peer?.germination(varieties[call]?.variety ?? 0, varieties[call]?.germination ?? 0.9));
  add('one variety edit, median', variety.median, floorVarieties.median, peerVariety?.median);

  const spare = (call: number): number => 0.05 + (call % 7) / 100;
  const [farm, floorFarm] = timePair(
    size >= 100_000 ? 8 : 21,
    (call) => set(workbook, 'farm', ONLY_ROW, 'spare-seed', String(spare(call))),
    (call) => floor.spare(spare(call)),
  );
  const peerFarm = peer === undefined ? undefined : timeEach(2, (call) => peer?.spare(spare(call)));
  add('one farm edit, median', farm.median, floorFarm.median, peerFarm?.median);
  agree(workbook, floor);
  const [branch] = timePair(
    50,
    () => workbook.branch(),
    () => undefined,
  );
  add('branch', branch.median, undefined, undefined);
  const branched = timeEach(30, (call) => {
    const edit = edits[call % edits.length];
    const other = workbook.branch();
    if (edit !== undefined) set(other, 'plantings', plantings[edit.row] ?? '', 'spacing', String(edit.spacing));
    other.settle();
  });
  add('branch with a spacing edit in it', branched.median, undefined, undefined);
  add('bytes of columns', workbook.document.frame.bytes() / 1e6, floor.bytes / 1e6, undefined, 'MB');
  return lines;
}

const figure = (value: number | undefined): string => (value === undefined ? '–' : value.toPrecision(3));
const ratio = (a: number | undefined, b: number | undefined): string =>
  a === undefined || b === undefined || b === 0 ? '–' : (a / b).toPrecision(3);

/** Measures at several sizes and prints the table. */
export function benchSmallSeason(sizes: readonly number[], withPeer: boolean): void {
  console.log(
    `Dibble against hand-written loops (the floor) and hyperformula 3 (the peer): ${VARIETIES} varieties, ${BEDS} beds, 26 computed columns`,
  );
  const lines = sizes.flatMap((size) => bench(size, withPeer));
  const header = ['plantings', 'what', 'Dibble', 'floor', 'Dibble/floor', 'peer', 'peer/Dibble'];
  const rows = lines.map((line) => [
    String(line.size),
    `${line.what}, ${line.unit}`,
    figure(line.dibble),
    figure(line.floor),
    ratio(line.dibble, line.floor),
    line.peer === undefined && line.size > PEER_MOST && line.unit === 'ms' ? 'too slow' : figure(line.peer),
    ratio(line.peer, line.dibble),
  ]);
  const widths = header.map((title, i) => Math.max(title.length, ...rows.map((row) => row[i]?.length ?? 0)));
  for (const row of [header, ...rows])
    console.log(
      row.map((cell, i) => (i === 1 ? cell.padEnd(widths[i] ?? 0) : cell.padStart(widths[i] ?? 0))).join('  '),
    );
}
