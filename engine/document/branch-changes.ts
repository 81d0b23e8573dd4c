// How the changes of a branch rest on each other: a cell on the row, column or sheet that another change of the branch
// brought. Whoever takes single changes over takes with them what they rest on. Called by commands, and by template-rows.ts.

import { idsIn } from '../language/stored.ts';
import { type Content, isLinkContent } from './content.ts';
import { type BranchData, type Operation, oneByOne, type Transaction } from './transaction.ts';

/** The changes chosen and those before them that they rest on, in the order of the branch. */
export function withWhatTheyRestOn(
  changes: readonly Transaction[],
  chosen: ReadonlySet<string>,
): readonly Transaction[] {
  const taken: Transaction[] = [];
  const needed = new Set<string>();
  for (const change of changes.toReversed()) {
    const operations = change.operations.flatMap(oneByOne);
    const brings = operations.flatMap(broughtBy);
    if (!chosen.has(change.id) && !brings.some((thing) => needed.has(thing))) continue;
    taken.unshift(change);
    for (const thing of brings) needed.delete(thing);
    for (const thing of operations.flatMap(namedBy)) needed.add(thing);
  }
  return taken;
}

/** What the branches kept in a workbook change or name, a row as rowOf has it or, where a link leads there, by its id alone. */
export function namedInBranches(branches: ReadonlyMap<string, BranchData>): ReadonlySet<string> {
  const operations = [...branches.values()].flatMap(({ changes }) => changes.flatMap((change) => change.operations));
  return new Set(operations.flatMap(oneByOne).flatMap(namedBy));
}

/** What is there from this operation on: a sheet, 'sheet/column', a row. */
function broughtBy(operation: Operation): readonly string[] {
  switch (operation.op) {
    case 'add sheet':
      return [operation.sheet.id];
    case 'add column':
      return [`${operation.sheet}/${operation.column.id}`];
    case 'insert row':
      return [rowOf(operation.sheet, operation.row), operation.row];
    default:
      return [];
  }
}

/** What must be there for this operation to do its work. */
function namedBy(operation: Operation): readonly string[] {
  switch (operation.op) {
    case 'cell': {
      const { sheet, row, column, content } = operation;
      return [sheet, `${sheet}/${column}`, rowOf(sheet, row), ...rowIn(content)];
    }
    case 'range':
    case 'note':
      return [operation.sheet, `${operation.sheet}/${operation.column}`, rowOf(operation.sheet, operation.row)];
    case 'formula':
      return [operation.sheet, `${operation.sheet}/${operation.column}`, ...idsIn(operation.formula ?? '')];
    case 'add column':
      return [operation.sheet, ...namedIn(operation.sheet, operation.column)];
    case 'check':
    case 'view':
    case 'colour':
      return [operation.sheet, ...namedIn(operation.sheet, operation.declaration)];
    case 'add sheet': {
      const { id, rows } = operation.sheet;
      const dates = rows.from === 'events' ? rows.dates : [];
      return [...namedIn(id, operation.sheet), ...dates.map(({ sheet, column }) => `${sheet}/${column}`)];
    }
    case 'insert row':
      return [operation.sheet];
    case 'remove row':
    case 'move row':
    case 'keep row':
      return [operation.sheet, rowOf(operation.sheet, operation.row)];
    case 'remove column':
    case 'rename column':
    case 'move column':
      return [operation.sheet, `${operation.sheet}/${operation.column}`];
    case 'remove sheet':
    case 'rename sheet':
    case 'move sheet':
      return [operation.sheet];
    case 'template':
      return (operation.held ?? []).flatMap(oneByOne).flatMap(namedBy);
    default:
      return [];
  }
}

/**
 * What a declaration of a sheet may name, whichever of its texts it is: a sheet that it links to or is made from, a column beside
 * it, what a formula reads. A text that is no id names nothing that a change brings.
 */
function namedIn(sheet: string, declaration: unknown): readonly string[] {
  return textsIn(declaration).flatMap((text) => [text, `${sheet}/${text}`, ...idsIn(text)]);
}

function textsIn(data: unknown): readonly string[] {
  if (typeof data === 'string') return [data];
  if (typeof data !== 'object' || data === null) return [];
  return Object.entries(data).flatMap(([key, value]) => [key, ...textsIn(value)]);
}

/** A row among the things that changes name. */
export function rowOf(sheet: string, row: string): string {
  return `row ${sheet} ${row}`;
}

/** A link says the row alone, so every row called so counts. */
function rowIn(content: Content): readonly string[] {
  return isLinkContent(content) ? [content.row] : [];
}
