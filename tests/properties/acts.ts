// Random work on the small workbook: the acts that the properties of recalculation are tried with.

import fc from 'fast-check';
import type { Book, Edit } from '../book.ts';

/** What a person does: an edit of the workbook as it stands then, or a step back or on. */
export type Act =
  | { readonly act: 'edit'; readonly edit: (workbook: Book) => Edit[] }
  | { readonly act: 'undo' }
  | { readonly act: 'redo' };

/** One of the rows there are, by a number that may be any; undefined where there are none. */
function pickRow(workbook: Book, table: string, which: number): number | undefined {
  const rows = workbook.rows(table);
  return rows[which % Math.max(1, rows.length)];
}

function onRow(table: string, which: number, make: (row: number) => Edit): (workbook: Book) => Edit[] {
  return (workbook) => {
    const row = pickRow(workbook, table, which);
    return row === undefined ? [] : [make(row)];
  };
}

const which = fc.nat({ max: 1000 });
const length = fc.oneof(
  fc.integer({ min: 0, max: 60 }).map((n) => `${n} ft`),
  fc.integer({ min: 1, max: 900 }).map((n) => `${n / 10} m`),
  fc.constantFrom('', 'banana', '0', '2 ft 6 in'),
);
const share = fc.oneof(
  fc.integer({ min: 0, max: 100 }).map((n) => `${n}%`),
  fc.constantFrom('', '-3', 'nothing'),
);
const day = fc.oneof(
  fc.integer({ min: 1, max: 28 }).map((n) => `2027-03-${String(n).padStart(2, '0')}`),
  fc.constantFrom('', '15 Mar', '30 Feb'),
);

const cellEdits = fc.oneof(
  fc
    .tuple(which, length)
    .map(([row, entry]) =>
      onRow('Plantings', row, (at) => ({ edit: 'cell', table: 'Plantings', row: at, column: 'Length', entry })),
    ),
  fc
    .tuple(which, length)
    .map(([row, entry]) =>
      onRow('Plantings', row, (at) => ({ edit: 'cell', table: 'Plantings', row: at, column: 'Spacing', entry })),
    ),
  fc
    .tuple(which, length)
    .map(([row, entry]) =>
      onRow('Beds', row, (at) => ({ edit: 'cell', table: 'Beds', row: at, column: 'Length', entry })),
    ),
  fc
    .tuple(which, share)
    .map(([row, entry]) =>
      onRow('Varieties', row, (at) => ({ edit: 'cell', table: 'Varieties', row: at, column: 'Germination', entry })),
    ),
  fc
    .tuple(which, day)
    .map(([row, entry]) =>
      onRow('Plantings', row, (at) => ({ edit: 'cell', table: 'Plantings', row: at, column: 'Sown', entry })),
    ),
  share.map((entry) =>
    onRow('Farm', 0, (at) => ({ edit: 'cell', table: 'Farm', row: at, column: 'Spare seed', entry })),
  ),
  fc
    .integer({ min: 2025, max: 2030 })
    .map((year) =>
      onRow('Farm', 0, (at) => ({ edit: 'cell', table: 'Farm', row: at, column: 'Season', entry: String(year) })),
    ),
  fc.tuple(which, which).map(([row, target]) => (workbook: Book): Edit[] => {
    const at = pickRow(workbook, 'Plantings', row);
    const variety = pickRow(workbook, 'Varieties', target);
    if (at === undefined || variety === undefined) return [];
    return [
      { edit: 'cell', table: 'Plantings', row: at, column: 'Variety', entry: workbook.rowName('Varieties', variety) },
    ];
  }),
  fc
    .tuple(which, fc.constantFrom('12', '', '100'))
    .map(([row, entry]) =>
      onRow('Plantings', row, (at) => ({ edit: 'cell', table: 'Plantings', row: at, column: 'Stations', entry })),
    ),
  which.map((row) =>
    onRow('Plantings', row, (at) => ({ edit: 'take back', table: 'Plantings', row: at, column: 'Stations' })),
  ),
  fc
    .tuple(which, fc.constantFrom('late', 'early', ''))
    .map(([row, entry]) =>
      onRow('Order', row, (at) => ({ edit: 'cell', table: 'Order', row: at, column: 'Note', entry })),
    ),
  fc
    .tuple(which, fc.constantFrom('P1', 'P2', 'Px', 'Py'))
    .map(([row, entry]) =>
      onRow('Plantings', row, (at) => ({ edit: 'cell', table: 'Plantings', row: at, column: 'Planting', entry })),
    ),
);

