// A sum that has proved itself becomes a column: the formula of a cell, with the cells it reads, in the language of the workbook.
// INDEX(Plantings_Length_ft, 3) stands for the length of the row, 3 being the row for which the sum was tried; whole columns
// stay whole. Numbers of the paper are plain, so every column is divided by the unit in its name. What can't be said so is
// refused with the reason.

import { FUNCTIONS, type Parameter, parameterAt } from '../../engine/index.ts';
import { type A1Tree, treeOf, Unreadable } from './a1-tree.ts';
import { blockOf, cellName, cellNamed, cellsOf } from './addresses.ts';
import { answerOf, columnsOfLetters, letterOf } from './answer-units.ts';
import { measureOf, measureOfAnswer, typeSeen } from './call-measures.ts';
import { FROM_ENGINE } from './engine-functions.ts';
import { readsAsNumber } from './figures.ts';
import { isFormula } from './formula-words.ts';
import { withoutLet } from './let.ts';
import type { NamedColumn } from './names.ts';
import {
  columnText,
  counted,
  dateText,
  type Kind,
  ofUnit,
  open,
  type Part,
  plain,
  plainOf,
  quoted,
  whole,
  within,
} from './parts.ts';
import type { ScratchRoom } from './room.ts';

export interface SumPlace {
  readonly paper: string;
  readonly cell: string;
  /** What is typed in a cell of the paper; null for nothing. */
  readonly entryAt: (cell: string) => string | null;
}

export type Translated =
  /** `row` is the row of the sheet that it was tried for, from 0; undefined where it reads no single row. */
  | { readonly ok: true; readonly formula: string; readonly row: number | undefined }
  | { readonly ok: false; readonly why: string };

/** Folds of one column whose answer counts in the column's unit. */
const IN_ITS_UNIT =
  /^(SUM|AVERAGE|MIN|MAX|MEDIAN|STDEV|STDEVP|STDEV\.S|STDEV\.P|LARGE|SMALL|PERCENTILE|PERCENTILE\.INC|QUARTILE|QUARTILE\.INC)$/;
const COUNTS = /^(COUNT|COUNTA|COUNTBLANK|ROWS)$/;
const BY_CONDITION = /^(SUMIFS|AVERAGEIFS|MINIFS|MAXIFS|COUNTIFS)$/;
const BY_ONE_CONDITION = /^(SUMIF|AVERAGEIF|COUNTIF)$/;
/** Cells of a block may stand one after the other. */
const OF_MANY = /^(SUM|AVERAGE|MIN|MAX|MEDIAN|PRODUCT|COUNT|COUNTA)$/;
const MOST_CELLS = 60;
const COMPARES = new Set(['=', '<>', '<', '>', '<=', '>=']);

/** The formula in a cell of a paper as one for a column of a sheet. */
export function translateSum(room: ScratchRoom, place: SumPlace, sheet: string): Translated {
  const shown = room.cell(place.paper, place.cell);
  if (!isFormula(place.entryAt(place.cell) ?? ''))
    return no(`${place.cell} holds no formula: choose a cell that does.`);
  if (shown.is === 'fault') return no(`${place.cell} gives no figure yet: ${shown.why}`);
  const translator = new Translator(room, place, sheet);
  try {
    const { text } = translator.cell(place.cell);
    return { ok: true, formula: text, row: translator.row };
  } catch (thrown) {
    if (thrown instanceof Unreadable) return no(thrown.message);
    throw thrown;
  }
}

/** Sheets whose columns the formula in a cell names, with the cells that it reads: those it may become a column of. */
export function sheetsNamed(room: ScratchRoom, place: SumPlace): readonly string[] {
  const sheets = new Set<string>();
  const seen = new Set<string>();
  const look = (tree: A1Tree | undefined): void => {
    if (tree === undefined) return;
    if (tree.node === 'name') {
      const named = room.names.find(tree.name);
      if (named !== undefined && !named.sheet.oneRow) sheets.add(named.sheet.id);
    } else if (tree.node === 'cell') visit(tree.cell);
    else if (tree.node === 'block') for (const cell of cellsIn(tree)) visit(cell);
    else if (tree.node === 'call') for (const argument of tree.args) look(argument);
    else if (tree.node === 'operator') [tree.left, tree.right].forEach(look);
    else if ('operand' in tree) look(tree.operand);
  };
  const visit = (cell: string): void => {
    const entry = place.entryAt(cell) ?? '';
    if (seen.has(cell) || !isFormula(entry)) return;
    seen.add(cell);
    try {
      look(treeOf(withoutLet(entry)));
    } catch (thrown) {
      if (!(thrown instanceof Unreadable)) throw thrown;
    }
  };
  visit(place.cell);
  return [...sheets];
}

