// `seek` and `grid`: an input tried at many values on a branch, for the value that reaches a goal or for a table of figures.

import {
  type Book,
  cellData,
  type Figure,
  type FigureValue,
  figureIn,
  type Input,
  type InputValue,
  isError,
  oneWay,
  readGoal,
  readInput,
  readInputs,
  refuseInput,
  rowId,
  sayInput,
  seek,
  sheetView,
  twoWay,
  type Unit,
  unitSymbol,
  type ValueType,
  type Workbook,
} from '../../engine/index.ts';
import type { Given } from './arguments.ts';
import { aligned } from './columns.ts';
import { findColumn, findRow, findTable } from './places.ts';
import { plainData } from './plain-data.ts';
import { openAsked } from './workbook-files.ts';
import { onOneLine, refuse, type World } from './world.ts';

function inputOf(book: Book, file: string, tableName: string, key: string, columnName: string): Input {
  const table = findTable(book, file, tableName);
  const column = findColumn(table, file, columnName);
  const input = { sheet: table.id, row: rowId(book, table.id, findRow(book, table, file, key)), column: column.id };
  const why = refuseInput(book, input);
  return why === undefined ? input : refuse(`${file}: ${why}`);
}

/** What a formula asks for and what it is now; refused where it can't be had. */
export function figureOf(
  book: Book,
  file: string,
  formula: string,
): { readonly figure: Figure; readonly now: FigureValue } {
  const figure: Figure = { figure: 'formula', formula };
  const now = figureIn(book, figure);
  if (isError(now.value) && now.type === undefined) refuse(onOneLine(`${file}: ${now.value.why}`));
  return { figure, now };
}

/** A goal as it is written for a figure, canonical. */
export function goalOf(book: Book, where: string, text: string, { type }: FigureValue): number {
  const read = readGoal(book, text, type);
  return read.ok ? read.value : refuse(onOneLine(`${where}: ${read.why}`));
}

/** The type of an input, in the unit in which it was asked about where that is another than its column's. */
function typeAt(book: Book, { sheet, column }: Input, unit: Unit | undefined): ValueType | undefined {
  const type = sheetView(book, sheet)?.columns.find(({ id }) => id === column)?.type;
  return unit !== undefined && (type?.kind === 'number' || type?.kind === 'temperature') ? { ...type, unit } : type;
}

/** The value of one input at which a figure reaches a goal. */
export async function seekValue(given: Given, world: World): Promise<number> {
  const { words, values, flags } = given;
  const [file = '', tableName = '', key = '', columnName = '', formula = '', goalText = ''] = words;
  const workbook = await openAsked(file, given, world);
  const input = inputOf(workbook, file, tableName, key, columnName);
  const { figure, now } = figureOf(workbook, file, formula);
  const goal = goalOf(workbook, file, goalText, now);
  const end = (option: string): InputValue => {
    const text = values.get(option);
    if (text === undefined) return refuse(`Say between which values to look: --from VALUE --to VALUE.`);
    const read = readInput(workbook, input, text);
    const [value] = read.ok ? read.values : [];
    return value ?? refuse(`${file}: --${option}: ${read.ok ? 'write one value.' : read.why}`);
  };
  const [from, to] = [end('from'), end('to')];
  const unit = from.unit ?? to.unit;
  const figureName = formula;
  const found = seek(workbook, { input, from: from.value, to: to.value, unit, figure, goal, figureName });
  if (found.answer === 'refused') return refuse(onOneLine(`${file}: ${found.says}`));
  if (!flags.has('json')) world.out(`${onOneLine(found.says)}\n`);
  else {
    const inputType = typeAt(workbook, input, unit);
    const ofInput = (value: number) => plainData(workbook, value, inputType);
    const ofFigure = (value: number) => plainData(workbook, value, now.type);
    const places = found.places.map(({ stepsOver, ...place }) => ({
      from: ofInput(place.from),
      to: ofInput(place.to),
      figureFrom: ofFigure(place.figureFrom),
      figureTo: ofFigure(place.figureTo),
      stepsOver,
    }));
    const unitOf = (type: ValueType | undefined) => (type === undefined ? null : unitSymbol(type));
    const units = { inputUnit: unitOf(inputType), unit: unitOf(now.type) };
    world.out(`${JSON.stringify({ answer: found.answer, ...units, places, says: found.says })}\n`);
  }
  return found.answer === 'none' ? 1 : 0;
}

/** 'Plantings / Onions / Spacing = 4 in..8 in by 1 in' */
function inputAt(book: Book, file: string, option: string, text: string) {
  const at = text.indexOf('=');
  const parts = text
    .slice(0, Math.max(0, at))
    .split(' / ')
    .map((part) => part.trim());
  const [table = '', ...rest] = parts;
  const column = rest.at(-1);
  if (at < 0 || column === undefined)
    return refuse(`--${option} reads “Table / Row / Column = 4 in..8 in by 1 in”, or values parted by semicolons.`);
  const input = inputOf(book, file, table, rest.slice(0, -1).join(' / '), column);
  const read = readInputs(book, input, text.slice(at + 1));
  if (!read.ok) return refuse(`${file}: --${option}: ${read.why}`);
  return { input, values: read.values, name: `${rest.join(' / ')}` };
}

/** A table of a figure by one input down and another across, or of one input alone. */
export async function gridOfFigures(given: Given, world: World): Promise<number> {
  const { words, values, flags } = given;
  const [file = '', formula = ''] = words;
  const downText = values.get('down');
  if (downText === undefined) return refuse('Say what to try: --down "Table / Row / Column = 4 in..8 in by 1 in".');
  const workbook = await openAsked(file, given, world);
  const { figure, now } = figureOf(workbook, file, formula);
  const down = inputAt(workbook, file, 'down', downText);
  const acrossText = values.get('across');
  const across = acrossText === undefined ? undefined : inputAt(workbook, file, 'across', acrossText);
  const table = across === undefined ? oneWay(workbook, down, [figure]) : twoWay(workbook, down, across, figure);
  if (!table.ok) return refuse(`${file}: ${table.why}`);
  const named = (one: { input: Input; values: readonly InputValue[] } | undefined): string[] =>
    one === undefined ? [formula] : one.values.map((value) => sayInput(workbook, one.input, value));
  const [first, head] = [named(down), named(across)];
  if (flags.has('json')) world.out(`${jsonOf(workbook, { formula, down, first, across, head, now }, table.cells)}\n`);
  else {
    const rows = table.cells.map((line, i) => [first[i] ?? '', ...line.map(({ shown }) => onOneLine(shown))]);
    const corner = across === undefined ? down.name : `${down.name} \\ ${across.name}`;
    world.out(
      aligned(
        [[corner, ...head], ...rows],
        [...head.keys()].map((at) => at + 1),
      ),
    );
  }
  return 0;
}

interface Named {
  readonly formula: string;
  readonly down: { readonly name: string };
  readonly first: readonly string[];
  readonly across: { readonly name: string } | undefined;
  readonly head: readonly string[];
  readonly now: FigureValue;
}

function jsonOf(book: Workbook, named: Named, cells: readonly (readonly FigureValue[])[]): string {
  const { formula, down, first, across, head, now } = named;
  return JSON.stringify({
    figure: formula,
    unit: now.type === undefined ? null : unitSymbol(now.type),
    down: { input: down.name, values: first },
    ...(across === undefined ? {} : { across: { input: across.name, values: head } }),
    cells: cells.map((line) => line.map(({ value, type }) => cellData(book, value, type))),
  });
}
