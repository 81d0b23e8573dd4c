// Why a cell is what it is: its formula in words and in values, the cells it reads, and for blanks and errors where they
// began. One level at a time; deeper levels are explained when asked for.

import type { Tree } from '../language/tree.ts';
import type { Typed } from '../language/typed.ts';
import { FILLED } from '../values/column.ts';
import { isError } from '../values/error.ts';
import { cellInWords, rowName, scalarAt, standingOf } from './cells.ts';
import type { Explanation } from './face.ts';
import { reparsed } from './formula-text.ts';
import { findSheetColumn, isComputed, isTyped, type Sheet, type SheetColumn } from './sheet.ts';
import type { State } from './state.ts';

/** How many cells of a whole column or group are named one by one. */
const MOST_NAMED = 30;

interface Place {
  readonly sheet: Sheet;
  readonly row: number;
  readonly column: SheetColumn;
}

/** The explanation of a cell with its inputs one level down; undefined where there is no such cell. */
export function explainCell(
  state: State,
  table: string,
  row: number,
  column: string,
  depth = 1,
): Explanation | undefined {
  const sheet = state.sheet(table);
  const found = sheet === undefined ? undefined : findSheetColumn(sheet, column);
  if (sheet === undefined || found === undefined || sheet.data.live[row] !== 1) return undefined;
  return explain(state, { sheet, row, column: found }, depth);
}

function explain(state: State, place: Place, depth: number): Explanation {
  const { sheet, row, column } = place;
  const worked = isComputed(column) && !isTyped(column, row);
  const reads = worked && column.typed !== undefined ? readsOf(state, place, column.typed) : [];
  return {
    table: sheet.name,
    row,
    rowName: rowName(sheet, row, state),
    column: column.declaration.name,
    shown: cellInWords(column, row, state),
    standing: standingOf(column, row),
    formula: worked ? column.formula : '',
    inValues: worked && column.complaint === undefined ? inValues(state, place) : '',
    why: whyOf(state, place, reads),
    rests: depth > 0 ? reads.slice(0, MOST_NAMED).map((read) => explain(state, read, depth - 1)) : [],
  };
}

function whyOf(state: State, place: Place, reads: readonly Place[]): string {
  const { sheet, row, column } = place;
  if (column.complaint !== undefined) return column.complaint.why;
  const value = scalarAt(column, row, state);
  if (isError(value)) {
    const at = value.at;
    if (at === undefined || (at.table === sheet.name && at.row === row && at.column === column.declaration.name))
      return value.why;
    const origin = state.sheet(at.table);
    const named = origin === undefined || at.row < 0 ? at.table : `${at.table} / ${rowName(origin, at.row, state)}`;
    return `${value.why} It began at ${named} / ${at.column}.`;
  }
  if (value !== null) return '';
  const blanks = reads.filter((read) => scalarAt(read.column, read.row, state) === null);
  const [first] = blanks;
  if (first !== undefined) {
    const names = [...new Set(blanks.map((read) => read.column.declaration.name))];
    return `Blank, because ${names.join(' and ')} ${names.length === 1 ? 'is' : 'are'} blank.`;
  }
  return isComputed(column) ? 'Blank: the formula has no answer here.' : 'Nothing has been entered.';
}

/** The cells that a formula reads for one row, each once, in reading order. */
function readsOf(state: State, place: Place, tree: Typed): readonly Place[] {
  const found = new Map<string, Place>();
  const add = (sheet: Sheet | undefined, row: number, name: string): void => {
    const column = sheet === undefined ? undefined : findSheetColumn(sheet, name);
    if (sheet === undefined || column === undefined || sheet.data.live[row] !== 1) return;
    found.set(`${sheet.name} ${row} ${name}`, { sheet, row, column });
  };
  const walk = (node: Typed): void => {
    switch (node.node) {
      case 'cell': {
        let sheet: Sheet | undefined = place.sheet;
        let row: number | undefined = place.row;
        for (const link of node.links) {
          if (sheet !== undefined && row !== undefined) add(sheet, row, link);
          const next: { sheet: Sheet | undefined; row: number | undefined } = follow(state, sheet, row, link);
          sheet = next.sheet;
          row = next.row;
        }
        if (row !== undefined) add(sheet, row, node.column);
        return;
      }
      case 'single':
        add(state.sheet(node.table), 0, node.column);
        return;
      case 'column': {
        const sheet = state.sheet(node.table);
        for (const row of (sheet?.data.rows() ?? new Int32Array(0)).subarray(0, MOST_NAMED))
          add(sheet, row, node.column);
        return;
      }
      case 'negate':
      case 'key':
        walk(node.operand);
        return;
      case 'binary':
        walk(node.left);
        walk(node.right);
        return;
      case 'condition':
        walk(node.value);
        return;
      case 'criteria': {
        const sheet = state.sheet(node.table);
        for (const row of (sheet?.data.rows() ?? new Int32Array(0)).subarray(0, MOST_NAMED))
          for (const { given } of node.pairs) add(sheet, row, given.column);
        return;
      }
      case 'call':
        walkCall(node);
        return;
      default:
        return;
    }
  };
  const walkCall = (node: Extract<Typed, { node: 'call' }>): void => {
    const conditional = node.args.some((argument) => argument.node === 'condition');
    if (!conditional) {
      node.args.forEach(walk);
      return;
    }
    // Conditional totals: the rows that a person would count are those that agree with this row's own cells.
    const matching = matchingRows(state, place, node.args);
    for (const argument of node.args) {
      if (argument.node !== 'column') walk(argument);
      else if (!isCriterion(node.args, argument))
        for (const row of matching) add(state.sheet(argument.table), row, argument.column);
    }
  };
  walk(tree);
  return [...found.values()];
}

