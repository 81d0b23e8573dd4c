// One command at a time changes a workbook file. Whoever is about to read one in order to change it takes its lock, a file beside
// it that names the process, and gives it back once the change is written. The lock of a process that is gone is taken over.

import { closeSync, openSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { isRunning, isSystemError, reason } from './disk.ts';
import { refuse } from './world.ts';

/** Milliseconds that a command waits for another's change before it gives up and says so. */
const PATIENCE = 20_000;
/** Taking a dead lock over takes a moment; a lock on that which is older was left by a process that died in it. */
const TAKEOVER = 10_000;

export interface Lock {
  release(): void;
}

/** The lock of a file; refuses where another process keeps it for too long. */
export async function lockOf(target: string): Promise<Lock> {
  const path = join(dirname(target), `.${basename(target)}.lock`);
  const until = Date.now() + PATIENCE;
  for (;;) {
    if (made(path)) return { release: () => rmSync(path, { force: true }) };
    if (isDead(path)) takeAway(path);
    else if (Date.now() > until) {
      refuse(
        `${target} is being changed by another command (${holder(path)}): nothing was written. Try again; if none is running, remove ${path}.`,
      );
    } else await new Promise((resolve) => setTimeout(resolve, 20 + Math.random() * 60));
  }
}

/** Makes the lock; false where it is there already. */
function made(path: string): boolean {
  try {
    const handle = openSync(path, 'wx', 0o644);
    writeFileSync(handle, `${process.pid} ${hostname()}\n`);
    closeSync(handle);
    return true;
  } catch (thrown) {
    if (isSystemError(thrown) && thrown.code === 'EEXIST') return false;
    if (!isSystemError(thrown)) throw thrown;
    rmSync(path, { force: true });
    return refuse(`${dirname(path)} can't be written to: ${reason(thrown)}.`);
  }
}

function contentOf(path: string): string | undefined {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return undefined;
  }
}

/** Whether the lock's process ran on this machine and is gone, or the lock was left before it was signed. */
function isDead(path: string): boolean {
  const content = contentOf(path);
  if (content === undefined) return false;
  const [, pid, host] = /^(\d+) (.*)\n$/.exec(content) ?? [];
  if (pid === undefined) return ageOf(path) > TAKEOVER;
  return host === hostname() && !isRunning(Number(pid));
}

function ageOf(path: string): number {
  const found = statSync(path, { throwIfNoEntry: false });
  return found === undefined ? 0 : Date.now() - found.mtimeMs;
}

/** Takes a dead lock away. Only one process does so at a time, and it looks again first. */
function takeAway(path: string): void {
  const taking = `${path}.taking`;
  if (!made(taking)) {
    if (ageOf(taking) > TAKEOVER) rmSync(taking, { force: true });
    return;
  }
  try {
    if (isDead(path)) rmSync(path, { force: true });
  } finally {
    rmSync(taking, { force: true });
  }
}

function holder(path: string): string {
  const [, pid, host] = /^(\d+) (.*)\n$/.exec(contentOf(path) ?? '') ?? [];
  return pid === undefined ? 'not known which' : `process ${pid} on ${host}`;
}
