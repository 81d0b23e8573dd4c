// The rows of one step a part at a time, so that a page stays in hand while a sheet of many thousand rows is worked out.

import { BATCH } from '../kernels/vector.ts';
import type { RowSet } from '../row-set.ts';

/** So many rows are worked out between two looks at the time. */
export const AT_ONCE = BATCH;

/**
 * Works out the rows that wait, of so many, for as long as `goOn` says, and one part at least: `whole` where all of them are one part, else `some` of
 * them again and again. True where rows are left, which then are all that wait.
 */
export function inParts(
  waiting: RowSet,
  length: number,
  goOn: () => boolean,
  { whole, some }: { readonly whole: () => void; readonly some: (rows: Int32Array) => void },
): boolean {
  const count = waiting.all ? length : waiting.count;
  if (count <= AT_ONCE) {
    whole();
    return false;
  }
  if (waiting.all) waiting.listAll(length);
  const rows = waiting.sorted();
  let done = 0;
  do {
    const part = rows.subarray(done, done + AT_ONCE);
    some(part);
    done += part.length;
  } while (done < count && goOn());
  waiting.dropFirst(done);
  return done < count;
}
