// What a file does to a sheet, in words: before it is taken, and once it was.

import type { Preview } from './messages.ts';

/** 'The file adds 3 rows, changes 1 row. 2 rows can’t be taken.' */
export function countsOf({ added, updated, unchanged, refused }: Preview): string {
  const parts = [
    added > 0 ? `adds ${rowsInWords(added)}` : '',
    updated > 0 ? `changes ${rowsInWords(updated)}` : '',
    unchanged > 0 ? `says nothing new of ${rowsInWords(unchanged)}` : '',
  ].filter((part) => part !== '');
  const does = parts.length === 0 ? 'The file changes nothing.' : `The file ${parts.join(', ')}.`;
  return refused === 0 ? does : `${does} ${rowsInWords(refused)} can’t be taken.`;
}

export function rowsInWords(count: number): string {
  return count === 1 ? '1 row' : `${count} rows`;
}

/** '3 rows added, 1 row changed; 2 rows could not be taken and were left out.' */
export function takenInWords({ added, updated, refused }: Preview): string {
  const did = [
    added > 0 ? `${rowsInWords(added)} added` : '',
    updated > 0 ? `${rowsInWords(updated)} changed` : '',
  ].filter((part) => part !== '');
  const left =
    refused === 0 ? '' : `; ${rowsInWords(refused)} could not be taken and ${refused === 1 ? 'was' : 'were'} left out`;
  return `${did.join(', ')}${left}.`;
}
