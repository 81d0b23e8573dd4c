// Files on disk: reads workbooks and CSV text, and writes so that a file is either the old one or the new one, whole: into a
// file beside it first, which then takes its name. Turns every way this can fail into a sentence that names the file.

import { randomBytes } from 'node:crypto';
import {
  chmodSync,
  closeSync,
  existsSync,
  fsyncSync,
  openSync,
  readFileSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import {
  newDocument,
  readWorkbookFile,
  type Start,
  type Template,
  type TemplateShelf,
  templateWanted,
  Workbook,
  writeWorkbookFile,
} from '../../engine/index.ts';
import { onOneLine, refuse, type World } from './world.ts';

/** The workbook in a file, worked out. */
export async function openWorkbook(path: string, world: World): Promise<Workbook> {
  const text = decoded(path, bytesOf(path), false);
  const templates = await world.templates(templateWanted(text));
  const read = readWorkbookFile(text, templates);
  if (!read.ok) return refuse(`${path}: ${read.why}`);
  for (const note of read.notes) world.warn(onOneLine(`${path}: ${note}`));
  const workbook = Workbook.open(read.data, engineWorld(world, templates));
  return workbook ?? refuse(`${path}: its template “${read.data.template.name}” is not known here: update Dibble.`);
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

export function saveWorkbook(path: string, workbook: Workbook): void {
  writeWhole(path, writeWorkbookFile(workbook.data()));
}

/** A text file such as CSV; what isn't UTF-8 is read as spreadsheets of old wrote it. */
export function readText(path: string): string {
  return decoded(path, bytesOf(path), true);
}

function bytesOf(path: string): Uint8Array {
  try {
    return readFileSync(path);
  } catch (thrown) {
    return refuse(`${path} can't be read: ${reason(thrown)}.`);
  }
}

function decoded(path: string, bytes: Uint8Array, olderToo: boolean): string {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (first === 0xfe && second === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    if (olderToo && !bytes.includes(0)) return new TextDecoder('windows-1252').decode(bytes);
    return refuse(`${path} isn't a text file: choose another file, or take a whole copy of it.`);
  }
}

/** Writes a file whole or not at all. */
export function writeWhole(path: string, text: string): void {
  let beside: string | undefined;
  try {
    const target = existsSync(path) ? realpathSync(path) : path;
    if (existsSync(target) && statSync(target).isDirectory()) refuse(`${path} is a folder: name a file in it.`);
    beside = join(dirname(target), `.${basename(target)}.${randomBytes(6).toString('hex')}.new`);
    const handle = openSync(beside, 'wx');
    try {
      writeFileSync(handle, text);
      fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
    if (existsSync(target)) chmodSync(beside, statSync(target).mode);
    renameSync(beside, target);
  } catch (thrown) {
    if (beside !== undefined) rmSync(beside, { force: true });
    if (!isSystemError(thrown)) throw thrown;
    refuse(`${path} can't be written: ${reason(thrown)}.`);
  }
}

function isSystemError(thrown: unknown): thrown is Error & { readonly code: string } {
  return thrown instanceof Error && 'code' in thrown && typeof thrown.code === 'string';
}

function reason(thrown: unknown): string {
  switch (isSystemError(thrown) ? thrown.code : '') {
    case 'ENOENT':
      return 'there is no such file or folder; check the name';
    case 'EACCES':
    case 'EPERM':
    case 'EROFS':
      return "you aren't allowed to; check the file's permissions";
    case 'EISDIR':
      return 'it is a folder; name a file';
    case 'ENOTDIR':
      return 'part of its path is a file, not a folder; check the path';
    case 'ENOSPC':
      return 'the disk is full; make room';
    default:
      return thrown instanceof Error ? thrown.message : String(thrown);
  }
}
