// Any command of a workbook, from chance numbers taken for what they come to stand for: cells of every type and role, rows,
// columns, sheets, formulas, checks, names, places, scratch papers, units, the day, the title, the template's version.

import fc from 'fast-check';
import {
  type CheckDeclaration,
  type ColumnView,
  type Command,
  type Condition,
  type Content,
  rowId,
  rowName,
  rows,
  type SheetView,
  sheetViews,
  type TypeDeclaration,
  type ViewDeclaration,
  type Workbook,
} from '../../engine/index.ts';

export interface Chances {
  readonly what: number;
  readonly sheet: number;
  readonly row: number;
  readonly column: number;
  readonly value: number;
}

const nat = fc.nat({ max: 10_000 });

export const chances: fc.Arbitrary<Chances> = fc.record({ what: nat, sheet: nat, row: nat, column: nat, value: nat });

function pick<T>(list: readonly T[], by: number): T | undefined {
  return list[by % Math.max(1, list.length)];
}

/** One more way for `count` chances in all. */
type Maker = (workbook: Workbook, sheet: SheetView, by: Chances) => Command | undefined;

function rowIdAt(workbook: Workbook, { id }: SheetView, by: number): string | undefined {
  const slot = pick([...rows(workbook, id)], by);
  return slot === undefined ? undefined : rowId(workbook, id, slot);
}

export function entryFor(workbook: Workbook, { type }: ColumnView, by: number): string {
  if (type === undefined || by % 9 === 0) return '';
  switch (type.kind) {
    case 'number':
      return (
        pick(
          [
            '0',
            '1',
            '2.5',
            '12',
            '40%',
            '-3',
            '8 in',
            '4..8 in',
            '40..45..60%',
            '20 cm',
            '2 ft 6 in',
            '3 lb',
            'banana',
            '0.1',
          ],
          by,
        ) ?? ''
      );
    case 'temperature':
      return `${by % 40} degF`;
    case 'date':
      return pick(['2027-03-15', '1 Apr', '2027-02-08', '', '30 Feb', '2026-12-31'], by) ?? '';
    case 'yesno':
      return by % 2 === 0 ? 'yes' : 'no';
    case 'choice':
      return pick(type.options, by) ?? '';
    case 'link': {
      const row = pick([...rows(workbook, type.table)], by);
      return row === undefined ? '' : rowName(workbook, type.table, row);
    }
    case 'record':
      return '';
    case 'text':
      return `Text ${by % 6}`;
  }
}

/** A content of a column's kind, now and then of another; links also to rows that come with it. */
function contentFor(workbook: Workbook, { type }: ColumnView, by: number, coming: readonly string[]): Content {
  if (type === undefined || by % 7 === 0) return null;
  switch (type.kind) {
    case 'number':
      return (
        pick<Content>(
          [1, { number: 8, unit: 'in' }, { number: 3, unit: 'lb' }, { number: 2, unit: 'ft', follows: true }],
          by,
        ) ?? null
      );
    case 'temperature':
      return { number: by % 40, unit: 'degF' };
    case 'date':
      return { date: pick(['2027-03-15', '2027-02-08', '2026-12-31'], by) ?? '' };
    case 'yesno':
      return by % 2 === 0;
    case 'choice':
      return pick(type.options, by) ?? 'none of them';
    case 'link': {
      const there = [...rows(workbook, type.table)].map((slot) => rowId(workbook, type.table, slot));
      return { row: pick([...there, ...coming, 'nowhere'], by) ?? '' };
    }
    case 'record':
      return null;
    case 'text':
      return `Text ${by}`;
  }
}

const FORMULAS: readonly string[] = [
  '1 + 1',
  '"a" & "b"',
  'ROWS(Plantings)',
  'SUM(Plantings[Length])',
  '[Length]',
  '[Length] * 2',
  '[Length] +',
  'Farm[Season]',
  'IF([Length] > 3 ft; 1; 2)',
  '[Seeds]',
  '[Own 1]',
  '[Own 2] & "!"',
  'DATE(2027; 1; 1)',
  'TODAY()',
];

