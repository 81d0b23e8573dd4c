// The only way anything in a workbook changes, is undone, kept, sent or told: a transaction, plain data as it stands. Its
// operations go by ids. changes.ts does one to a document and gives its inverse; this file joins them.

import type { CheckDeclaration, ColumnDeclaration, SheetDeclaration, UnitSystem } from '../schema/declaration.ts';
import type { After, OwnColumn, OwnSheet } from '../schema/own.ts';
import type { ById } from '../schema/records.ts';
import type { ColourRule, ViewDeclaration } from '../schema/views.ts';
import type { Content, ContentRange } from './content.ts';

export type Operation =
  /** What is typed in a cell; null takes it out, and gives a computed cell back to its formula. */
  | {
      readonly op: 'cell';
      readonly sheet: string;
      readonly row: string;
      readonly column: string;
      readonly content: Content;
      /** What a row that was taken out held: it stays out. */
      readonly aside?: true | undefined;
    }
  /** How far what is typed in a cell may be off; null: it is not said. */
  | {
      readonly op: 'range';
      readonly sheet: string;
      readonly row: string;
      readonly column: string;
      readonly range: ContentRange | null;
    }
  /** A row of an entered sheet comes (or comes back, with what it held); one that is there is as this says from here on. */
  | {
      readonly op: 'insert row';
      readonly sheet: string;
      readonly row: string;
      readonly at: string;
      readonly broughtBack?: true | undefined;
    }
  /**
   * `asUnknown`: what waits for it is told as before it came, when nobody knew it. `unshipped`: nobody took it out, it goes with the
   * version of the template that brought it.
   */
  | {
      readonly op: 'remove row';
      readonly sheet: string;
      readonly row: string;
      readonly asUnknown?: true | undefined;
      readonly unshipped?: true | undefined;
    }
  /**
   * Rows of an entered sheet at once, with what they hold in the columns named: does what an 'insert row' and 'cell' for each of
   * them would, in a fraction of the time and room. A row that is known, there or taken out, holds what it holds: somebody may
   * have changed it since.
   */
  | {
      readonly op: 'insert rows';
      readonly sheet: string;
      readonly columns: readonly string[];
      readonly rows: readonly RowLine[];
    }
  | { readonly op: 'remove rows'; readonly sheet: string; readonly rows: readonly string[] }
  | { readonly op: 'move row'; readonly sheet: string; readonly row: string; readonly at: string }
  /** A row that another's change brought back stays, and is marked no longer; with `broughtBack` it is marked again. */
  | { readonly op: 'keep row'; readonly sheet: string; readonly row: string; readonly broughtBack?: true | undefined }
  /** A formula in kept form; null gives the template's back. */
  | { readonly op: 'formula'; readonly sheet: string; readonly column: string; readonly formula: string | null }
  /** A column of a person's own. */
  | {
      readonly op: 'add column';
      readonly sheet: string;
      readonly column: ColumnDeclaration;
      readonly after?: After | undefined;
    }
  /**
   * `leaving` is what stays of it in a person's own schema: absent, its name for formulas that read it; null, no trace. With
   * `sparesOthers` what others changed of it waits for it to be added again, as it does where it arrives afterwards.
   */
  | {
      readonly op: 'remove column';
      readonly sheet: string;
      readonly column: string;
      readonly leaving?: OwnColumn | null | undefined;
      readonly sparesOthers?: true | undefined;
    }
  /** null gives the template's name back. */
  | { readonly op: 'rename column'; readonly sheet: string; readonly column: string; readonly name: string | null }
  /** undefined: where the template has it, or last. */
  | { readonly op: 'move column'; readonly sheet: string; readonly column: string; readonly after?: After | undefined }
  | { readonly op: 'add sheet'; readonly sheet: SheetDeclaration; readonly after?: After | undefined }
  | {
      readonly op: 'remove sheet';
      readonly sheet: string;
      readonly leaving?: OwnSheet | null | undefined;
      readonly sparesOthers?: true | undefined;
    }
  | { readonly op: 'rename sheet'; readonly sheet: string; readonly name: string | null }
  | { readonly op: 'move sheet'; readonly sheet: string; readonly after?: After | undefined }
  /** null switches a check off; undefined gives the template's back, or takes an own one out. */
  | {
      readonly op: 'check';
      readonly sheet: string;
      readonly check: string;
      readonly declaration?: CheckDeclaration | null | undefined;
    }
  /** undefined gives the sheet's own view back, or takes a person's own out; null puts one of the sheet's away. */
  | {
      readonly op: 'view';
      readonly sheet: string;
      readonly view: string;
      readonly declaration?: ViewDeclaration | null | undefined;
    }
  /** undefined takes a colour out. */
  | {
      readonly op: 'colour';
      readonly sheet: string;
      readonly rule: string;
      readonly declaration?: ColourRule | undefined;
    }
  /** null takes a note off its cell. */
  | {
      readonly op: 'note';
      readonly sheet: string;
      readonly row: string;
      readonly column: string;
      readonly note: string | null;
    }
  /** null: as the machine says. */
  | { readonly op: 'locale'; readonly locale: string | null }
  | { readonly op: 'units'; readonly units: UnitSystem }
  /** The civil day that TODAY() gives. */
  | { readonly op: 'today'; readonly today: number }
  | { readonly op: 'title'; readonly title: string }
  /** A branch that is kept in the workbook, as it is from here on; null: no such branch any more. */
  | { readonly op: 'branch'; readonly branch: string; readonly holds: BranchData | null }
  /** A scratch paper's name; null: no such paper any more, but for what is typed on it. */
  | { readonly op: 'paper'; readonly paper: string; readonly name: string | null }
  /** What is typed in a cell of a scratch paper; null clears it. */
  | { readonly op: 'paper cell'; readonly paper: string; readonly cell: string; readonly entry: string | null }
  /**
   * Another version of the workbook's template. The rows it ships follow, but for what the person changed; they stay as they
   * are where this takes a step back, and `held` says what makes them what they were: done with it or not at all.
   */
  | {
      readonly op: 'template';
      readonly version: number;
      readonly rows: 'follow' | 'stay';
      readonly held?: readonly Operation[] | undefined;
    };

