// What Dibble's engine takes for a season of the template: opening, everything again, edits, an import and its undo, a branch,
// the attention list. CPU time in milliseconds. bench.ts prints it beside the floor.

import {
  type Command,
  Findings,
  readWorkbookFile,
  sheetView,
  views,
  Workbook,
  writeWorkbookFile,
} from '../../../engine/index.ts';
import { type Cost, costAmong, costOf, costOfShort, timed, timedAlone } from '../cpu.ts';
import type { CopiedBook } from './copies.ts';
import { commandsOf, type EditKind, edit, SPACING_EDIT } from './edits.ts';
import { columnsOfFloor } from './floor/agree.ts';
import { type SeasonFloor, seasonFloor } from './floor/floor.ts';
import { numbersOf } from './floor/inputs.ts';

export interface Figure {
  readonly what: string;
  readonly cost: Cost;
  /** The same on the floor; undefined where it does no such thing. */
  readonly floor?: Cost;
}

/** Edits of the floor that its code is warmed with, and that are timed together. */
const [WARM_FLOOR, IN_GROUP] = [200, 10];

const once = (cost: number): Cost => ({ p50: cost, p95: cost });

/**
 * A file's text to a workbook of which nothing was asked yet, then to one with everything worked out; the floor reads the same text
 * and works everything out. Then, in a workbook just opened, those columns alone that the floor has, with all they rest on.
 */
export function opening({ text, world }: CopiedBook, floor: SeasonFloor): readonly Figure[] {
  const open = (): Workbook => {
    const read = readWorkbookFile(text, world.templates);
    const workbook = read.ok ? Workbook.open(read.data, world) : undefined;
    if (workbook === undefined) throw new Error('The season can’t be opened again.');
    return workbook;
  };
  const [onFloor] = timedAlone(() => {
    JSON.parse(text);
    floor.all();
  });
  const [opened, workbook] = timedAlone(open);
  const [worked] = timedAlone(() => workbook.recalculateAll());
  const another = open();
  const [ofFloor] = timedAlone(() => {
    for (const [sheet, columns] of columnsOfFloor(floor))
      for (const column of columns) numbersOf(another, sheet, column);
  });
  return [
    { what: 'open', cost: once(opened) },
    { what: 'open, with everything asked for', cost: once(opened + worked), floor: once(onFloor) },
    { what: 'the floor’s columns alone, once open', cost: once(ofFloor), floor: costOf(9, () => floor.all()) },
  ];
}

/** What the first view of Plantings shows. */
export function columnsOnScreen(workbook: Workbook): readonly { readonly sheet: string; readonly column: string }[] {
  const sheet = sheetView(workbook, 'plantings');
  const [first] = sheet === undefined ? [] : views(workbook, sheet);
  return (first?.shows ?? []).map((column) => ({ sheet: 'plantings', column }));
}

/** Edits while that view is on screen, and what waits after each, worked out in one go. */
export function onScreen(workbook: Workbook, kind: EditKind, warm: number, calls: number): readonly Figure[] {
  const all = commandsOf(kind, workbook, warm + calls, 5);
  for (const command of all.slice(0, warm)) {
    edit(workbook, command);
    workbook.settle();
  }
  const after: number[] = [];
  const on = all.slice(warm).map((command) => {
    const [cost] = timed(() => edit(workbook, command));
    after.push(timed(() => workbook.settle())[0]);
    return cost;
  });
  return [
    { what: `${kind.name}, on screen`, cost: costAmong(on) },
    { what: `${kind.name}, the rest in idle time`, cost: costAmong(after) },
  ];
}

/** Edits of one kind in the workbook, and the same on the floor, which ends up holding the same. */
export function editing(workbook: Workbook, floor: SeasonFloor, kind: EditKind, warm: number, calls: number): Figure {
  const all = kind.edits(workbook, warm + calls);
  for (const { command } of all.slice(0, warm)) edit(workbook, command);
  const measured = all.slice(warm);
  const cost = costOf(measured.length, (call) => {
    const one = measured[call];
    if (one !== undefined) edit(workbook, one.command);
  });
  const again = Math.max(1, Math.ceil(WARM_FLOOR / all.length));
  for (let round = 0; round < again; round++) for (const { onFloor } of all) onFloor(floor);
  const onFloor = costOfShort(Math.ceil(all.length / IN_GROUP), IN_GROUP, (call) => {
    all[call % all.length]?.onFloor(floor);
  });
  for (const one of all) one.onFloor(floor);
  return { what: kind.name, cost, floor: onFloor };
}

type PutRows = Extract<Command, { readonly command: 'put rows' }>;

