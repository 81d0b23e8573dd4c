// Sheets of criteria: their cells as tests of the rows of the sheet looked in. Every row of criteria is an alternative, all
// its filled cells must hold; text cells are conditions (">8 in", "<>early", "="), read by the type of the column looked at.
// Called by database-plans.ts.

import { readDate } from '../../functions/standard/reading.ts';
import { hasOwnDigits } from '../../functions/standard/types.ts';
import { splitCondition } from '../../language/conditions.ts';
import { bracketed, tableName } from '../../language/printer.ts';
import { exampleCondition } from '../../language/sheets.ts';
import type { Comparison, CriteriaPair, Typed } from '../../language/typed.ts';
import { typeInWords } from '../../language/wording.ts';
import { BLANK, FAULT, FILLED } from '../../values/column.ts';
import { readEntry } from '../../values/entry.ts';
import type { CellError } from '../../values/error.ts';
import { compareNumbers } from '../../values/tolerance.ts';
import { isText, type ValueType } from '../../values/type.ts';
import type { Frame } from '../frame.ts';
import { ORDERS } from '../kernels/compare-kernels.ts';
import type { ColumnDef, TableDef } from '../layout.ts';
import { keyColumn, type Reader } from './reader.ts';
import type { WholeReads } from './whole-reads.ts';

export type CriteriaNode = Extract<Typed, { node: 'criteria' }>;

type Meets = (value: number, state: number, frame: Frame) => boolean;

interface Test {
  readonly looked: ColumnDef;
  readonly meets: Meets;
}

/** A row of criteria: all its tests must hold. */
type Alternative = readonly Test[];

/** The rows (as slots, in order) that meet the criteria, or the number of the fault that stands among them. */
export type Met = { readonly rows: Int32Array } | { readonly fault: number };

/** A cell of criteria as a test of a stored value; or what is wrong with it. */
type ReadCell = (value: number, frame: Frame) => Meets | CellError;

interface PlannedPair {
  readonly looked: ColumnDef;
  readonly given: ColumnDef;
  readonly read: ReadCell;
}

/** Reads everything the criteria rest on; gives the rows that meet them as the sheets stand when it is called. */
export function planCriteria(node: CriteriaNode, reads: WholeReads, reader: Reader): (frame: Frame) => Met {
  const of = reads.rows(node.of);
  const criteria = reads.rows(node.table);
  const pairs = node.pairs.map((pair) => planPair(pair, node, reads, reader));
  return (frame) => {
    const alternatives: Alternative[] = [];
    for (const row of frame.rows(criteria)) {
      const tests: Test[] = [];
      for (const { looked, given, read } of pairs) {
        const { values, states } = frame.column(given);
        const [value, state] = [values[row] ?? 0, states[row] ?? BLANK];
        if (state === BLANK) continue;
        const meets = state === FAULT ? reader.words.faults.error(value) : read(value, frame);
        if (typeof meets !== 'function') return { fault: reader.words.faults.number(meets) };
        tests.push({ looked, meets });
      }
      alternatives.push(tests);
    }
    return { rows: rowsMeeting(frame, of, alternatives) };
  };
}

function rowsMeeting(frame: Frame, of: TableDef, alternatives: readonly Alternative[]): Int32Array {
  const passes = ({ looked, meets }: Test, row: number): boolean => {
    const { values, states } = frame.column(looked);
    return meets(values[row] ?? 0, states[row] ?? BLANK, frame);
  };
  return frame.rows(of).filter((row) => alternatives.some((tests) => tests.every((test) => passes(test, row))));
}

function planPair(pair: CriteriaPair, node: CriteriaNode, reads: WholeReads, reader: Reader): PlannedPair {
  const { looked, given } = pair;
  const where = {
    looked: tableName(reader.tableName(node.of)) + bracketed(reader.columnName(node.of, looked.column)),
    given: tableName(reader.tableName(node.table)) + bracketed(reader.columnName(node.table, given.column)),
  };
  return {
    looked: reads.column(node.of, looked.column),
    given: reads.column(node.table, given.column),
    read: readerOf(looked.type, given.type, where, reads, reader),
  };
}

