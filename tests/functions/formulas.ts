// A workbook with a few small sheets, in which tests work out formulas as a person would: each in a column of a sheet with
// one row. The cells of the OpenFormula collection's fixture stand here as sheets, each column with one type.

import { beforeAll } from 'vitest';
import { isError, type Scalar } from '../../engine/values/error.ts';
import { isPlainNumber } from '../../engine/values/type.ts';
import { type Book, opened, type TypeDeclaration } from '../book.ts';

export type Answer =
  | { readonly is: 'value'; readonly value: number | string | boolean; readonly shown: string }
  | { readonly is: 'blank' }
  | { readonly is: 'error'; readonly why: string }
  /** The formula doesn't check. */
  | { readonly is: 'refused'; readonly why: string };

const NUMBER: TypeDeclaration = { type: 'number', unit: { us: '', si: '' } };
const TEXT: TypeDeclaration = { type: 'text' };
const DATE: TypeDeclaration = { type: 'date' };

function quantity(unit: string): TypeDeclaration {
  return { type: 'number', unit: { us: unit, si: unit } };
}

export interface Table {
  readonly name: string;
  readonly key: string | undefined;
  readonly columns: Readonly<Record<string, TypeDeclaration>>;
  readonly rows: readonly (readonly string[])[];
}

/** Cells A18:I31 of the fixture: the constellations. */
export const STARS: Table = {
  name: 'Stars',
  key: 'Constellation',
  columns: {
    TestID: NUMBER,
    Constellation: TEXT,
    'Bright Stars': NUMBER,
    Northern: { type: 'yesno' },
    Abbrev: TEXT,
    Decl: NUMBER,
    'Next South': TEXT,
    Date: DATE,
    Rev: NUMBER,
  },
  rows: [
    ['1', 'Cancer', '0', 'yes', 'Cnc', '20', 'Canis Major', '2005-03-12', '13'],
    ['2', 'Canis Major', '5', 'no', 'Cma', '5', 'Orion', '2002-02-03', '12'],
    ['4', 'Canis Minor', '2', 'yes', 'Cmi', '-20', 'Eridanus', '2005-03-08', '11'],
    ['8', 'Carina', '5', 'no', 'Car', '-60', '', '1991-03-27', '10'],
    ['16', 'Draco', '3', 'yes', 'Dra', '75', 'Ursa Minor', '1967-07-05', '9'],
    ['32', 'Eridanus', '4', 'no', 'Eri', '-29', 'Scorpio', '1912-12-23', '8'],
    ['64', 'Gemini', '4', 'yes', 'Gem', '20', 'Cancer', '1992-02-06', '7'],
    ['128', 'Hercules', '0', 'yes', 'Her', '30', 'Gemini', '1934-07-04', '6'],
    ['256', 'Orion', '8', 'yes', 'Ori', '5', 'Canis Minor', '1909-01-08', '5'],
    ['512', 'Phoenix', '1', 'no', 'Phe', '-50', 'Carina', '1989-11-28', '4'],
    ['1024', 'Scorpio', '9', 'no', 'Sco', '-40', 'Phoenix', '2000-02-22', '3'],
    ['2048', 'Ursa Major', '6', 'yes', 'Uma', '55.38', 'Hercules', '2004-03-29', '2'],
    ['4096', 'Ursa Minor', '2', 'yes', 'Umi', '70', 'Ursa Major', '1946-07-13', '1'],
  ],
};

/** Invented plots with quantities, a gap in each column, and a link. */
const PLOTS: Table = {
  name: 'Plots',
  key: 'Plot',
  columns: {
    Plot: TEXT,
    Length: quantity('ft'),
    Area: quantity('ft2'),
    Yield: quantity('lb'),
    Price: quantity('money'),
    Sown: DATE,
    Low: { type: 'temperature' },
    Note: TEXT,
    Star: { type: 'link', table: 'Stars' },
  },
  rows: [
    ['A', '10', '25', '20', '2.50', '2027-03-01', '10 degC', 'early', 'Draco'],
    ['B', '20', '50', '38', '3.00', '2027-03-04', '14 degC', 'late', 'Orion'],
    ['C', '30', '75', '63', '3.50', '2027-03-08', '15 degC', 'late', 'Draco'],
    ['D', '', '', '', '', '', '', '', ''],
  ],
};