export type OperationKind = Operation['op'];
export type OperationOf<K extends OperationKind> = Extract<Operation, { readonly op: K }>;

/** A row that comes with others. */
export interface RowLine {
  readonly row: string;
  readonly at: string;
  /** In the order of the columns; null: nothing, or nothing any more. */
  readonly cells: readonly Content[];
  /** Another person's change had brought it back. */
  readonly broughtBack?: true | undefined;
  /** Notes on its cells, and how far what is typed in them may be off, by column. */
  readonly notes?: ById<string> | undefined;
  readonly ranges?: ById<ContentRange> | undefined;
}

/** What many rows at once stand for, one by one. */
export function oneByOne(operation: Operation): readonly Operation[] {
  if (operation.op === 'remove rows') {
    const { sheet, rows } = operation;
    return rows.map((row) => ({ op: 'remove row', sheet, row }));
  }
  if (operation.op !== 'insert rows') return [operation];
  const { sheet, columns, rows } = operation;
  // All rows first, so that those among them that name each other find each other.
  return [
    ...rows.map(({ row, at, broughtBack }): Operation => ({ op: 'insert row', sheet, row, at, broughtBack })),
    ...rows.flatMap(({ row, cells, notes = {}, ranges = {} }): Operation[] => [
      ...cells.flatMap((content, i): Operation[] => {
        const column = columns[i];
        return content === null || column === undefined ? [] : [{ op: 'cell', sheet, row, column, content }];
      }),
      ...Object.entries(notes).map(([column, note]): Operation => ({ op: 'note', sheet, row, column, note })),
      ...Object.entries(ranges).map(([column, range]): Operation => ({ op: 'range', sheet, row, column, range })),
    ]),
  ];
}

/** Who or what brought a transaction about. */
export type TransactionSource = 'user' | 'import' | 'upgrade' | 'remote';

/** What was done, in a code with the parts that its sentence names; queries/messages.ts puts it into words. */
export interface Message {
  readonly code: string;
  readonly parts: Readonly<Record<string, string | number>>;
}

/** Another way that the plan could go: a name, and the transactions that lead to it from the workbook as it stands. */
export interface BranchData {
  readonly name: string;
  readonly changes: readonly Transaction[];
}

export interface Transaction {
  readonly id: string;
  readonly actor: string;
  /** Milliseconds of the actor's clock; given in, for the engine has no clock. */
  readonly time: number;
  readonly source: TransactionSource;
  readonly message: Message;
  readonly operations: readonly Operation[];
  /** The transaction that this one takes back, or does again. */
  readonly undoes?: string;
  /** Of one that takes another back: for good, it is not to be done again. */
  readonly forgets?: true;
  readonly redoes?: string;
  /** The transaction right before, of whose step of undo this one is a part: a drag is many transactions and one step. */
  readonly joins?: string;
}

/** One transaction that does what the first and then the second did, told as the second. */
export function compose(first: Transaction, second: Transaction): Transaction {
  return { ...second, operations: [...first.operations, ...second.operations] };
}

/**
 * Composed, without what the second overwrites: a drag touches the same cells over and over, and the last content of each is
 * enough. Anything but a cell stands where it stood, and cells before it are not joined with cells after it.
 */
export function squash(first: Transaction, second: Transaction): Transaction {
  return { ...second, operations: squashed([...first.operations, ...second.operations]) };
}

function squashed(operations: readonly Operation[]): readonly Operation[] {
  const kept: (Operation | undefined)[] = [];
  const places = new Map<string, number>();
  for (const operation of operations) {
    const place = placeOf(operation);
    if (place === undefined) {
      places.clear();
      kept.push(operation);
      continue;
    }
    const before = places.get(place);
    if (before === undefined) {
      places.set(place, kept.length);
      kept.push(operation);
    } else kept[before] = operation;
  }
  return kept.flatMap((operation) => operation ?? []);
}

/** What of several operations on one place only the last need be kept of. */
function placeOf(operation: Operation): string | undefined {
  if (operation.op === 'branch') return JSON.stringify(['branch', operation.branch]);
  if (operation.op === 'paper cell') return JSON.stringify(['paper cell', operation.paper, operation.cell]);
  return operation.op === 'cell' ? JSON.stringify([operation.sheet, operation.row, operation.column]) : undefined;
}
