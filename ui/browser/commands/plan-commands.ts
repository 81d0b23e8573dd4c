// Commands that plan: lay a succession, propose beds, work the order out, plant a way. Entries of the table. The acts stand in
// sheets-templates/acts and are fetched when first asked for; beds are searched for in a worker.

import { type BedQuestion, cellView, rowWithId, sheetView, type Workbook } from '../../../engine/index.ts';
import type { Act } from '../../../sheets-templates/index.ts';
import { download, fileName } from '../files/download.ts';
import { change, UNDO } from '../store/change.ts';
import { tell } from '../store/notices.ts';
import { workbookNow } from '../store/workbook.ts';
import type { PageCommand } from './command.ts';
import type { Situation } from './situation.ts';

const ORDER_SHEETS = ['packs', 'seed-order', 'plant-order', 'suppliers', 'order-lines'];
const SEED = 1;

function has(sheet: string): (now: Situation) => boolean {
  return ({ book }) => book !== undefined && sheetView(book, sheet) !== undefined;
}

function isOn(...sheets: readonly string[]): (now: Situation) => boolean {
  return ({ place }) => sheets.includes(place.sheet);
}

/** Does an act and says what it came to, with the way back; says why not where it can't be done. */
function carry(act: Act): boolean {
  if (!act.ok) {
    tell(act.why, 'refusal');
    return false;
  }
  if (change(act.commands, act.message).refused) return false;
  tell(act.said, 'done', UNDO);
  return true;
}

async function layHere({ book, rows: [row] }: Situation): Promise<void> {
  const { laySuccession } = await import('../../../sheets-templates/acts/lay-succession.ts');
  if (book !== undefined && row !== undefined) carry(laySuccession(book, row));
}

async function layAll(): Promise<void> {
  const { laySuccessions } = await import('../../../sheets-templates/acts/lay-successions.ts');
  const book = workbookNow();
  if (book !== undefined) carry(laySuccessions(book));
}

async function placeBeds(): Promise<void> {
  const { bedWish, proposeBeds } = await import('../../../sheets-templates/acts/propose-beds.ts');
  const book = workbookNow();
  if (book === undefined) return;
  const wish = bedWish(book);
  if (typeof wish === 'string') {
    tell(wish, 'refusal');
    return;
  }
  tell('Looking for beds.', 'done');
  const found = await searchBeds(wish.question);
  const now = bedWish(book);
  if (workbookNow() !== book || typeof now === 'string' || !isSame(now.question, wish.question)) {
    tell('The plan was changed while beds were looked for: propose them again.', 'refusal');
    return;
  }
  carry(proposeBeds(book, now, found));
}

function isSame(one: BedQuestion, other: BedQuestion): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}

/** The bed of each planting, searched for beside the page. */
function searchBeds(question: BedQuestion): Promise<Int32Array> {
  const worker = new Worker(new URL('./bed-worker.ts', import.meta.url), { type: 'module' });
  return new Promise<Int32Array>((give, fail) => {
    worker.addEventListener('message', ({ data }: MessageEvent<Int32Array>) => give(data));
    worker.addEventListener('error', () => fail(new Error('Beds could not be looked for: load the page again.')));
    worker.postMessage({ question, seed: SEED });
  }).finally(() => worker.terminate());
}

async function workOrderOut(): Promise<void> {
  const { workOutOrder } = await import('../../../sheets-templates/acts/work-out-order.ts');
  const book = workbookNow();
  if (book !== undefined) carry(workOutOrder(book));
}

/** The order of the supplier that a row of Suppliers or Order lines names. */
async function downloadOrder(book: Workbook, sheet: string, row: string): Promise<void> {
  const slot = rowWithId(book, sheet, row);
  if (slot === undefined) return;
  const supplier = cellView(book, sheet, slot, 'supplier').text;
  const { orderCsv, ordersOf } = await import('../../../sheets-templates/orders.ts');
  const found = ordersOf(book)?.find((order) => order.supplier.toLowerCase() === supplier.toLowerCase());
  if (found === undefined) {
    tell(`Nothing is ordered from ${supplier}: work the order out first.`, 'refusal');
    return;
  }
  const name = `${fileName(`Order ${supplier}`)}.csv`;
  download(orderCsv(found), name, 'text/csv');
  tell(`Downloaded ${name}.`, 'done');
}

async function plantHere({ book, rows: [row] }: Situation): Promise<void> {
  const { plantWay } = await import('../../../sheets-templates/acts/plant-way.ts');
  if (book !== undefined && row !== undefined) carry(plantWay(book, row));
}

/** Shows a refusal where what is fetched for a command doesn't come. */
function carefully(work: Promise<void>): void {
  work.catch((fault: unknown) => {
    tell(fault instanceof Error ? fault.message : String(fault), 'refusal');
  });
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
    run: (now) => carefully(layHere(now)),
  },
  {
    id: 'lay successions',
    label: 'Lay all successions',
    applies: has('successions'),
    menus: { workbook: 4 },
    run: () => carefully(layAll()),
  },
  {
    id: 'propose beds',
    label: 'Propose beds',
    applies: has('beds'),
    menus: { workbook: 4 },
    run: () => carefully(placeBeds()),
  },
  {
    id: 'work out order',
    label: 'Work out the order',
    applies: has('suppliers'),
    menus: { workbook: 4 },
    run: () => carefully(workOrderOut()),
  },
  {
    id: 'work out order here',
    label: 'Work out the whole order',
    applies: isOn(...ORDER_SHEETS),
    menus: { cell: 1 },
    run: () => carefully(workOrderOut()),
  },
  {
    id: 'download order',
    label: "Download the supplier's order as CSV",
    applies: isOn('suppliers', 'order-lines'),
    refusal: oneRow('row'),
    menus: { cell: 1 },
    run: ({ book, place, rows: [row] }) => {
      if (book !== undefined && row !== undefined) carefully(downloadOrder(book, place.sheet, row));
    },
  },
  {
    id: 'plant way',
    label: 'Plant it this way',
    applies: isOn('ways-to-plant'),
    refusal: oneRow('way'),
    menus: { cell: 1 },
    run: (now) => carefully(plantHere(now)),
  },
];
