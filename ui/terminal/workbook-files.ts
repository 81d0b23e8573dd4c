// Workbooks in files and streams: opens them worked out, and carries a change of one from reading to writing under its lock, so
// that of two commands at once none is lost.

import { randomBytes } from 'node:crypto';
import {
  type Book,
  earlierReader,
  type HistoryData,
  keepWork,
  lookIntoBranch,
  nearestName,
  newDocument,
  openBranch,
  readWorkbookFile,
  type Start,
  type Step,
  type Template,
  type TemplateShelf,
  templateWanted,
  Workbook,
  workbookText,
  writeWorkbookFile,
} from '../../engine/index.ts';
import type { Given } from './arguments.ts';
import { hashOf, readPlain, type Snapshot, sweep, writePlain } from './disk.ts';
import { addToJournal, changesLeadingTo, historyOf } from './journal.ts';
import { lockOf } from './lock.ts';
import { during } from './progress.ts';
import { onOneLine, refuse, type World } from './world.ts';

/** The name that stands for standard input and output. */
export const STREAM = '-';

/** The workbook in a file, worked out. */
export async function openWorkbook(path: string, world: World): Promise<Workbook> {
  return openBytes(path, await bytesOf(path, world), world);
}

/** The workbook that the bytes of a file hold, worked out. */
export async function openBytes(path: string, bytes: Uint8Array, world: World): Promise<Workbook> {
  return (await opened(path, bytes, world)).workbook;
}

/** The workbook in a file, worked out, or a branch of it where --branch names one: to be looked at, for nothing is written. */
export async function openAsked(path: string, { values }: Given, world: World): Promise<Workbook> {
  return lookInto(await openWorkbook(path, world), path, values.get('branch'));
}

/** The branch of a workbook that a person names, to be looked at; the workbook itself where none is named. */
export function lookInto(workbook: Workbook, file: string, name: string | undefined): Workbook {
  if (name === undefined) return workbook;
  return lookIntoBranch(workbook, findBranch(workbook, file, name)) ?? workbook;
}

/** The bytes of a file, or of standard input. */
export async function bytesOf(path: string, world: World): Promise<Uint8Array> {
  return path === STREAM ? world.input() : readPlain(path).bytes;
}

interface Opened {
  readonly workbook: Workbook;
  /** Something that the file holds could not be read and is not in the workbook. */
  readonly leftOut: boolean;
}

async function opened(path: string, bytes: Uint8Array, world: World, history?: HistoryData): Promise<Opened> {
  const name = path === STREAM ? 'Standard input' : path;
  const decoded = workbookText(bytes);
  if (!decoded.ok) return refuse(`${name}: ${decoded.why}`);
  const wanted = templateWanted(decoded.text);
  const templates = await world.templates(wanted);
  const earlier = await earlierReader(wanted);
  const reading = `Reading ${name} ...`;
  const read = await during(world, reading, () => readWorkbookFile(decoded.text, templates, earlier));
  if (!read.ok) return refuse(onOneLine(`${name}: ${read.why}`));
  for (const note of read.notes) world.warn(onOneLine(`${name}: ${note}`));
  const { data } = read;
  const workbook = await during(world, reading, () => Workbook.open(data, engineWorld(world, templates), history));
  if (workbook === undefined)
    return refuse(`${name}: its template “${read.data.template.name}” is not known here: update Dibble.`);
  return { workbook, leftOut: read.leftOut };
}

/** A workbook that starts from a template. */
export function startWorkbook(template: Template, start: Start, world: World): Workbook {
  const made = newDocument(template, start, newId);
  if (!made.ok) return refuse(onOneLine(`The template ${template.name} can't be opened: ${made.problems[0] ?? ''}`));
  const templates: TemplateShelf = { today: () => template, earlier: () => undefined };
  const workbook = Workbook.open(made.data, engineWorld(world, templates));
  return workbook ?? refuse(`The template ${template.name} can't be opened.`);
}

function engineWorld(world: World, templates: TemplateShelf): ConstructorParameters<typeof Workbook>[1] {
  return { newId, now: () => world.now(), actor: 'terminal', templates };
}

/** Ten letters and digits that nothing has yet. */
function newId(): string {
  return `r${BigInt(`0x${randomBytes(8).toString('hex')}`)
    .toString(36)
    .slice(0, 10)}`;
}

/** The options of every verb that writes a workbook. */
export const WRITING = { out: 'value', force: 'flag', 'dry-run': 'flag', journal: 'flag' } as const;

export const WRITING_IN_WORDS = '[--out FILE] [--force] [--dry-run] [--journal]';

/** The options of every verb that changes the plan, or a branch of it. */
export const CHANGING = { ...WRITING, branch: 'value' } as const;

