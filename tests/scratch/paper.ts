// A small workbook with a scratch paper for the tests: plantings of a few kinds of column, and hands to type and read by
// address.

import { type ChangeSet, type Command, message } from '../../engine/index.ts';
import { ScratchRoom, type ShownCell } from '../../ui/scratch/room.ts';
import { type Book, type ColumnDeclaration, opened, type TypeDeclaration } from '../book.ts';

function column(name: string, type: TypeDeclaration, formula?: string): ColumnDeclaration {
  const role = formula === undefined ? 'entered' : 'computed';
  return { name, type, group: '', note: '', role, formula: formula ?? '' };
}

const number = (us = '', si = us): TypeDeclaration => ({ type: 'number', unit: { us, si } });

const SHEET = { question: '', about: '', checks: [], cautions: [] };

/** Three plantings on one farm. */
export function smallBook(units: 'us' | 'si' = 'us'): Book {
  return opened({
    title: 'Small',
    units,
    currency: 'USD',
    today: 20_800,
    sheets: [
      {
        ...SHEET,
        name: 'Farm',
        rows: { from: 'single' },
        columns: [column('Latitude', number()), column('Spare seed', number('%'))],
      },
      {
        ...SHEET,
        name: 'Crops',
        rows: { from: 'entry' },
        key: 'Crop',
        columns: [column('Crop', { type: 'text' }), column('Price', number('money/lb', 'money/kg'))],
      },
      {
        ...SHEET,
        name: 'Plantings',
        rows: { from: 'entry' },
        key: 'Planting',
        columns: [
          column('Planting', { type: 'text' }),
          column('Crop', { type: 'link', table: 'Crops' }),
          column('In-row spacing', number('in', 'cm')),
          column('Length', number('ft', 'm')),
          column('Sown', { type: 'date' }),
          column('Loss', number('%')),
          column('Coldest', { type: 'temperature' }),
          column('Covered', { type: 'yesno' }),
          column('Plants', number(), '[Length] / [In-row spacing]'),
        ],
      },
    ],
    rows: {
      Farm: [{ Latitude: 44, 'Spare seed': '10%' }],
      Crops: [
        { Crop: 'Onion', Price: '2 money/lb' },
        { Crop: 'Leek', Price: '3 money/lb' },
      ],
      Plantings: [
        planting('Early', 'Onion', '6 in', '50 ft', '2027-03-15', '10%', '30 degF', 'yes'),
        planting('Middle', 'Leek', '8 in', '40 ft', '2027-04-01', '20%', '40 degF', 'no'),
        planting('Late', 'Onion', '4 in', '10 ft', '2027-05-01', '5%', '50 degF', 'no'),
      ],
    },
  });
}

function planting(...cells: readonly string[]): Record<string, string> {
  const names = ['Planting', 'Crop', 'In-row spacing', 'Length', 'Sown', 'Loss', 'Coldest', 'Covered'];
  return Object.fromEntries(names.map((name, i) => [name, cells[i] ?? '']));
}

/** A workbook with a paper, kept worked out. */
export class Desk {
  readonly book: Book;
  readonly room: ScratchRoom;

  constructor(book: Book = smallBook()) {
    this.book = book;
    book.workbook.do([{ command: 'add paper', paper: 'p', name: 'Sums' }], message('add paper', { paper: 'Sums' }));
    this.room = new ScratchRoom(book.workbook);
    book.workbook.subscribe(({ change }: { readonly change: ChangeSet }) => this.room.update(change));
  }

  do(...commands: readonly Command[]): void {
    const done = this.book.workbook.do(commands, message('type on paper', { paper: 'Sums', cell: '', entry: '' }));
    if (done.refused) throw new Error(done.why);
  }

  type(cells: Readonly<Record<string, string>>, paper = 'p'): void {
    this.do({ command: 'type on paper', paper, cells });
  }

  /** Types into a cell of a sheet. */
  set(sheet: string, row: string, columnName: string, entry: string): void {
    const slot = this.book.rowOf(sheet, row) ?? -1;
    const done = this.book.edit([{ edit: 'cell', table: sheet, row: slot, column: columnName, entry }]);
    if (done.refused) throw new Error(done.why);
  }

  shown(cell: string, paper = 'p'): ShownCell {
    return this.room.cell(paper, cell);
  }

  text(cell: string, paper = 'p'): string {
    return this.shown(cell, paper).text;
  }

  /** What a formula gives in a cell by itself. */
  gives(formula: string): string | number | boolean | null {
    this.type({ Z99: formula });
    return this.shown('Z99').value;
  }
}
