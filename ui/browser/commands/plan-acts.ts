// What the commands that plan do: each act is fetched when first asked for, beds are searched for in a worker. plan-commands.ts fetches
// this when one of them is given, and the first questions for their beds.

import { type BedQuestion, cellView, rowWithId, type Workbook } from '../../../engine/index.ts';
import type { Act } from '../../../sheets-templates/index.ts';
import { askOnce } from '../files/ask-once.ts';
import { download, fileName } from '../files/download.ts';
import { change, UNDO } from '../store/change.ts';
import { tell } from '../store/notices.ts';
import { workbookNow } from '../store/workbook.ts';
import type { Situation } from './situation.ts';

/** The same seed every time: whoever asks twice gets the same beds. */
const SEED = 1;

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

export async function layHere({ book, rows: [row] }: Situation): Promise<void> {
  const { laySuccession } = await import('../../../sheets-templates/acts/lay-succession.ts');
  if (book !== undefined && row !== undefined) carry(laySuccession(book, row));
}

export async function layAll(): Promise<void> {
  const { laySuccessions } = await import('../../../sheets-templates/acts/lay-successions.ts');
  const book = workbookNow();
  if (book !== undefined) carry(laySuccessions(book));
}

export async function placeBeds(): Promise<void> {
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
  return askOnce(worker, { question, seed: SEED }, 'Beds could not be looked for: load the page again.');
}

export async function workOrderOut(): Promise<void> {
  const { workOutOrder } = await import('../../../sheets-templates/acts/work-out-order.ts');
  const book = workbookNow();
  if (book !== undefined) carry(workOutOrder(book));
}

/** The order of the supplier that a row of Suppliers or Order lines names. */
export async function downloadOrder(book: Workbook, sheet: string, row: string): Promise<void> {
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

export async function plantHere({ book, rows: [row] }: Situation): Promise<void> {
  const { plantWay } = await import('../../../sheets-templates/acts/plant-way.ts');
  if (book !== undefined && row !== undefined) carry(plantWay(book, row));
}