function no(why: string): Translated {
  return { ok: false, why };
}

function refuse(why: string): never {
  throw new Unreadable(why);
}

function cellsIn({ from, to }: { readonly from: string; readonly to: string }): readonly string[] {
  const [first, last] = [cellNamed(from), cellNamed(to)];
  return first === undefined || last === undefined ? [] : cellsOf(blockOf(first, last)).map(cellName);
}

class Translator {
  readonly #room: ScratchRoom;
  readonly #place: SumPlace;
  readonly #sheet: string;
  row: number | undefined;

  constructor(room: ScratchRoom, place: SumPlace, sheet: string) {
    this.#room = room;
    this.#place = place;
    this.#sheet = sheet;
  }

  /** What a cell holds: its formula, or the figure typed in it. */
  cell(cell: string): Part {
    const entry = this.#place.entryAt(cell) ?? '';
    if (isFormula(entry)) return this.#part(treeOf(withoutLet(entry)), cell);
    const { is, value, text } = this.#room.cell(this.#place.paper, cell);
    if (is === 'blank') refuse(`${cell} is blank: write a figure there first.`);
    if (typeof value === 'string') return whole(quoted(value), 'text');
    if (typeof value === 'boolean') return whole(value ? 'TRUE()' : 'FALSE()', 'yes or no');
    const isDate = typeof value === 'number' && !readsAsNumber(text);
    return isDate ? whole(dateText(value), 'date') : plain(Number(value));
  }

