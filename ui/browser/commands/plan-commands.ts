// Commands that plan: lay a succession, propose beds, work the order out, plant a way. Entries of the table. What they do is fetched
// when first asked for (plan-acts.ts).

import { sheetView } from '../../../engine/index.ts';
import { part } from '../store/part.ts';
import type { PageCommand } from './command.ts';
import { withPart } from './fetched.ts';
import type { Situation } from './situation.ts';

const ORDER_SHEETS = ['packs', 'seed-order', 'plant-order', 'suppliers', 'order-lines'];

function has(sheet: string): (now: Situation) => boolean {
  return ({ book }) => book !== undefined && sheetView(book, sheet) !== undefined;
}

function isOn(...sheets: readonly string[]): (now: Situation) => boolean {
  return ({ place }) => sheets.includes(place.sheet);
}

const planActs = part(() => import('./plan-acts.ts'));

/** Does what is fetched for it; shows a refusal where that doesn't come. */
function carefully(work: (acts: typeof import('./plan-acts.ts')) => Promise<void>): void {
  withPart(planActs(), work);
}

function oneRow(what: string): (now: Situation) => string | undefined {
  return (now) => (now.rows.length === 1 ? undefined : `Select one ${what}.`);
}

export const PLAN_COMMANDS: readonly PageCommand[] = [
  {
    id: 'lay succession',
    label: 'Lay the succession',
    applies: isOn('successions'),
    refusal: oneRow('succession'),
    menus: { cell: 1 },
    run: (now) => carefully((acts) => acts.layHere(now)),
  },
  {
    id: 'lay successions',
    label: 'Lay all successions',
    applies: has('successions'),
    menus: { workbook: 4 },
    run: () => carefully((acts) => acts.layAll()),
  },
  {
    id: 'propose beds',
    label: 'Propose beds',
    applies: has('beds'),
    menus: { workbook: 4 },
    run: () => carefully((acts) => acts.placeBeds()),
  },
  {
    id: 'work out order',
    label: 'Work out the order',
    applies: has('suppliers'),
    menus: { workbook: 4 },
    run: () => carefully((acts) => acts.workOrderOut()),
  },
  {
    id: 'work out order here',
    label: 'Work out the whole order',
    applies: isOn(...ORDER_SHEETS),
    menus: { cell: 1 },
    run: () => carefully((acts) => acts.workOrderOut()),
  },
  {
    id: 'download order',
    label: "Download the supplier's order as CSV",
    applies: isOn('suppliers', 'order-lines'),
    refusal: oneRow('row'),
    menus: { cell: 1 },
    run: ({ book, place, rows: [row] }) => {
      if (book !== undefined && row !== undefined) carefully((acts) => acts.downloadOrder(book, place.sheet, row));
    },
  },
  {
    id: 'plant way',
    label: 'Plant it this way',
    applies: isOn('ways-to-plant'),
    refusal: oneRow('way'),
    menus: { cell: 1 },
    run: (now) => carefully((acts) => acts.plantHere(now)),
  },
];
