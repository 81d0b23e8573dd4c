// What a page that is going had not put on the disk yet: changes of the last moment, written where writing needs no waiting, and
// taken up by the next visit of the same workbook. keeper.ts and beginning.ts leave them, showing.ts takes them.

import type { Transaction } from '../../../engine/index.ts';
import { remember, remembered } from '../store/single-words.ts';

/** More than this is not for a last moment, and is what the browser's own question before leaving is for. */
const MOST = 500_000;

const nameOf = (id: string): string => `dibble last words of ${id}`;

/** Leaves changes for the next visit, after those that another tab may have left. */
export function leaveLastWords(id: string, unsaved: readonly Transaction[]): void {
  if (unsaved.length === 0) return;
  const text = JSON.stringify([...read(id), ...unsaved]);
  if (text.length <= MOST) remember(nameOf(id), text);
}

/** What was left for this workbook; it is not there a second time. */
export function takeLastWords(id: string): readonly Transaction[] {
  const found = read(id);
  if (found.length > 0) remember(nameOf(id), '');
  return found;
}

function read(id: string): readonly Transaction[] {
  const text = remembered(nameOf(id)) ?? '';
  if (text === '') return [];
  try {
    const found: unknown = JSON.parse(text);
    return Array.isArray(found) ? found.filter(isTransaction) : [];
  } catch {
    return [];
  }
}

function isTransaction(found: unknown): found is Transaction {
  if (typeof found !== 'object' || found === null) return false;
  return 'id' in found && typeof found.id === 'string' && 'operations' in found && Array.isArray(found.operations);
}