const TYPES: readonly TypeDeclaration[] = [
  { type: 'text' },
  { type: 'date' },
  { type: 'yesno' },
  { type: 'number', unit: { us: 'lb', si: 'kg' } },
  { type: 'number', unit: { us: '', si: '' } },
  { type: 'choice', options: ['early', 'late'] },
  { type: 'link', sheet: 'beds' },
];

function check(sheet: SheetView, { column, value }: Chances): CheckDeclaration | undefined {
  const found = pick(sheet.columns, column);
  if (found === undefined) return undefined;
  return { id: `own-${value % 3}`, name: `Own ${value % 3}`, level: 'note', column: found.id, says: 'IF(1 = 1; "!")' };
}

const VIEWS: readonly string[] = ['room', 'all', 'view-0', 'view-1'];

const CONDITIONS: readonly Condition[] = [
  { is: 'one of', values: ['', 'B1'] },
  { is: 'none of', values: ['3'] },
  { is: 'at least', least: 2 },
  { is: 'between', least: 0, most: 10 },
  { is: 'holding', text: 'a' },
  { is: 'blank' },
  { is: 'typed over' },
];

function viewOf(sheet: SheetView, { value, row, column }: Chances): ViewDeclaration | undefined {
  const first = pick(sheet.columns, column);
  const second = pick(sheet.columns, row);
  const id = pick(VIEWS, value);
  const when = pick(CONDITIONS, row);
  if (first === undefined || second === undefined || id === undefined || when === undefined) return undefined;
  return {
    id,
    name: `View ${value % 5}`,
    ...(value % 2 === 0 ? { columns: [first.id, second.id] } : {}),
    ...(value % 3 === 0 ? { filters: [{ by: 'cell', column: first.id, when }] } : {}),
    ...(value % 4 === 0 ? { sort: [{ column: second.id, descending: true }] } : {}),
    ...(value % 5 === 0 ? { groupBy: first.id } : {}),
  };
}

const isTyped = ({ role }: ColumnView): boolean => role === 'entered' || role === 'default';
const isWorkedOut = ({ role }: ColumnView): boolean => role === 'computed' || role === 'default';

const setCell: Maker = (workbook, sheet, by) => {
  const row = rowIdAt(workbook, sheet, by.row);
  const column = pick(sheet.columns.filter(isTyped), by.column);
  if (row === undefined || column === undefined) return undefined;
  const entry = entryFor(workbook, column, by.value);
  return { command: 'set cell', sheet: sheet.id, row, column: column.id, entry };
};