const rowEdits = fc.oneof(
  fc
    .tuple(fc.nat({ max: 40 }), fc.constantFrom('Amber', 'Red', 'Unused', ''), length)
    .map(([n, variety, spacing]) => (): Edit[] => [
      {
        edit: 'insert row',
        table: 'Plantings',
        entries: { Planting: `New ${n}`, Variety: variety, Bed: 'B1', Length: '10', Spacing: spacing },
      },
    ]),
  fc
    .nat({ max: 9 })
    .map((n) => (): Edit[] => [
      { edit: 'insert row', table: 'Varieties', entries: { Variety: `Variety ${n}`, Germination: '70%' } },
    ]),
  which.map((row) => onRow('Plantings', row, (at) => ({ edit: 'remove row', table: 'Plantings', row: at }))),
  which.map((row) => onRow('Varieties', row, (at) => ({ edit: 'remove row', table: 'Varieties', row: at }))),
);

const FORMULAS: readonly (readonly [string, string, string])[] = [
  ['Plantings', 'Stations', 'ROUNDDOWN([Length] / [Spacing]; 0)'],
  ['Plantings', 'Stations', 'ROUNDUP([Length] / [Spacing]; 0) + 1'],
  ['Plantings', 'Stations', '[Seeds]'],
  ['Plantings', 'Stations', '[Length] +'],
  ['Plantings', 'Stations', '[Length]'],
  ['Plantings', 'Seeds', 'ROUNDUP([Stations] / [Variety].[Germination] * (1 + Farm[Spare seed]); 0)'],
  ['Plantings', 'Seeds', 'SUMIFS(Plantings[Stations]; Plantings[Bed]; [Bed]) + RANK([Stations]; Plantings[Stations])'],
  ['Beds', 'Used', 'SUMIFS(Plantings[Length]; Plantings[Bed]; [Bed])'],
  ['Beds', 'Used', 'MAXIFS(Plantings[Length]; Plantings[Bed]; [Bed]; Plantings[Length]; ">" & [Length] / 10)'],
  ['Beds', 'Density', 'SUMIFS(Plantings[Stations]; Plantings[Bed]; [Bed]) / [Length]'],
  ['Beds', 'Density', '[Bed] & " has " & [Free]'],
  ['Order', 'All', 'SUM(Order[Needed]) + COUNTIFS(Order[Note]; "early")'],
];

const schemaEdits = fc.oneof(
  fc.constantFrom(...FORMULAS).map(([table, column, formula]) => (): Edit[] => [
    { edit: 'formula', table, column, formula },
  ]),
  fc.constantFrom('us', 'si').map((units) => (): Edit[] => [{ edit: 'units', units }]),
  fc.integer({ min: 20_000, max: 21_000 }).map((today) => (): Edit[] => [{ edit: 'today', today }]),
  fc.constant((): Edit[] => [{ edit: 'remove column', table: 'Beds', column: 'Density' }]),
);

/** Any act: mostly cells, some rows, now and then a formula, a unit or the date. */
export const acts: fc.Arbitrary<Act> = fc.oneof(
  { weight: 10, arbitrary: cellEdits.map((edit): Act => ({ act: 'edit', edit })) },
  { weight: 4, arbitrary: rowEdits.map((edit): Act => ({ act: 'edit', edit })) },
  { weight: 1, arbitrary: schemaEdits.map((edit): Act => ({ act: 'edit', edit })) },
  { weight: 2, arbitrary: fc.constant<Act>({ act: 'undo' }) },
  { weight: 1, arbitrary: fc.constant<Act>({ act: 'redo' }) },
);

/** Does one act; edits that are refused change nothing. */
export function perform(workbook: Book, act: Act): void {
  if (act.act === 'undo') workbook.undo();
  else if (act.act === 'redo') workbook.redo();
  else workbook.edit(act.edit(workbook), 'Random work');
}
