// Works out the cheapest whole order: every seed, set and plant that is to be bought, across all suppliers, postage and least orders
// counted, and what each supplier alone would cost. Gives the commands that write the packs; a number of packs that a person
// typed stands, and the rest is worked out around it.

import {
  type Command,
  MOST_SUPPLIERS,
  message,
  type OrderQuestion,
  type OrderSupplier,
  rowId,
  rows,
  type WholeOrder,
  type Workbook,
  wholeOrder,
} from '../../engine/index.ts';
import { type Act, type RowOf, refused, rowAt } from './act.ts';

const PACKS = 'packs';
const SUPPLIERS = 'suppliers';

/** One thing to buy: a variety in one form. */
interface Need {
  readonly name: string;
  readonly variety: number;
  readonly form: string;
  readonly count: number;
}

/** What is asked, with the rows that its numbers stand for. */
interface OrderWish {
  readonly question: OrderQuestion;
  readonly needs: readonly Need[];
  /** By offer. */
  readonly packs: readonly RowOf[];
  readonly suppliers: readonly Seller[];
}

interface Seller {
  readonly name: string;
  /** Undefined where it stands in Packs only. */
  readonly row: RowOf | undefined;
}

function rowsOf(workbook: Workbook, sheet: string): readonly RowOf[] {
  return Array.from(rows(workbook, sheet), (slot) => rowAt(workbook, sheet, rowId(workbook, sheet, slot), slot));
}

function needsOf(workbook: Workbook): readonly Need[] {
  const asked = (sheet: string, form: string, column: string): readonly Need[] =>
    rowsOf(workbook, sheet).flatMap((row) => {
      const count = row.number(column) ?? 0;
      const name = `${row.text('variety')}${form === 'seed' ? '' : `, ${form}`}`;
      return count > 0 ? [{ name, variety: row.number('variety') ?? -1, form, count }] : [];
    });
  return [
    ...asked('seed-order', 'seed', 'seeds-to-buy'),
    ...asked('plant-order', 'sets', 'sets-to-buy'),
    ...asked('plant-order', 'plants', 'plants-to-buy'),
  ];
}

function sameName(a: string, b: string): boolean {
  return a.trim().toLowerCase() === b.trim().toLowerCase();
}

/** Everyone who sells a pack, as Suppliers names them where they stand there. */
function sellersOf(workbook: Workbook, packs: readonly RowOf[]): readonly Seller[] {
  const listed = rowsOf(workbook, SUPPLIERS).map((row): Seller => ({ name: row.text('supplier'), row }));
  const others: Seller[] = [];
  for (const pack of packs) {
    const name = pack.text('supplier');
    if (![...listed, ...others].some((one) => sameName(one.name, name))) others.push({ name, row: undefined });
  }
  return [...listed, ...others];
}

/** Packs that are needed, are to be had, and have a size and a price. */
function packsOnOffer(workbook: Workbook, needs: readonly Need[]): readonly RowOf[] {
  return rowsOf(workbook, PACKS).filter((pack) => {
    const isNeeded = needs.some(({ variety, form }) => isOf(pack, variety, form));
    return isNeeded && pack.value('sold-out') !== true && (pack.number('seeds-in-pack') ?? 0) > 0 && priced(pack);
  });
}

function priced(pack: RowOf): boolean {
  return pack.number('price') !== undefined;
}

function isOf(pack: RowOf, variety: number, form: string): boolean {
  return pack.number('variety') === variety && pack.text('form') === form;
}

function isTyped(pack: RowOf): boolean {
  return pack.view('packs-to-order').origin === 'entered';
}

/** What is to be worked out, or a sentence that says what it lacks. */
function orderWish(workbook: Workbook): OrderWish | string {
  const needs = needsOf(workbook);
  if (needs.length === 0)
    return 'Nothing is to be bought: no planting needs seed, sets or plants that are not on hand.';
  const offered = packsOnOffer(workbook, needs);
  if (offered.length === 0) return 'No pack with a size and a price is listed for what is needed: enter some in Packs.';
  const suppliers = sellersOf(workbook, offered);
  const sellerOf = (pack: RowOf): number => suppliers.findIndex(({ name }) => sameName(name, pack.text('supplier')));
  const typed = offered.filter(isTyped);
  const packs = offered.filter((pack) => !isTyped(pack));
  const bought = (pack: RowOf, column: string): number =>
    (pack.number('packs-to-order') ?? 0) * (pack.number(column) ?? 0);
  const question: OrderQuestion = {
    needs: needs.map(({ variety, form, count }) =>
      typed.reduce((left, pack) => (isOf(pack, variety, form) ? left - bought(pack, 'seeds-in-pack') : left), count),
    ),
    offers: packs.map((pack) => ({
      need: needs.findIndex(({ variety, form }) => isOf(pack, variety, form)),
      supplier: sellerOf(pack),
      size: pack.number('seeds-in-pack') ?? 0,
      price: pack.number('price') ?? 0,
    })),
    suppliers: suppliers.map(({ row }, s): OrderSupplier => {
      const already = typed.reduce((sum, pack) => (sellerOf(pack) === s ? sum + bought(pack, 'price') : sum), 0);
      return {
        postage: row?.number('postage') ?? 0,
        freeFrom: row?.number('postage-free-from'),
        least: row?.number('least-order') ?? 0,
        already,
      };
    }),
  };
  return { question, needs, packs, suppliers };
}

