// Changes of a branch that the plan has no place for any more, because it took their row or sheet out since. Called by commands and
// queries.

import { isMadeSheet } from '../schema/schema.ts';
import type { Document } from './document.ts';
import { type Operation, oneByOne, type Transaction } from './transaction.ts';

/**
 * By id of the change: whether nothing of it would come, or only some; of changes of one branch in their order, since what one brings the
 * later ones find.
 */
export function lossesOf(document: Document, changes: readonly Transaction[]): ReadonlyMap<string, 'some' | 'all'> {
  const brought = new Set<string>();
  return new Map(
    changes.flatMap(({ id, operations }) => {
      const single = operations.flatMap(oneByOne);
      const lost = single.filter((operation) => {
        if (operation.op === 'add sheet') brought.add(operation.sheet.id);
        return isLost(document, operation, brought);
      });
      return lost.length === 0 ? [] : [[id, lost.length < single.length ? 'some' : 'all'] as const];
    }),
  );
}

/** `brought`: rows and sheets that the branch brings itself. */
function isLost(document: Document, operation: Operation, brought: Set<string>): boolean {
  if (!isOfRow(operation) || brought.has(operation.sheet)) return false;
  const { sheet, row } = operation;
  const found = document.program.sheet(sheet);
  if (found === undefined) return true;
  const named = `${sheet} ${row}`;
  if (operation.op === 'insert row') brought.add(named);
  // What is typed on a made row waits for it.
  return !brought.has(named) && !isMadeSheet(found.schema) && document.slotOf(sheet, row) === undefined;
}

type OfRow = Operation & { readonly op: 'insert row' | 'cell' | 'range' | 'note' | 'move row' };

function isOfRow(operation: Operation): operation is OfRow {
  return ['insert row', 'cell', 'range', 'note', 'move row'].includes(operation.op);
}