/** So many rows of a sheet as an import gives them: those there are in turn, each with a name of its own. */
function imported(workbook: Workbook, sheet: string, name: string, count: number): PutRows {
  const given = workbook.data().rows[sheet] ?? [];
  const columns = [...new Set(given.flatMap(({ cells }) => Object.keys(cells)))];
  const rows = Array.from({ length: count }, (_, at) => {
    const cells = given[at % given.length]?.cells ?? {};
    const named = `${cells[name]} again${at < given.length ? '' : ` ${at}`}`;
    return {
      row: workbook.newId(),
      cells: columns.map((column) => (column === name ? named : (cells[column] ?? null))),
    };
  });
  return { command: 'put rows', sheet, columns, rows };
}

function take(workbook: Workbook, command: PutRows): void {
  const done = workbook.do([command], { code: 'import file', parts: { file: 'rows.csv', sheet: command.sheet } });
  if (done.refused) throw new Error(done.why);
}

/**
 * As many plantings again as there are, as one import of rows, and then taken back in one step, everything asked for. The floor makes
 * its arrays anew at twice the size and works everything out, and to take it back works everything out at the first size.
 */
export function importing(workbook: Workbook, floor: SeasonFloor): readonly Figure[] {
  const command = imported(workbook, 'plantings', 'planting', workbook.data().rows.plantings?.length ?? 0);
  const [taken] = timedAlone(() => take(workbook, command));
  const [twice] = timedAlone(() => seasonFloor(workbook).all());
  const [undone] = timedAlone(() => workbook.undo());
  const again = once(timed(() => floor.all())[0]);
  return [
    { what: `import of ${command.rows.length} plantings`, cost: once(taken), floor: once(twice) },
    { what: 'undo of that import', cost: once(undone), floor: again },
  ];
}

/** A large import and its undo while a view is on screen: to their change sets, and what waits after each, in one go. */
export function importingOnScreen(workbook: Workbook, sheet: string, name: string, count: number): readonly Figure[] {
  const command = imported(workbook, sheet, name, count);
  const [taken] = timedAlone(() => take(workbook, command));
  const [takenRest] = timedAlone(() => workbook.settle());
  const [undone] = timedAlone(() => workbook.undo());
  const [undoneRest] = timedAlone(() => workbook.settle());
  const what = `of ${count} ${sheet}`;
  return [
    { what: `import ${what}, on screen`, cost: once(taken) },
    { what: `import ${what}, the rest`, cost: once(takenRest) },
    { what: `undo ${what}, on screen`, cost: once(undone) },
    { what: `undo ${what}, the rest`, cost: once(undoneRest) },
  ];
}

export function others(workbook: Workbook, floor: SeasonFloor): readonly Figure[] {
  const findings = new Findings(workbook);
  findings.all();
  return [
    {
      what: 'everything again',
      cost: costOf(9, () => workbook.recalculateAll()),
      floor: costOf(9, () => floor.all()),
    },
    {
      what: 'branch',
      cost: costOf(20, () => workbook.branch()),
      floor: costOfShort(10, 2, () => [...floor.plantings.values()].map((column) => column.slice())),
    },
    ...branching(workbook),
    { what: 'attention list anew', cost: costOf(3, () => new Findings(workbook).all()) },
    {
      what: 'attention list after a spacing edit',
      cost: attention(workbook, findings),
    },
    { what: 'text for keeping', cost: costOf(3, () => writeWorkbookFile(workbook.data())) },
  ];
}

/**
 * An edit in a branch of its own, what every planting brings in it then, and what waits there after that. The plan was edited
 * before, so that the indexes by which links are followed back are there to be shared.
 */
function branching(workbook: Workbook): readonly Figure[] {
  const [edited, asked, rest]: [number[], number[], number[]] = [[], [], []];
  const [before, ...commands] = commandsOf(SPACING_EDIT, workbook, 21, 3);
  if (before !== undefined) edit(workbook, before);
  for (const command of commands) {
    const [cost, branch] = timed(() => {
      const made = workbook.branch();
      edit(made, command);
      return made;
    });
    edited.push(cost);
    asked.push(timed(() => numbersOf(branch, 'plantings', 'margin'))[0]);
    rest.push(timed(() => branch.settle())[0]);
    branch.release();
  }
  return [
    { what: 'branch with a spacing edit', cost: costAmong(edited) },
    { what: 'margins in that branch', cost: costAmong(asked) },
    { what: 'all else in that branch', cost: costAmong(rest) },
  ];
}

/** The list alone: the edit before it is not counted. */
function attention(workbook: Workbook, findings: Findings): Cost {
  const times = commandsOf(SPACING_EDIT, workbook, 20, 4)
    .map((command) => {
      edit(workbook, command);
      return timed(() => findings.all())[0];
    })
    .sort((a, b) => a - b);
  return { p50: times[10] ?? 0, p95: times[19] ?? 0 };
}
