// A small workbook for tests of the engine: beds, varieties, plantings and an order, with formulas of every reading kind.

import type { ColumnDeclaration, SheetDeclaration, TypeDeclaration, WorkbookDeclaration } from '../book.ts';

export const number = (us: string, si: string = us): TypeDeclaration => ({ type: 'number', unit: { us, si } });
export const plain = number('', '');

export function entered(name: string, type: TypeDeclaration, more: Partial<ColumnDeclaration> = {}): ColumnDeclaration {
  return { name, type, group: '', note: '', role: 'entered', formula: '', ...more };
}

export function computed(name: string, type: TypeDeclaration, formula: string): ColumnDeclaration {
  return { name, type, group: '', note: '', role: 'computed', formula };
}

export function sheet(
  name: string,
  more: Partial<SheetDeclaration> & Pick<SheetDeclaration, 'columns'>,
): SheetDeclaration {
  return { name, question: 'Test', about: '', rows: { from: 'entry' }, checks: [], cautions: [], ...more };
}

/** The one-row sheet of the farm, on which the season of the small workbook rests. */
const FARM = sheet('Farm', {
  rows: { from: 'single' },
  columns: [entered('Spare seed', number('%')), entered('Season', plain)],
});
const FARM_ROWS = [{ 'Spare seed': '10%', Season: 2027 }];

/** A workbook of these sheets beside the farm's, with their rows. */
export function besideFarm(
  sheets: readonly SheetDeclaration[],
  rows: WorkbookDeclaration['rows'],
): WorkbookDeclaration {
  return { ...SMALL, sheets: [FARM, ...sheets], rows: { Farm: FARM_ROWS, ...rows } };
}

export const SMALL: WorkbookDeclaration = {
  title: 'Small',
  units: 'us',
  currency: 'EUR',
  today: 20_800,
  year: { sheet: 'Farm', column: 'Season' },
  sheets: [
    FARM,
    sheet('Varieties', {
      key: 'Variety',
      columns: [
        entered('Variety', { type: 'text' }),
        entered('Germination', number('%')),
        computed('Seeds', number('seeds'), 'SUMIFS(Plantings[Seeds]; Plantings[Variety]; [Variety])'),
      ],
    }),
    sheet('Beds', {
      key: 'Bed',
      columns: [
        entered('Bed', { type: 'text' }),
        entered('Length', number('ft', 'm')),
        computed('Used', number('ft', 'm'), 'SUMIFS(Plantings[Length]; Plantings[Bed]; [Bed])'),
        computed('Free', number('ft', 'm'), '[Length] - [Used]'),
      ],
    }),
    sheet('Plantings', {
      key: 'Planting',
      columns: [
        entered('Planting', { type: 'text' }),
        entered('Variety', { type: 'link', table: 'Varieties' }),
        entered('Bed', { type: 'link', table: 'Beds' }),
        entered('Length', number('ft', 'm')),
        entered('Spacing', number('in', 'cm')),
        entered('Sown', { type: 'date' }),
        computed('Stations', number('stations'), 'ROUNDDOWN([Length] / [Spacing]; 0)'),
        computed('Seeds', number('seeds'), 'ROUNDUP([Stations] / [Variety].[Germination] * (1 + Farm[Spare seed]); 0)'),
        computed('Ready', { type: 'date' }, '[Sown] + 10 weeks'),
        computed('Share of bed', number('%'), '[Length] / [Bed].[Length]'),
      ],
      checks: [
        {
          name: 'full',
          level: 'warning',
          column: 'Length',
          says: 'IF([Bed].[Free] < 0 ft; "Bed " & [Bed] & " is too short.")',
        },
      ],
    }),
    sheet('Order', {
      rows: { from: 'each', table: 'Varieties', as: 'Variety', where: '[Variety].[Seeds] > 0' },
      columns: [
        computed('Needed', number('seeds'), '[Variety].[Seeds]'),
        entered('Note', { type: 'text' }),
        computed('All', number('seeds'), 'SUM(Order[Needed])'),
      ],
    }),
    sheet('Weeks', {
      rows: {
        from: 'span',
        first: 'DATE(Farm[Season]; 1; 4)',
        last: 'DATE(Farm[Season]; 12; 31)',
        step: 'week',
        as: 'Week',
      },
      columns: [
        computed('Sown', plain, 'COUNTIFS(Plantings[Sown]; ">=" & [Week]; Plantings[Sown]; "<" & ([Week] + 7 days))'),
      ],
    }),
    sheet('Jobs', {
      rows: {
        from: 'events',
        dates: [
          { table: 'Plantings', column: 'Sown', event: 'Sow', about: 'Planting' },
          { table: 'Plantings', column: 'Ready', event: 'Plant out', about: 'Planting' },
        ],
        as: 'Date',
        event: 'Job',
      },
      columns: [computed('Bed', { type: 'link', table: 'Beds' }, '[Planting].[Bed]')],
    }),
  ],
  rows: {
    Farm: FARM_ROWS,
    Varieties: [
      { Variety: 'Amber', Germination: '85%' },
      { Variety: 'Red', Germination: 80 },
      { Variety: 'Unused', Germination: 90 },
    ],
    Beds: [
      { Bed: 'B1', Length: 50 },
      { Bed: 'B2', Length: '20 m' },
    ],
    Plantings: [
      { Planting: 'P1', Variety: 'Amber', Bed: 'B1', Length: 30, Spacing: '8 in', Sown: '2027-02-01' },
      { Planting: 'P2', Variety: 'Red', Bed: 'B1', Length: 25, Spacing: '20 cm', Sown: '2027-02-08' },
      { Planting: 'P3', Variety: 'Amber', Bed: 'B2', Length: 10, Spacing: 6, Sown: '2027-02-10' },
    ],
    Order: [{ Variety: 'Amber', Note: 'early' }],
  },
};
