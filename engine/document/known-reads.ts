// What entries were read as before: a block that is pasted says the same again and again, and is read when it is looked at and once
// more when it is taken. Called by entries.ts alone.

import type { ProgramColumn } from '../schema/compile.ts';
import type { EntryContext } from '../values/reading.ts';

interface Known<R> {
  readonly context: EntryContext;
  readonly reads: Map<string, R>;
}

/** So many of a column; with more than that it begins anew. */
const MOST = 1000;

export class KnownReads<R extends { readonly ok: boolean }> {
  readonly #known = new WeakMap<ProgramColumn, Known<R>>();

  /**
   * Reads an entry in a column, or gives what it was read as in the same context; `read` must look at nothing else. Only what could be
   * read is known: what was refused may be understood once a list of units has come.
   */
  once(column: ProgramColumn, entry: string, context: EntryContext, read: () => R): R {
    let found = this.#known.get(column);
    if (found === undefined || !isSame(found.context, context) || found.reads.size >= MOST) {
      found = { context, reads: new Map() };
      this.#known.set(column, found);
    }
    const before = found.reads.get(entry);
    if (before !== undefined) return before;
    const made = read();
    if (made.ok) found.reads.set(entry, made);
    return made;
  }
}

function isSame(one: EntryContext, other: EntryContext): boolean {
  return (
    one.vocabulary === other.vocabulary &&
    one.year === other.year &&
    one.starts === other.starts &&
    one.dayFirst === other.dayFirst &&
    one.decimalComma === other.decimalComma &&
    one.writing === other.writing
  );
}
