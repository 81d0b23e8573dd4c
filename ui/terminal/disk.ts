// Files on disk: reads the bytes of plain files, and writes so that a file is either the old one or the new one, whole: into a
// file beside it first, which then takes its name. Nothing is written over unless it is what was read, or that is forced. Turns
// every way this can fail into a sentence that names the file.

import { createHash, randomBytes } from 'node:crypto';
import {
  chmodSync,
  chownSync,
  closeSync,
  fsyncSync,
  linkSync,
  lstatSync,
  openSync,
  readdirSync,
  readFileSync,
  realpathSync,
  renameSync,
  rmSync,
  type Stats,
  statSync,
  writeFileSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { refuse } from './world.ts';

/** A file as it was read. */
export interface Snapshot {
  /** Its true place, links followed. */
  readonly place: string;
  readonly bytes: Uint8Array;
  readonly hash: string;
}

/** What may stand where a file is to be written. */
export interface Writing {
  /** The file that was read; it may be written over as long as it is as it was then. */
  readonly over?: Snapshot | undefined;
  /** Any other plain file may be written over. */
  readonly force: boolean;
  /** How a person lets another file be written over; absent: as commands do, with --force. */
  readonly forcedBy?: string;
}

const FORCE = 'say --force';

export function hashOf(content: string | Uint8Array): string {
  return createHash('sha256').update(content).digest('hex');
}

/** The bytes of a plain file; links are followed. */
export function readPlain(path: string): Snapshot {
  try {
    const place = realpathSync(path);
    refuseOthers(path, statSync(place));
    const bytes = readFileSync(place);
    return { place, bytes, hash: hashOf(bytes) };
  } catch (thrown) {
    if (!isSystemError(thrown)) throw thrown;
    return refuse(`${path} can't be read: ${reason(thrown)}.`);
  }
}

function refuseOthers(path: string, found: Stats): void {
  if (found.isDirectory()) refuse(`${path} is a folder: name a file in it.`);
  if (!found.isFile()) refuse(`${path} is a device or a pipe, not a file: name a file, or - for standard streams.`);
}

/** Whether two names stand for one file that is there. */
export function isSameFile(a: string, b: string): boolean {
  const [one, other] = [a, b].map((path) => statSync(path, { throwIfNoEntry: false }));
  return one !== undefined && other !== undefined && one.dev === other.dev && one.ino === other.ino;
}

/** Writes a file whole or not at all. */
export function writePlain(
  path: string,
  content: string | Uint8Array,
  { over, force, forcedBy = FORCE }: Writing,
): void {
  let beside: string | undefined;
  try {
    const there = lstatSync(path, { throwIfNoEntry: false });
    const target = there === undefined ? path : realpathSync(path);
    const old = there === undefined ? undefined : statSync(target);
    if (old !== undefined) refuseOthers(path, old);
    if (old !== undefined && target !== over?.place && !force)
      refuse(`${path} is there already: name a new file, or ${forcedBy} to write over it.`);
    beside = besides(target);
    writeThrough(beside, content);
    if (old !== undefined) keepRights(beside, old);
    if (target === over?.place) refuseChanged(path, over);
    if (old === undefined && !force) {
      // Unlike a change of name, a link is refused where somebody else has put a file there just now.
      linkSync(beside, target);
      rmSync(beside);
    } else renameSync(beside, target);
    syncFolder(dirname(target));
  } catch (thrown) {
    if (beside !== undefined) rmSync(beside, { force: true });
    if (!isSystemError(thrown)) throw thrown;
    refuse(`${path} can't be written: ${reason(thrown, forcedBy)}.`);
  }
}

/** Bytes behind those that a file has, on the disk before this returns. */
export function appendPlain(path: string, content: string): void {
  try {
    const there = statSync(path, { throwIfNoEntry: false });
    if (there !== undefined) refuseOthers(path, there);
    writeThrough(path, content, 'a');
  } catch (thrown) {
    if (!isSystemError(thrown)) throw thrown;
    refuse(`${path} can't be written: ${reason(thrown)}.`);
  }
}

function refuseChanged(path: string, { place, hash }: Snapshot): void {
  if (hashOf(readFileSync(place)) === hash) return;
  refuse(`${path} was changed by something else meanwhile: nothing was written. Run the command again.`);
}

function writeThrough(path: string, content: string | Uint8Array, how: 'wx' | 'a' = 'wx'): void {
  const handle = openSync(path, how, 0o666);
  try {
    writeFileSync(handle, content);
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

/** A new file gets the rights and, where that is allowed, the owner of the one that it takes the place of. */
function keepRights(path: string, { mode, uid, gid }: Stats): void {
  try {
    chownSync(path, uid, gid);
  } catch {
    // Only the machine's keeper may give a file to somebody else.
  }
  chmodSync(path, mode & 0o7777);
}

/** The change of name is on the disk too, where the system can say so of folders. */
function syncFolder(folder: string): void {
  try {
    const handle = openSync(folder, 'r');
    fsyncSync(handle);
    closeSync(handle);
  } catch {
    // Some systems open no folders; the name is then on the disk a moment later.
  }
}

/** A name beside a file for what is to become it: with the process that writes, so that what a killed one left is known. */
function besides(target: string): string {
  return join(dirname(target), `.${basename(target)}.${process.pid}-${randomBytes(6).toString('hex')}.new`);
}

/** Takes away what processes that are gone left unfinished beside a file. */
export function sweep(target: string): void {
  const start = `.${basename(target)}.`;
  for (const name of readdirSync(dirname(target))) {
    const writer = name.startsWith(start) ? /^(\d+)-[0-9a-f]{12}\.new$/.exec(name.slice(start.length))?.[1] : undefined;
    if (writer !== undefined && !isRunning(Number(writer))) rmSync(join(dirname(target), name), { force: true });
  }
}

/** Whether a process of this machine is there. */
export function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (thrown) {
    return isSystemError(thrown) && thrown.code === 'EPERM';
  }
}

export function isSystemError(thrown: unknown): thrown is Error & { readonly code: string } {
  return thrown instanceof Error && 'code' in thrown && typeof thrown.code === 'string';
}

export function reason(thrown: unknown, forcedBy = FORCE): string {
  switch (isSystemError(thrown) ? thrown.code : '') {
    case 'ENOENT':
      return 'there is no such file or folder; check the name';
    case 'EACCES':
    case 'EPERM':
      return "you aren't allowed to; check the file's permissions";
    case 'EROFS':
      return 'the disk can only be read; write to another place with --out';
    case 'EISDIR':
      return 'it is a folder; name a file';
    case 'ENOTDIR':
      return 'part of its path is a file, not a folder; check the path';
    case 'ENOSPC':
    case 'EDQUOT':
      return 'the disk is full; make room';
    case 'EFBIG':
      return 'files may not grow so large here; make room or write to another place';
    case 'EEXIST':
      return `a file of that name has come meanwhile; name another, or ${forcedBy}`;
    case 'ELOOP':
      return 'its links lead in a circle; check the path';
    case 'ENAMETOOLONG':
      return 'its name is too long; choose a shorter one';
    case 'EPIPE':
      return 'the reader of the output has gone';
    default:
      return thrown instanceof Error ? thrown.message : String(thrown);
  }
}
