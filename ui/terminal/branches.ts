// `branch` and `compare`: other ways that the plan could go, kept in the workbook. `set`, `formula` and the other verbs that
// change a workbook work in one with --branch (workbook-files.ts).

import {
  type Book,
  cellData,
  compareCells,
  compareTotals,
  compareWeeks,
  isoDate,
  lookIntoBranch,
  lostChanges,
  message,
  sayChange,
  type Transaction,
  unitSymbol,
  type Workbook,
} from '../../engine/index.ts';
import { PLAN_BY_WEEK, PLAN_TOTALS } from '../../sheets-templates/index.ts';
import { branchId } from '../branch-ids.ts';
import { LOST, withoutLost } from '../branch-words.ts';
import type { Given } from './arguments.ts';
import { aligned } from './columns.ts';
import { during } from './progress.ts';
import { changeWorkbook, findBranch, openWorkbook } from './workbook-files.ts';
import { onOneLine, refuse, type World } from './world.ts';

/** Lists branches, makes one, or keeps, takes from or throws away one. */
export async function branchOut(given: Given, world: World): Promise<number> {
  const { words, flags, values } = given;
  const [file = '', name] = words;
  const acts = ['keep', 'throw-away'].filter((flag) => flags.has(flag));
  if (values.has('take')) acts.push('take');
  if (values.has('rename')) acts.push('rename');
  if (acts.length > 1) refuse(`Choose one of ${acts.map((act) => `--${act}`).join(' and ')}.`);
  if (name === undefined) {
    if (acts.length > 0) refuse(`Say which branch: branch ${file} NAME --${acts[0]}.`);
    return list(await openWorkbook(file, world), flags.has('json'), world);
  }
  return changeWorkbook(file, given, world, (workbook) => ({ says: act(workbook, given, name, acts[0]) }));
}

function list(workbook: Workbook, json: boolean, world: World): number {
  const branches = [...workbook.document.branches].map(([id, { name, changes }]) => {
    const said = saidIn(lookIntoBranch(workbook, id) ?? workbook);
    const lost = lostChanges(workbook, changes);
    const saidWhole = (change: Transaction): string => {
      const misses = lost.get(change.id);
      return misses === undefined ? said(change) : `${said(change)} ${LOST[misses]}`;
    };
    return { name, changes: changes.map(saidWhole) };
  });
  if (json) {
    world.out(`${JSON.stringify(branches, undefined, 1)}\n`);
    return 0;
  }
  if (branches.length === 0) world.out('No branches yet.\n');
  for (const { name, changes } of branches) {
    world.out(`${name}\n`);
    for (const [at, change] of changes.entries()) world.out(`  ${at + 1}  ${change}\n`);
  }
  return 0;
}

/** A change of a branch as the rows are called there. */
function saidIn(book: Book): (change: Transaction) => string {
  return (change) => onOneLine(sayChange(book, change));
}

function act(workbook: Workbook, { words, values }: Given, name: string, wanted: string | undefined): string {
  const [file = ''] = words;
  if (wanted === undefined) {
    const id = branchId(workbook);
    const done = workbook.do([{ command: 'add branch', branch: id, name }], message('add branch', { branch: name }));
    return done.refused ? refuse(`${file}: ${done.why}`) : `Branch ${name}: work in it with --branch "${name}".\n`;
  }
  const branch = findBranch(workbook, file, name);
  const parts = { branch: name };
  switch (wanted) {
    case 'keep': {
      const lost = lostChanges(workbook, workbook.document.branches.get(branch)?.changes ?? []).size;
      const done = workbook.do([{ command: 'take over', branch, changes: undefined }], message('keep branch', parts));
      return done.refused ? refuse(`${file}: ${done.why}`) : `The plan is as in ${name} now.${withoutLost(lost)}\n`;
    }
    case 'throw-away': {
      const done = workbook.do([{ command: 'remove branch', branch }], message('remove branch', parts));
      return done.refused ? refuse(`${file}: ${done.why}`) : `${name} is thrown away.\n`;
    }
    case 'rename': {
      const to = values.get('rename') ?? '';
      const done = workbook.do([{ command: 'rename branch', branch, name: to }], message('rename branch', parts));
      return done.refused ? refuse(`${file}: ${done.why}`) : `${name} is called ${to} now.\n`;
    }
    default:
      return take(workbook, file, branch, name, values.get('take') ?? '');
  }
}

