// Changes of a branch that the plan has no place for any more.

import { lossesOf } from '../document/branch-losses.ts';
import type { Transaction } from '../document/transaction.ts';
import type { Book } from './book.ts';

/** By id of the change: whether all of it is lost, or only some. */
export function lostChanges({ document }: Book, changes: readonly Transaction[]): ReadonlyMap<string, 'some' | 'all'> {
  return lossesOf(document, changes);
}