const TABLES: readonly Table[] = [
  STARS,
  {
    name: 'Two',
    key: undefined,
    columns: { B: NUMBER, C: NUMBER },
    rows: [
      ['2', '4'],
      ['3', '5'],
    ],
  },
  {
    name: 'Three',
    key: undefined,
    columns: { B: NUMBER, C: NUMBER, Decl: NUMBER },
    rows: [
      ['1', '4', '-29'],
      ['2', '5', '20'],
      ['3', '7', '30'],
    ],
  },
  {
    name: 'Four',
    key: undefined,
    columns: { B: NUMBER, C: NUMBER },
    rows: [
      ['1', '4'],
      ['2', '3'],
      ['3', '2'],
      ['4', '1'],
    ],
  },
  PLOTS,
];

/** A sheet of plain numbers, or of dates (2027-03-15), a column each. */
export function sheetOf(name: string, columns: Readonly<Record<string, readonly (number | string)[]>>): Table {
  const lists = Object.entries(columns);
  const rows = Math.max(...lists.map(([, list]) => list.length));
  return {
    name,
    key: undefined,
    columns: Object.fromEntries(lists.map(([column, [first]]) => [column, typeof first === 'string' ? DATE : NUMBER])),
    rows: Array.from({ length: rows }, (_, row) => lists.map(([, list]) => String(list[row] ?? ''))),
  };
}

function workbookOf(formulas: readonly string[], tables: readonly Table[]): Book {
  const workbook = opened({
    title: 'Formulas',
    units: 'us',
    currency: 'EUR',
    today: 20_700,
    sheets: [
      ...tables.map(({ name, key, columns }) => ({
        ...SHEET,
        name,
        ...(key === undefined ? {} : { key }),
        rows: { from: 'entry' as const },
        columns: Object.entries(columns).map(([column, type]) => ({ ...COLUMN, name: column, type })),
      })),
      {
        ...SHEET,
        name: 'Answers',
        rows: { from: 'single' as const },
        columns: [{ ...COLUMN, name: 'Name', type: TEXT }],
      },
    ],
    rows: Object.fromEntries(
      tables.map(({ name, columns, rows }) => [
        name,
        rows.map((row) => Object.fromEntries(Object.keys(columns).map((column, at) => [column, row[at] ?? '']))),
      ]),
    ),
  });
  workbook.edit(
    formulas.map((formula, at) => ({ edit: 'formula', table: 'Answers', column: `f${at}`, formula })),
    'formulas',
  );
  return workbook;
}

const SHEET = { question: '', about: '', checks: [], cautions: [] } as const;
const COLUMN = { group: '', note: '', role: 'entered', formula: '' } as const;

function answerOf(value: Scalar, shown: string): Answer {
  if (value === null) return { is: 'blank' };
  return isError(value) ? { is: 'error', why: value.why } : { is: 'value', value, shown };
}

/** So many formulas stand in one workbook: each that is added has all of them compiled anew. */
const TOGETHER = 30;

/** What each formula gives beside these sheets and `more`: plain numbers as they are, quantities in the unit they are shown in. */
export function answers(formulas: readonly string[], more: readonly Table[] = []): readonly Answer[] {
  const batches = Array.from({ length: Math.ceil(formulas.length / TOGETHER) }, (_, at) =>
    formulas.slice(at * TOGETHER, (at + 1) * TOGETHER),
  );
  return batches.flatMap((batch) => answersOf(batch, more));
}

function answersOf(formulas: readonly string[], more: readonly Table[]): readonly Answer[] {
  const workbook = workbookOf(formulas, [...TABLES, ...more]);
  const columns = workbook.table('Answers')?.columns ?? [];
  return formulas.map((_, at) => {
    const column = columns.find(({ name }) => name === `f${at}`);
    if (column === undefined) return { is: 'refused', why: 'the formula made no column' };
    if (column.diagnostic !== undefined) return { is: 'refused', why: column.diagnostic.why };
    const cell = workbook.cell('Answers', 0, column.name);
    const plain = column.type !== undefined && isPlainNumber(column.type);
    return answerOf(plain ? cell.value : (cell.number ?? cell.value), `${cell.text} ${column.unit}`.trim());
  });
}

/**
 * The same for a suite of tests, worked out once before its first: called where the suite is described, it gives what
 * tests then ask for a formula's answer.
 */
export function workedOut(formulas: readonly string[], more: readonly Table[] = []): (formula: string) => Answer {
  const given = new Map<string, Answer>();
  beforeAll(() => {
    answers(formulas, more).forEach((answer, at) => {
      given.set(formulas[at] ?? '', answer);
    });
  });
  return (formula) => {
    const answer = given.get(formula);
    if (answer === undefined) throw new Error(`${formula} was not worked out`);
    return answer;
  };
}