interface Where {
  readonly looked: string;
  readonly given: string;
}

function readerOf(looked: ValueType, given: ValueType, where: Where, reads: WholeReads, reader: Reader): ReadCell {
  const { texts } = reader.words;
  if (isText(given)) {
    const compare = isText(looked) || looked.kind === 'link' ? wordsTest(looked, reads, reader) : undefined;
    return (code) => conditionTest(texts.text(code), looked, where, reader, compare);
  }
  if (given.kind === 'link' && looked.kind !== 'link') {
    const textOf = textsOf(given, reads, reader);
    const compare = wordsTest(looked, reads, reader);
    return (slot, frame) => compare('=', textOf(slot, frame) ?? '');
  }
  return (wanted) => (value, state) => state === FILLED && compareNumbers(value, wanted) === 0;
}

/** The text of a stored value: of a link that of its row's key. */
function textsOf(
  type: ValueType,
  reads: WholeReads,
  reader: Reader,
): (value: number, frame: Frame) => string | undefined {
  const { texts } = reader.words;
  if (type.kind !== 'link') return (code) => texts.text(code);
  const column = reads.column(type.table, keyColumn(reader, type.table).id);
  return (slot, frame) => {
    const keys = frame.column(column);
    return keys.states[slot] === FILLED ? texts.text(keys.values[slot] ?? -1) : undefined;
  };
}

/** Compares texts ignoring case. */
function wordsTest(
  looked: ValueType,
  reads: WholeReads,
  reader: Reader,
): (comparison: Comparison, wanted: string) => Meets {
  const textOf = textsOf(looked, reads, reader);
  return (comparison, wanted) => {
    const takes = ORDERS[comparison];
    const other = wanted.toLowerCase();
    return (value, state, frame) => {
      const one = state === FILLED ? textOf(value, frame)?.toLowerCase() : undefined;
      return one !== undefined && takes(one === other ? 0 : one < other ? -1 : 1);
    };
  };
}

/** The test that a text stands for: a comparison and a value; = and <> alone ask for blanks and for what is filled in. */
function conditionTest(
  text: string,
  type: ValueType,
  where: Where,
  reader: Reader,
  compareWords: ((comparison: Comparison, wanted: string) => Meets) | undefined,
): Meets | CellError {
  const { comparison, rest } = splitCondition(text);
  const typed = rest.trim();
  const sign = comparison ?? '=';
  if (typed === '') {
    if (sign === '=') return (_, state) => state === BLANK;
    if (sign === '<>') return (_, state) => state !== BLANK;
  } else if (compareWords !== undefined) return compareWords(sign, typed);
  const wanted = typed === '' ? undefined : wantedValue(typed, type, reader);
  if (wanted === undefined) return unreadable(text, type, where);
  const takes = ORDERS[sign];
  return (value, state) => state === FILLED && takes(compareNumbers(value, wanted));
}

/** What a number, quantity, date or yes or no reads as; a quantity must name its unit, since a text has none of its own. */
function wantedValue(text: string, type: ValueType, reader: Reader): number | undefined {
  if (type.kind === 'date') return readDate(text);
  const read = readEntry(text, type, { vocabulary: reader.vocabulary, year: 0 });
  if (!read.ok) return undefined;
  const value = Number(read.value);
  const unitSaid = read.unit !== undefined || type.kind === 'yesno' || hasOwnDigits(type);
  return unitSaid || (value === 0 && type.kind === 'number') ? value : undefined;
}

function unreadable(text: string, type: ValueType, { looked, given }: Where): CellError {
  return {
    error: 'value',
    why: `The condition ${text.trim()} in ${given} can't be read: ${looked} is ${typeInWords(type)}, so write it as in ${exampleCondition(type)}.`,
  };
}