function isCriterion(args: readonly Typed[], argument: Typed): boolean {
  return args[args.indexOf(argument) + 1]?.node === 'condition';
}

/** Rows of the columns' sheet that meet the equalities with this row; other conditions are not looked at here. */
function matchingRows(state: State, place: Place, args: readonly Typed[]): readonly number[] {
  const first = args.find((argument) => argument.node === 'column');
  if (first?.node !== 'column') return [];
  const sheet = state.sheet(first.table);
  if (sheet === undefined) return [];
  const tests: ((row: number) => boolean)[] = [];
  args.forEach((argument, i) => {
    const condition = args[i + 1];
    if (argument.node !== 'column' || condition?.node !== 'condition' || condition.comparison !== '=') return;
    const column = findSheetColumn(sheet, argument.column);
    const value = condition.value;
    if (column === undefined) return;
    const wanted = valueInWords(state, place, value);
    if (wanted !== undefined)
      tests.push((row) => cellInWords(column, row, state).toLowerCase() === wanted.toLowerCase());
  });
  const rows: number[] = [];
  for (const row of sheet.data.rows()) {
    if (rows.length >= MOST_NAMED) break;
    if (tests.every((test) => test(row))) rows.push(row);
  }
  return rows;
}

function valueInWords(state: State, place: Place, value: Typed): string | undefined {
  if (value.node === 'constant') return typeof value.value === 'string' ? value.value : undefined;
  const cell = value.node === 'key' ? value.operand : value;
  if (cell.node !== 'cell' || cell.links.length > 0) return undefined;
  const column = findSheetColumn(place.sheet, cell.column);
  return column === undefined ? undefined : cellInWords(column, place.row, state);
}

function follow(
  state: State,
  sheet: Sheet | undefined,
  row: number | undefined,
  link: string,
): { sheet: Sheet | undefined; row: number | undefined } {
  const column = sheet === undefined ? undefined : findSheetColumn(sheet, link);
  if (column?.type?.kind !== 'link' || row === undefined) return { sheet: undefined, row: undefined };
  const filled = column.data.states[row] === FILLED;
  return { sheet: state.sheet(column.type.table), row: filled ? column.data.values[row] : undefined };
}

/** The formula with this row's values in place of the names of cells. */
function inValues(state: State, place: Place): string {
  const { column } = place;
  const tree = reparsed(column.formula, state);
  if (tree === undefined) return '';
  const pieces: { readonly from: number; readonly to: number; readonly text: string }[] = [];
  const walk = (node: Tree): void => {
    switch (node.tree) {
      case 'cell': {
        const names = node.path.map((name) => name.text);
        const last = names.pop() ?? '';
        let sheet: Sheet | undefined = place.sheet;
        let row: number | undefined = place.row;
        for (const link of names) ({ sheet, row } = follow(state, sheet, row, link));
        const target = sheet === undefined ? undefined : findSheetColumn(sheet, last);
        const text = target === undefined || row === undefined ? 'blank' : cellInWords(target, row, state);
        pieces.push({ from: node.from, to: node.to, text });
        return;
      }
      case 'column': {
        const sheet = state.sheet(node.table.text);
        if (sheet?.source.from !== 'single') return;
        const target = findSheetColumn(sheet, node.column.text);
        if (target !== undefined) pieces.push({ from: node.from, to: node.to, text: cellInWords(target, 0, state) });
        return;
      }
      case 'unary':
        walk(node.operand);
        return;
      case 'binary':
        walk(node.left);
        walk(node.right);
        return;
      case 'call':
        for (const argument of node.args) if (argument.tree !== 'missing') walk(argument);
        return;
      default:
        return;
    }
  };
  walk(tree);
  let text = '';
  let at = 0;
  for (const piece of pieces.sort((a, b) => a.from - b.from)) {
    text += column.formula.slice(at, piece.from) + piece.text;
    at = piece.to;
  }
  return (text + column.formula.slice(at)).replace(/^\s*=/, '').trim();
}
