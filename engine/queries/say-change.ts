// A transaction as a line of a list: its sentence with the rows it touched, which the sentence itself may leave out.

import { sayMessage } from '../commands/messages.ts';
import type { Transaction } from '../document/transaction.ts';
import type { Book } from './book.ts';
import { rowName } from './shown.ts';

/** Rows named at most. */
const FEW = 2;

/** 'Length: 40 ft (Onions)', as the rows are called in this book. */
export function sayChange(book: Book, { message, operations }: Transaction): string {
  const names = new Set<string>();
  for (const operation of operations) {
    if (operation.op !== 'cell') continue;
    const slot = book.document.slotOf(operation.sheet, operation.row);
    if (slot !== undefined) names.add(rowName(book, operation.sheet, slot));
  }
  const said = sayMessage(message);
  const few = [...names].slice(0, FEW);
  if (few.length === 0 || few.every((name) => said.includes(name))) return said;
  return `${said} (${few.join(', ')}${names.size > FEW ? ` and ${names.size - FEW} more` : ''})`;
}
