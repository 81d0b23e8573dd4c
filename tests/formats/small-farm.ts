// A small invented workbook for the tests of files and of the terminal: one row of farm, beds with every type of column,
// sales without names, and sheets whose rows follow from others.

import { civilDay } from '../../engine/index.ts';
import {
  type Book,
  type ColumnDeclaration,
  opened,
  type RowEntries,
  type SheetDeclaration,
  type TypeDeclaration,
  type WorkbookDeclaration,
} from '../book.ts';

const TEXT: TypeDeclaration = { type: 'text' };
const DATE: TypeDeclaration = { type: 'date' };

function number(us: string, si: string): TypeDeclaration {
  return { type: 'number', unit: { us, si } };
}

function column(
  name: string,
  type: TypeDeclaration,
  more: Partial<Omit<ColumnDeclaration, 'name' | 'type'>> = {},
): ColumnDeclaration {
  return { name, type, group: '', note: '', role: 'entered', formula: '', ...more };
}

function sheet(name: string, rows: SheetDeclaration['rows'], columns: readonly ColumnDeclaration[]): SheetDeclaration {
  return { name, question: '', about: '', rows, columns, checks: [], cautions: [] };
}

const farm: SheetDeclaration = {
  ...sheet('Farm', { from: 'single' }, [
    column('Season', number('', ''), { decimals: 0 }),
    column('Bed width', number('in', 'cm'), { least: 0 }),
    column('First day', DATE, { role: 'default', formula: 'DATE([Season]; 4; 1)' }),
    column('Nursery', { type: 'temperature' }),
  ]),
  checks: [
    {
      name: 'Width',
      level: 'warning',
      column: 'Bed width',
      says: 'IF(ISBLANK([Bed width]); "Enter the width of a bed.")',
    },
  ],
};

const beds: SheetDeclaration = {
  ...sheet('Beds', { from: 'entry' }, [
    column('Bed', TEXT, { required: true }),
    column('Length', number('ft', 'm'), { least: 0, required: true }),
    column('Width', number('in', 'cm'), { role: 'default', formula: 'Farm[Bed width]' }),
    column('Area', number('ft2', 'm2'), { role: 'computed', formula: '[Length] * [Width]' }),
    column('Cover', { type: 'choice', options: ['bare', 'straw', 'leaves'] }),
    column('Share planted', number('%', '%'), { least: 0, most: 100 }),
    column('Made', DATE),
    column('Watered', { type: 'yesno' }),
    column('Beside', { type: 'link', table: 'Beds' }),
    column('Remark', TEXT),
  ]),
  key: 'Bed',
};

const sales = sheet('Sales', { from: 'entry' }, [
  column('Bed', { type: 'link', table: 'Beds' }),
  column('Income', number('money', 'money'), { least: 0 }),
]);

const income = sheet('Income', { from: 'each', table: 'Beds', as: 'Bed', where: '' }, [
  column('Total', number('money', 'money'), {
    role: 'computed',
    formula: 'SUMIFS(Sales[Income]; Sales[Bed]; [Bed])',
    decimals: 2,
  }),
  column('Hoped for', number('money', 'money')),
  column('Share', number('%', '%'), { role: 'computed', formula: '[Total] / [Hoped for]' }),
]);

const days = sheet(
  'Days',
  { from: 'span', first: 'Farm[First day]', last: 'Farm[First day] + 2 days', step: 'day', as: 'Day' },
  [column('Rain', number('in', 'mm'))],
);

export const BEDS: readonly RowEntries[] = [
  { Bed: 'North 1', Length: 50, Cover: 'straw', 'Share planted': 85, Made: '2026-10-01', Watered: true },
  { Bed: 'North 2', Length: '12 m', Width: 36, Beside: 'North 1', Remark: '=1+1, "quoted"' },
];

export const SMALL_FARM: WorkbookDeclaration = {
  title: 'Small farm',
  units: 'us',
  currency: 'USD',
  today: civilDay(2027, 1, 15),
  year: { sheet: 'Farm', column: 'Season' },
  sheets: [farm, beds, sales, income, days],
  rows: {
    Farm: [{ Season: 2027, 'Bed width': 30, Nursery: 65 }],
    Beds: BEDS,
    Sales: [{ Bed: 'North 1', Income: 12.5 }],
  },
};

export function open(declaration: WorkbookDeclaration = SMALL_FARM): Book {
  return opened(declaration);
}
