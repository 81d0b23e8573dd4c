// What two people do in copies of one workbook, and how one hears of what the other did: for the tests that bring their work together.

import type { Command, Transaction, Workbook } from '../../engine/index.ts';
import { BEGINNING } from './farm.ts';

export const MESSAGE = { code: 'work', parts: {} };

/** The plantings that the workbook begins with. */
export const [P1 = '', P2 = '', P3 = ''] = (BEGINNING.rows.plantings ?? []).map(({ id }) => id);

export function done(workbook: Workbook, command: Command): Transaction {
  const answer = workbook.do([command], MESSAGE);
  if (answer.refused) throw new Error(answer.why);
  return answer.transaction;
}

export function undone(workbook: Workbook): Transaction {
  const step = workbook.undo();
  if (step === undefined) throw new Error('nothing to take back');
  return step.transaction;
}

/** As it arrives at the other. */
export function remote(transaction: Transaction): Transaction {
  return { ...transaction, source: 'remote' };
}

export function hear(workbook: Workbook, transactions: readonly Transaction[]): void {
  for (const one of transactions) workbook.receive(remote(one));
}

/** Typing in a cell of Plantings. */
export function cell(row: string, column: string, entry: string): Command {
  return { command: 'set cell', sheet: 'plantings', row, column, entry };
}