  #part(tree: A1Tree, cell: string): Part {
    switch (tree.node) {
      case 'number':
        return whole(tree.value, 'number');
      case 'text':
        return whole(quoted(tree.value), 'text');
      case 'cell':
        return this.cell(tree.cell);
      case 'name':
        return this.#ofRow(tree.name, undefined);
      case 'minus':
        return open(`-${within(this.#number(tree.operand, cell))}`, 'number');
      case 'percent':
        return open(`${within(this.#number(tree.operand, cell))} / 100`, 'number');
      case 'block':
        return refuse(`It reads the cells ${tree.from}:${tree.to} in a place where one figure stands.`);
      case 'operator':
        return this.#operator(tree, cell);
      case 'call':
        return this.#call(tree.name, tree.args, cell);
    }
  }

  #number(tree: A1Tree, cell: string): Part {
    const part = this.#part(tree, cell);
    if (part.kind === 'date') refuse('It counts with a date as with a number: add or take away days instead.');
    return part;
  }

  #operator({ sign, left, right }: Extract<A1Tree, { node: 'operator' }>, cell: string): Part {
    const [a, b] = [this.#part(left, cell), this.#part(right, cell)];
    if (sign === '&') return open(`${within(a)} & ${within(b)}`, 'text');
    const dates = [a, b].filter(({ kind }) => kind === 'date').length;
    if (COMPARES.has(sign)) {
      if (dates === 1) refuse('It compares a date with a number.');
      return open(`${within(a)} ${sign} ${within(b)}`, 'yes or no');
    }
    if (dates === 0) return open(`${within(a)} ${sign} ${within(b)}`, 'number');
    if (dates === 2 && sign === '-') return open(`(${within(a)} - ${within(b)}) / (1 day)`, 'number');
    if (dates === 1 && sign === '+' && a.kind === 'date') return open(`${within(a)} + ${within(b)} * 1 day`, 'date');
    if (dates === 1 && sign === '+') return open(`${within(b)} + ${within(a)} * 1 day`, 'date');
    if (dates === 1 && sign === '-' && a.kind === 'date') return open(`${within(a)} - ${within(b)} * 1 day`, 'date');
    return refuse(`It works out “${sign}” of a date, which the workbook does not.`);
  }

  // Columns.

  /** A column's figure of one row; of a sheet of one row its only one. */
  #ofRow(name: string, row: number | undefined): Part {
    if (/^(TRUE|FALSE)$/i.test(name)) return whole(`${name.toUpperCase()}()`, 'yes or no');
    const named = this.#named(name);
    const { sheet, column } = named;
    if (sheet.oneRow && sheet.id !== this.#sheet) return counted(`${sheet.name}[${column.name}]`, named);
    if (sheet.id !== this.#sheet) {
      refuse(
        `It reads one row of ${sheet.name}, and a column here has no row of that sheet: choose ${sheet.name}, or a total over it.`,
      );
    }
    if (row !== undefined) {
      if (this.row !== undefined && this.row !== row) {
        refuse(`It reads rows ${this.row + 1} and ${row + 1} of ${sheet.name}: a column works on one row at a time.`);
      }
      this.row = row;
    }
    return counted(`[${column.name}]`, named);
  }

  #named(name: string): NamedColumn {
    return this.#room.names.find(name) ?? refuse(`The workbook has no column called ${name}.`);
  }

  #whole(tree: A1Tree | undefined): NamedColumn | undefined {
    return tree?.node === 'name' ? this.#room.names.find(tree.name) : undefined;
  }

  // Calls.

  #call(name: string, args: readonly (A1Tree | undefined)[], cell: string): Part {
    if (name === 'INDEX') return this.#index(args, cell);
    const first = this.#whole(args[0]);
    if (COUNTS.test(name) && first !== undefined && args.length === 1)
      return whole(`${name}(${columnText(first)})`, 'number');
    if (IN_ITS_UNIT.test(name) && first !== undefined) return this.#fold(name, first, args.slice(1), cell);
    if (BY_CONDITION.test(name)) return this.#byConditions(name, args, cell);
    if (BY_ONE_CONDITION.test(name)) {
      const [asked, condition, summed] = args;
      const pair = [asked, condition];
      return this.#byConditions(`${name}S`, name === 'COUNTIF' ? pair : [summed ?? asked, ...pair], cell);
    }
    const definition = FUNCTIONS.get(name);
    if (definition === undefined) refuse(`The workbook has no function called ${name}.`);
    const { signature } = definition;
    const { result } = signature;
    if (result.is === 'record') refuse(`${name} gives several figures: make a column of it on the sheet itself.`);
    const isOwn = FROM_ENGINE.includes(name);
    const parameters = args.map((_, i) => parameterAt(signature, i, args.length));
    const columns = args.map((tree, i) => (takesColumn(parameters[i]) ? this.#whole(tree) : undefined));
    const letters = columnsOfLetters(parameters, columns);
    const kinds = new Set<Kind>();
    const said = args.flatMap((tree, i): string[] => {
      if (tree === undefined) return [''];
      const [parameter, column] = [parameters[i], columns[i]];
      if (column !== undefined) return [columnText(column)];
      const letter = letterOf(parameter);
      const unit = letter === undefined ? undefined : letters.get(letter)?.unit?.symbol;
      const parts = tree.node === 'block' && OF_MANY.test(name) ? this.#many(tree) : [this.#part(tree, cell)];
      return parts.map((part) => {
        if (result.is === 'letter' && letter === result.letter) kinds.add(part.kind);
        if (unit !== undefined) return ofUnit(part, unit).text;
        return isOwn && parameter !== undefined ? this.#inUnit(part, parameter) : part.text;
      });
    });
    const text = `${name}(${said.join('; ')})`;
    const answer = answerOf(text, signature, letters, columns);
    if (answer !== undefined) return answer;
    if (kinds.size === 1 && kinds.has('date')) return whole(text, 'date');
    const types = parameters.map((parameter) => {
      const type = parameter === undefined ? undefined : typeSeen(parameter, measureOf(parameter, this.#room.measures));
      return { type, constant: undefined };
    });
    const measure = isOwn ? measureOfAnswer(signature, types, this.#room.measures) : ({ is: 'as is' } as const);
    const kind = kindOfAnswer(result.is, name);
    return typeof measure !== 'string' && measure.is === 'number' ? plainOf(text, measure) : whole(text, kind);
  }

  /** The cells of a block that hold anything. */
  #many(tree: { readonly from: string; readonly to: string }): readonly Part[] {
    const held = cellsIn(tree).filter((cell) => (this.#place.entryAt(cell) ?? '') !== '');
    if (held.length === 0) refuse(`The cells ${tree.from}:${tree.to} are blank.`);
    if (held.length > MOST_CELLS)
      refuse(`It reads ${held.length} cells of the paper: ${MOST_CELLS} at most fit in a formula.`);
    return held.map((cell) => this.cell(cell));
  }

  #index([name, row]: readonly (A1Tree | undefined)[], cell: string): Part {
    const named = this.#whole(name);
    if (named === undefined || name?.node !== 'name')
      refuse('INDEX looks into cells of the paper, which no sheet reads.');
    const at = row === undefined ? 0 : this.#room.value(this.#place.paper, `=${rowText(row, cell)}`);
    return this.#ofRow(name.name, typeof at === 'number' && at >= 1 ? Math.floor(at) - 1 : undefined);
  }

  #fold(name: string, column: NamedColumn, more: readonly (A1Tree | undefined)[], cell: string): Part {
    const { type } = column.column;
    if (more.some((tree) => this.#whole(tree) !== undefined)) {
      refuse(`${name} takes several columns of the workbook at once: take each by itself.`);
    }
    // Beside the column's figures stand others of their kind, but a place or a share of LARGE and the like.
    const symbol = OF_MANY.test(name) ? column.unit?.symbol : undefined;
    const said = more.map((tree) => (tree === undefined ? '' : ofUnit(this.#part(tree, cell), symbol).text));
    const text = `${name}(${[columnText(column), ...said].join('; ')})`;
    if (type?.kind === 'temperature' && !/^(AVERAGE|MIN|MAX|MEDIAN)$/.test(name))
      refuse(`${name} of temperatures has no meaning on a sheet.`);
    return counted(text, column);
  }

  /** Totals of the rows that meet conditions. */
  #byConditions(name: string, args: readonly (A1Tree | undefined)[], cell: string): Part {
    const counts = name === 'COUNTIFS';
    const summed = counts
      ? undefined
      : (this.#whole(args[0]) ?? refuse(`${name} adds up cells of the paper, which no sheet reads.`));
    const pairs = counts ? args : args.slice(1);
    const said = summed === undefined ? [] : [columnText(summed)];
    for (let i = 0; i < pairs.length; i += 2) {
      const column = this.#whole(pairs[i]) ?? refuse(`${name} asks cells of the paper, which no sheet reads.`);
      said.push(columnText(column), this.#condition(pairs[i + 1], column, cell));
    }
    const text = `${name}(${said.join('; ')})`;
    return summed === undefined ? whole(text, 'number') : counted(text, summed);
  }

  /** A condition on a column that counts in a unit names the unit. */
  #condition(tree: A1Tree | undefined, { unit, column }: NamedColumn, cell: string): string {
    if (tree === undefined) return refuse('A condition is missing.');
    if (tree.node === 'text') {
      const [, sign = '', figure = ''] = /^(<=|>=|<>|<|>|=)?(.*)$/s.exec(tree.value) ?? [];
      const isFigure = figure !== '' && Number.isFinite(Number(figure));
      if (column.type?.kind === 'date' && isFigure) refuse('A condition on dates wants a date, not a number.');
      return quoted(
        isFigure && unit !== undefined && unit.symbol !== '' ? `${sign}${figure} ${unit.symbol}` : tree.value,
      );
    }
    if (tree.node === 'operator' && tree.sign === '&' && tree.left.node === 'text') {
      return `${quoted(tree.left.value)} & ${within(ofUnit(this.#part(tree.right, cell), unit?.symbol))}`;
    }
    return ofUnit(this.#part(tree, cell), unit?.symbol).text;
  }

  /** A plain number as a function of the engine wants it. */
  #inUnit(part: Part, parameter: Parameter): string {
    if (parameter.pattern.is === 'date' && part.kind !== 'date')
      refuse(`${parameter.name.replaceAll('_', ' ')} is a date.`);
    const measure = measureOf(parameter, this.#room.measures);
    if (measure.is !== 'number' || parameter.plain === true) return part.text;
    return ofUnit(part, measure.unit.symbol).text;
  }
}

function takesColumn(parameter: Parameter | undefined): boolean {
  return ['column', 'values', 'table', 'first column'].includes(parameter?.pattern.is ?? '');
}

function kindOfAnswer(result: string, name: string): Kind {
  if (result === 'date' || name === 'TODAY' || name === 'DATE') return 'date';
  if (result === 'text') return 'text';
  return result === 'yesno' ? 'yes or no' : 'number';
}

/** The row asked for, with ROW() said outright: it is worked out as if it stood nowhere. */
function rowText(tree: A1Tree, cell: string): string {
  if (tree.node === 'call' && tree.name === 'ROW' && tree.args.length === 0)
    return String((cellNamed(cell)?.row ?? 0) + 1);
  switch (tree.node) {
    case 'number':
      return tree.value;
    case 'text':
      return quoted(tree.value);
    case 'cell':
      return tree.cell;
    case 'block':
      return `${tree.from}:${tree.to}`;
    case 'name':
      return tree.name;
    case 'minus':
      return `-(${rowText(tree.operand, cell)})`;
    case 'percent':
      return `(${rowText(tree.operand, cell)})%`;
    case 'operator':
      return `(${rowText(tree.left, cell)})${tree.sign}(${rowText(tree.right, cell)})`;
    case 'call':
      return `${tree.name}(${tree.args.map((one) => (one === undefined ? '' : rowText(one, cell))).join(',')})`;
  }
}