function take(workbook: Workbook, file: string, branch: string, name: string, numbers: string): string {
  const before = workbook.document.branches.get(branch)?.changes ?? [];
  const changes = numbers.split(',').map((number) => {
    const change = /^\s*\d+\s*$/.test(number) ? before[Number(number) - 1] : undefined;
    if (change !== undefined) return change.id;
    return refuse(`${file}: ${name} has no change ${number.trim()}: “branch ${file}” lists them with their numbers.`);
  });
  const done = workbook.do([{ command: 'take over', branch, changes }], message('take over', { branch: name }));
  if (done.refused) return refuse(`${file}: ${done.why}`);
  const left = new Set(workbook.document.branches.get(branch)?.changes.map(({ id }) => id));
  const taken = before.filter(({ id }) => !left.has(id));
  const said = saidIn(workbook);
  return taken.map((change) => `Taken over: ${said(change)}\n`).join('');
}

/** How many branches stand side by side at most. */
const MOST_COMPARED = 4;

/** The totals of branches beside the plan's, what was changed to get there and, if wished, every cell that differs. */
export async function compareBranches({ words, flags }: Given, world: World): Promise<number> {
  const [file = '', ...names] = words;
  const workbook = await openWorkbook(file, world);
  const all = [...workbook.document.branches.keys()];
  const ids = names.length === 0 ? all : [...new Set(names.map((name) => findBranch(workbook, file, name)))];
  if (ids.length === 0) refuse(`${file}: it has no branches to compare: “branch ${file} NAME” makes one.`);
  if (ids.length > MOST_COMPARED) refuse(`${file}: ${MOST_COMPARED} branches at most stand side by side: name them.`);
  const working = 'Working out the plan and its branches ...';
  // The plan first: a branch that is opened from what is worked out works out no more than where it differs.
  await during(world, working, () => {
    compareTotals(workbook, [], PLAN_TOTALS);
    compareWeeks([workbook], PLAN_BY_WEEK);
  });
  const branches = ids.flatMap((id) => {
    const book = lookIntoBranch(workbook, id);
    const data = workbook.document.branches.get(id);
    return book === undefined || data === undefined ? [] : [{ book, ...data }];
  });
  const books = branches.map(({ book }) => book);
  const totals = await during(world, working, () => compareTotals(workbook, books, PLAN_TOTALS));
  const weeks = await during(world, working, () => compareWeeks([workbook, ...books], PLAN_BY_WEEK));
  if (flags.has('json')) {
    const unitOf = (type: Parameters<typeof unitSymbol>[0] | undefined) =>
      type === undefined ? null : unitSymbol(type);
    const data = {
      branches: branches.map(({ name, changes, book }) => ({
        name,
        changes: changes.map(saidIn(book)),
        cells: compareCells(workbook, book, { typedOnly: !flags.has('cells') }),
      })),
      totals: totals.map(({ name, type, base, branches: there }) => ({
        name,
        unit: unitOf(type),
        base: base.shown,
        branches: there.map(({ shown, differenceShown }) => ({ shown, difference: differenceShown })),
      })),
      weeks: weeks.map(({ name, type, weeks: list }) => ({
        name,
        unit: unitOf(type),
        weeks: list.map(({ week, values }) => [
          isoDate(week),
          ...values.map((value) => (value === undefined ? null : cellData(workbook, value, type))),
        ]),
      })),
    };
    world.out(`${JSON.stringify(data, undefined, 1)}\n`);
    return 0;
  }
  const header = ['', 'Plan', ...branches.flatMap(({ name }) => [name, ''])];
  const lines = totals.map(({ name, base, branches: there }) => [
    name,
    onOneLine(base.shown),
    ...there.flatMap(({ shown, differenceShown }) => [onOneLine(shown), differenceShown]),
  ]);
  world.out(aligned([header, ...lines], [...header.keys()].slice(1)));
  for (const { name, changes, book } of branches) {
    world.out(`\n${name}\n${changes.map((change, at) => `  ${at + 1}  ${saidIn(book)(change)}\n`).join('')}`);
    for (const { sheetName, rows } of compareCells(workbook, book, { typedOnly: !flags.has('cells') })) {
      for (const { rowName, there, cells } of rows) {
        if (there !== 'both') world.out(`  ${sheetName} / ${rowName}: ${there === 'branch' ? 'new' : 'gone'}\n`);
        if (there === 'base') continue;
        for (const { columnName, base, branch } of cells) {
          world.out(`  ${onOneLine(`${sheetName} / ${rowName} / ${columnName}: ${base || 'blank'} → ${branch}`)}\n`);
        }
      }
    }
  }
  return 0;
}