/** The commands that write the cheapest whole order into Packs, and beside each supplier what it alone would cost. */
export function workOutOrder(workbook: Workbook): Act {
  const wish = orderWish(workbook);
  if (typeof wish === 'string') return refused(wish);
  const found = wholeOrder(wish.question);
  const alone = wish.suppliers.map((_, s) => aloneAt(wish, s));
  return {
    ok: true,
    commands: [...packCommands(workbook, wish, found), ...supplierCommands(wish, alone)],
    message: message('work out order'),
    said: saidOf(wish, found, alone),
  };
}

interface Alone {
  readonly cost: number;
  /** Names of what it does not have. */
  readonly lacks: readonly string[];
}

/** All that one supplier offers of what is needed, bought there. */
function aloneAt({ question, needs }: OrderWish, s: number): Alone {
  const offers = question.offers.filter(({ supplier }) => supplier === s);
  const suppliers = question.suppliers.map((one, k) => (k === s ? one : { ...one, already: 0 }));
  const found = wholeOrder({ ...question, offers, suppliers });
  return { cost: found.cost, lacks: found.missing.map((v) => needs[v]?.name ?? '') };
}

function packCommands(workbook: Workbook, { packs }: OrderWish, { counts }: WholeOrder): readonly Command[] {
  const ordered = new Map(packs.map(({ id }, k) => [id, counts[k] ?? 0]));
  return rowsOf(workbook, PACKS).flatMap((pack) => {
    const count = ordered.get(pack.id) ?? 0;
    return set(PACKS, pack, 'proposed-packs', count === 0 ? '' : String(count));
  });
}

function set(sheet: string, row: RowOf, column: string, entry: string): readonly Command[] {
  return row.view(column).entry === entry ? [] : [{ command: 'set cell', sheet, row: row.id, column, entry }];
}

function supplierCommands({ suppliers, needs }: OrderWish, alone: readonly Alone[]): readonly Command[] {
  return suppliers.flatMap(({ name, row }, s): readonly Command[] => {
    const { cost = 0, lacks = [] } = alone[s] ?? {};
    const has = lacks.length < needs.length;
    const entries = { alone: has ? cost.toFixed(2) : '', 'does-not-have': has ? lacks.join(', ') : 'anything needed' };
    if (row !== undefined) {
      return Object.entries(entries).flatMap(([column, entry]) => set(SUPPLIERS, row, column, entry));
    }
    return name === '' ? [] : [{ command: 'insert row', sheet: SUPPLIERS, entries: { supplier: name, ...entries } }];
  });
}

/** '3 suppliers, 143.20 in all: Paper, 80.10 with 6.00 postage; ... . Seed alone: 160.20. ...' */
function saidOf({ suppliers, needs, question }: OrderWish, found: WholeOrder, alone: readonly Alone[]): string {
  const asked = suppliers.flatMap(({ name }, s) => {
    const [goods, postage] = [found.goods[s] ?? 0, found.postage[s] ?? 0];
    if (goods + postage === 0) return [];
    return [
      `${name || 'no supplier named'} ${(goods + postage).toFixed(2)}${postage > 0 ? ` (${postage.toFixed(2)} of it postage)` : ''}`,
    ];
  });
  const whole = suppliers.flatMap(({ name }, s) => {
    const { cost = 0, lacks = [] } = alone[s] ?? {};
    return lacks.length > found.missing.length ? [] : [`${name} ${cost.toFixed(2)}`];
  });
  const nobody = found.missing.map((v) => needs[v]?.name ?? '');
  const sellers = new Set(question.offers.map(({ supplier }) => supplier)).size;
  return [
    `The cheapest whole order costs ${found.cost.toFixed(2)}: ${asked.join(', ')}.`,
    whole.length === 0 ? 'No supplier alone has it all.' : `All from one supplier: ${whole.join(', ')}.`,
    nobody.length === 0 ? '' : `Nobody offers ${nobody.join(', ')}: add packs in Packs.`,
    found.proven ? '' : notProven(sellers),
  ]
    .filter((part) => part !== '')
    .join(' ');
}

function notProven(sellers: number): string {
  return sellers > MOST_SUPPLIERS
    ? `Only the ${MOST_SUPPLIERS} suppliers that offer most were tried: another order may be cheaper.`
    : 'There was too much to try: another order may be a little cheaper.';
}
