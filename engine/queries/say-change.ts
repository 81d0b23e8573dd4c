// A transaction as a line of a list: its sentence with the rows it touched, which the sentence itself may leave out.

import { sayMessage } from '../commands/messages.ts';
import type { Transaction } from '../document/transaction.ts';
import { type Book, sheetOf } from './book.ts';
import { namingColumns, rowName } from './shown.ts';

/** Rows named at most. */
const FEW = 2;

/** What stands for the rows of a sheet that is no more. */
const OF_NO_SHEET = 'in a sheet that was removed';

/** 'Length: 40 ft (Onions)', as the rows are called in this book, or were called last where they are no more. */
export function sayChange(book: Book, { message, operations }: Transaction): string {
  const names = new Set<string>();
  for (const operation of operations) {
    if (operation.op !== 'cell') continue;
    const name = nameOf(book, operation.sheet, operation.row);
    if (name !== '') names.add(name);
  }
  const said = sayMessage(message);
  const few = [...names].slice(0, FEW);
  if (few.length === 0 || few.every((name) => said.includes(name))) return said;
  return `${said} (${few.join(', ')}${names.size > FEW ? ` and ${names.size - FEW} more` : ''})`;
}

/** '' where a row that was removed had no name of its own. */
function nameOf(book: Book, sheetId: string, row: string): string {
  const { document } = book;
  const slot = document.slotOf(sheetId, row);
  if (slot !== undefined) return rowName(book, sheetId, slot);
  const sheet = sheetOf(book, sheetId);
  if (sheet === undefined) return OF_NO_SHEET;
  const contents = namingColumns(sheet).map((column) => document.contentOf(sheetId, row, column));
  return contents.filter((content) => typeof content === 'string').join(' / ');
}