const MAKERS: readonly (readonly [chances: number, make: Maker])[] = [
  [30, setCell],
  [
    6,
    (workbook, sheet, by) => {
      const row = rowIdAt(workbook, sheet, by.row);
      const column = pick(sheet.columns.filter(isWorkedOut), by.column);
      if (row === undefined || column === undefined) return undefined;
      return {
        command: 'set cell',
        sheet: sheet.id,
        row,
        column: column.id,
        entry: entryFor(workbook, column, by.value),
      };
    },
  ],
  [
    3,
    (workbook, sheet, by) => {
      const row = rowIdAt(workbook, sheet, by.row);
      const column = pick(sheet.columns.filter(isTyped), by.column);
      if (row === undefined || column === undefined) return undefined;
      const content =
        pick([null, 'Text', true, 3, { number: 8, unit: 'in' }, { date: '2027-01-01' }], by.value) ?? null;
      return { command: 'put cell', sheet: sheet.id, row, column: column.id, content };
    },
  ],
  [
    4,
    (workbook, sheet, by) => {
      const row = rowIdAt(workbook, sheet, by.row);
      const column = pick(sheet.columns.filter(isWorkedOut), by.column);
      return row === undefined || column === undefined
        ? undefined
        : { command: 'take back', sheet: sheet.id, row, column: column.id };
    },
  ],
  [
    10,
    (workbook, sheet, by) => {
      const filled = sheet.columns.filter(isTyped).filter(({ name }) => (by.value + name.length) % 3 !== 0);
      const entries = filled.map((column, i) => [column.id, entryFor(workbook, column, by.value + i)]);
      const before = by.value % 3 === 0 ? rowIdAt(workbook, sheet, by.row) : undefined;
      return { command: 'insert row', sheet: sheet.id, entries: Object.fromEntries(entries), before };
    },
  ],
  [
    6,
    (workbook, sheet, by) => {
      const ids = Array.from({ length: 1 + (by.row % 3) }, () => workbook.newId());
      const columns = sheet.columns.filter(({ role, id }) => role !== 'made' && (by.column + id.length) % 4 !== 0);
      const rows = ids.map((row, i) => ({
        row,
        cells: columns.map((column, k) => contentFor(workbook, column, by.value + i + k, ids)),
      }));
      return { command: 'put rows', sheet: sheet.id, columns: columns.map(({ id }) => id), rows };
    },
  ],
  [
    8,
    (workbook, sheet, by) => {
      const gone = [by.row, by.row + by.value].flatMap((at) => rowIdAt(workbook, sheet, at) ?? []);
      return { command: 'remove rows', sheet: sheet.id, rows: [...new Set(gone)] };
    },
  ],
  [
    5,
    (workbook, sheet, by) => {
      const moved = [by.row, by.row + by.value].flatMap((at) => rowIdAt(workbook, sheet, at) ?? []);
      const before = by.value % 4 === 0 ? undefined : rowIdAt(workbook, sheet, by.column);
      return { command: 'move rows', sheet: sheet.id, rows: [...new Set(moved)], before };
    },
  ],
  [
    4,
    (workbook, sheet, by) => {
      const row = rowIdAt(workbook, sheet, by.row);
      return row === undefined ? undefined : { command: 'keep row', sheet: sheet.id, row };
    },
  ],
  [
    6,
    (_, sheet, by) => {
      const column = pick(sheet.columns.filter(isWorkedOut), by.column);
      const formula = by.value % 5 === 0 ? null : (pick(FORMULAS, by.value) ?? '');
      return column === undefined ? undefined : { command: 'set formula', sheet: sheet.id, column: column.id, formula };
    },
  ],
  [
    4,
    (_, sheet, by) => ({
      command: 'add formula',
      sheet: sheet.id,
      name: `Own ${by.value % 4}`,
      formula: pick(FORMULAS, by.column) ?? '1',
    }),
  ],
  [
    4,
    (_, sheet, by) => {
      const type = pick(TYPES, by.column);
      return type === undefined
        ? undefined
        : { command: 'add column', sheet: sheet.id, name: `Own ${by.value % 4}`, type };
    },
  ],
  [
    3,
    (_, sheet, by) => {
      const column = pick(
        sheet.columns.filter(({ own }) => own),
        by.column,
      );
      return column === undefined ? undefined : { command: 'remove column', sheet: sheet.id, column: column.id };
    },
  ],
  [
    2,
    (_, sheet, by) => {
      const column = pick(sheet.columns, by.column);
      const name = pick(['', 'Renamed', 'Length', 'Other [name]'], by.value) ?? '';
      return column === undefined ? undefined : { command: 'rename column', sheet: sheet.id, column: column.id, name };
    },
  ],
  [
    2,
    (_, sheet, by) => {
      const column = pick(sheet.columns, by.column);
      const after = by.value % 5 === 0 ? null : (pick(sheet.columns, by.row)?.id ?? null);
      return column === undefined ? undefined : { command: 'move column', sheet: sheet.id, column: column.id, after };
    },
  ],
  [
    2,
    (_, _sheet, by) => ({
      command: 'add sheet',
      name: `Sheet ${by.value % 3}`,
      about: 'Of my own',
      rows: { from: by.value % 2 === 0 ? 'entry' : 'single' },
    }),
  ],
  [1, (_, sheet) => (sheet.own ? { command: 'remove sheet', sheet: sheet.id } : undefined)],
  [
    1,
    (_, sheet, by) => ({
      command: 'rename sheet',
      sheet: sheet.id,
      name: pick(['', 'My rows', 'Beds'], by.value) ?? '',
    }),
  ],
  [
    1,
    (workbook, sheet, by) => {
      const after = by.value % 5 === 0 ? null : (pick(sheetViews(workbook), by.row)?.id ?? null);
      return { command: 'move sheet', sheet: sheet.id, after };
    },
  ],
  [
    2,
    (_, sheet, by) => {
      const made = check(sheet, by);
      return made === undefined ? undefined : { command: 'set check', sheet: sheet.id, check: made };
    },
  ],
  [
    2,
    (_, sheet, by) => ({
      command: 'remove check',
      sheet: sheet.id,
      check: by.value % 2 === 0 ? 'full' : `own-${by.value % 3}`,
    }),
  ],
  [
    4,
    (_, sheet, by) => {
      const view = viewOf(sheet, by);
      return view === undefined ? undefined : { command: 'set view', sheet: sheet.id, view };
    },
  ],
  [2, (_, sheet, by) => ({ command: 'remove view', sheet: sheet.id, view: pick(VIEWS, by.value) ?? '' })],
  [1, (_, sheet, by) => ({ command: 'take view back', sheet: sheet.id, view: pick(VIEWS, by.value) ?? '' })],
  [
    2,
    (_, sheet, by) => {
      const column = pick(sheet.columns, by.column);
      const when = pick(CONDITIONS, by.value);
      if (column === undefined || when === undefined) return undefined;
      const rule = {
        id: `rule-${by.value % 3}`,
        name: 'Late',
        column: column.id,
        when,
        tone: 'rose',
        mark: '!',
      } as const;
      return { command: 'set colour', sheet: sheet.id, rule };
    },
  ],
  [1, (_, sheet, by) => ({ command: 'remove colour', sheet: sheet.id, rule: `rule-${by.value % 3}` })],
  [
    4,
    (workbook, sheet, by) => {
      const row = rowIdAt(workbook, sheet, by.row);
      const column = pick(sheet.columns, by.column);
      const note = by.value % 3 === 0 ? '' : `Note ${by.value % 5}`;
      return row === undefined || column === undefined
        ? undefined
        : { command: 'set note', sheet: sheet.id, row, column: column.id, note };
    },
  ],
  [
    1,
    (_, _sheet, by) => ({ command: 'set locale', locale: pick([null, 'de-DE', 'fr', 'no place'], by.value) ?? null }),
  ],
  [1, (_, _sheet, by) => ({ command: 'add paper', paper: `paper-${by.row % 2}`, name: `Paper ${by.value % 3}` })],
  [1, (_, _sheet, by) => ({ command: 'rename paper', paper: `paper-${by.row % 2}`, name: `Paper ${by.value % 4}` })],
  [1, (_, _sheet, by) => ({ command: 'remove paper', paper: `paper-${by.row % 2}` })],
  [
    4,
    (_, _sheet, by) => {
      const cells = { [`B${1 + (by.column % 4)}`]: `=A${by.value % 5}`, A1: by.value % 3 === 0 ? '' : '12' };
      return { command: 'type on paper', paper: `paper-${by.row % 2}`, cells };
    },
  ],
  [2, (_, _sheet, by) => ({ command: 'set units', units: by.value % 2 === 0 ? 'us' : 'si' })],
  [1, (_, _sheet, by) => ({ command: 'set today', today: 20_700 + (by.value % 300) })],
  [1, (_, _sheet, by) => ({ command: 'set title', title: `Title ${by.value % 3}` })],
  [2, (_, _sheet, by) => ({ command: 'use template', version: 1 + (by.value % 2) })],
];

const ALL = MAKERS.flatMap(([count, make]) => Array.from({ length: count }, () => make));

/** The command that chance makes of the workbook as it stands; undefined where there is nothing it could name. */
export function commandFor(workbook: Workbook, by: Chances): Command | undefined {
  const sheet = pick(sheetViews(workbook), by.sheet);
  const make = pick(ALL, by.what);
  return sheet === undefined ? undefined : make?.(workbook, sheet, by);
}

/** Of cells alone: what a drag does. */
export function cellCommandFor(workbook: Workbook, by: Chances): Command | undefined {
  const sheet = pick(sheetViews(workbook), by.sheet);
  return sheet === undefined ? undefined : setCell(workbook, sheet, by);
}