export const CHANGING_IN_WORDS = `[--branch NAME] ${WRITING_IN_WORDS}`;

/** What a change has to say, and the exit status. */
export interface Changed {
  readonly says: string;
  readonly status?: number;
}

export interface ChangeOptions {
  /** Opens the workbook with the steps of its journal, to be taken back. */
  readonly withJournal?: boolean;
}

/**
 * Reads a workbook, lets `work` change it, and writes it: over itself, or where --out says. From reading to writing over itself
 * the file is locked. What the change says goes to standard output, unless the workbook does.
 */
export async function changeWorkbook(
  file: string,
  given: Given,
  world: World,
  work: (workbook: Workbook) => Changed | Promise<Changed>,
  { withJournal = false }: ChangeOptions = {},
): Promise<number> {
  const out = given.values.get('out') ?? file;
  if (given.flags.has('journal') && (out !== file || file === STREAM))
    refuse('--journal keeps a journal beside the file that is changed: leave out --out and name a file.');
  const dry = given.flags.has('dry-run');
  const place = file === STREAM ? undefined : readPlain(file).place;
  const lock = place !== undefined && out === file && !dry ? await lockOf(place) : undefined;
  try {
    if (lock !== undefined && place !== undefined) sweep(place);
    // Read only now that nobody else writes.
    const read = place === undefined ? undefined : readPlain(file);
    const bytes = read?.bytes ?? (await world.input());
    const history = withJournal && read !== undefined ? historyOf(changesLeadingTo(read.place, read.hash)) : undefined;
    const { workbook, leftOut } = await opened(file, bytes, world, history);
    if (leftOut && out === file && !dry && !given.flags.has('force')) {
      return refuse(
        `${file}: written over, it would lose what could not be read (see above): nothing was written. Mend the file, write to another with --out, or say --force.`,
      );
    }
    const before = lastSteps(workbook);
    const { says, status = 0 } = await inBranch(workbook, file, given.values.get('branch'), work);
    if (!dry) save(out, workbook, given, world, read, before);
    const told = dry ? `${says}Nothing was written: this was a trial.\n` : says;
    if (out === STREAM && !dry) world.warn(told.trimEnd());
    else world.out(told);
    return status;
  } finally {
    lock?.release();
  }
}

/** Works in the workbook, or in a branch of it, which keeps what was done. */
async function inBranch(
  workbook: Workbook,
  file: string,
  name: string | undefined,
  work: (workbook: Workbook) => Changed | Promise<Changed>,
): Promise<Changed> {
  if (name === undefined) return work(workbook);
  const id = findBranch(workbook, file, name);
  const opened = openBranch(workbook, id);
  if (opened === undefined) return refuse(`${file}: there is no branch called “${name}”.`);
  const changed = await work(opened);
  keepWork(workbook, id, opened);
  return changed;
}

/** The id of the branch that a person names. */
export function findBranch({ document }: Book, file: string, name: string): string {
  const wanted = name.trim().toLowerCase();
  const found = [...document.branches].find(([, branch]) => branch.name.toLowerCase() === wanted);
  if (found !== undefined) return found[0];
  const names = [...document.branches.values()].map((branch) => branch.name);
  const near = nearestName(name, names);
  const advice =
    near !== undefined
      ? `did you mean “${near}”?`
      : names.length === 0
        ? `it has none yet: “branch ${file} "${name}"” makes one.`
        : `it has ${names.join(', ')}.`;
  return refuse(`${file}: there is no branch called “${name}”: ${advice}`);
}

/** The step done last and the one taken back last. */
function lastSteps({ history }: Workbook): readonly [done: Step | undefined, undone: Step | undefined] {
  return [history.done.at(-1), history.undone.at(-1)];
}

function save(
  out: string,
  workbook: Workbook,
  { flags }: Given,
  world: World,
  read: Snapshot | undefined,
  before: readonly [done: Step | undefined, undone: Step | undefined],
): void {
  const text = writeWorkbookFile(workbook.data());
  if (out === STREAM) {
    world.out(text);
    return;
  }
  const [done, undone] = lastSteps(workbook);
  const step = undone !== before[1] ? undone : done !== before[0] ? done : undefined;
  if (flags.has('journal') && read !== undefined && step !== undefined) {
    addToJournal(read.place, { before: read.hash, after: hashOf(text), ...step });
  }
  writePlain(out, text, { over: read, force: flags.has('force') });
}

/** Writes a fresh workbook or what was made from one: to a new file, over another where that is forced, or to a stream. */
export function writeOut(out: string, content: string | Uint8Array, { flags }: Given, world: World): void {
  if (out === STREAM) world.out(content);
  else if (!flags.has('dry-run')) writePlain(out, content, { force: flags.has('force') });
}
