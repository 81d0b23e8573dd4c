// The crops of the library as a newcomer ticks them: found as people say them, each tick a variety and a planting at the crop's usual
// spacing, untick takes them away again. Pure: questions and commands; the first questions and the tests call it.

import { type Book, type Command, message, rowNamed, type Workbook } from '../../../engine/index.ts';
import { PLANTINGS, VARIETIES } from '../panels/columns.ts';
import { type AskedRow, askRows } from '../pictures/kit/ask.ts';

const CROPS = 'crops';
const ALSO_CALLED = 'also-called';

export interface FirstCrop {
  readonly name: string;
  readonly family: string;
  /** Its planting's row id, where it is ticked. */
  readonly planting: string | undefined;
}

/**
 * Crops found by their names; all for ''. Plurals and parts of names count. What is called just so comes first, then names of which
 * what was typed is the last word ('corn' is sweet corn before it is corn salad), then other whole words, then beginnings of words;
 * else they stand in the library's order.
 */
export function cropsFound(book: Book, typed: string): readonly FirstCrop[] {
  const planted = plantingsByCrop(book);
  const wanted = wordsOf(typed);
  return askRows(book, CROPS)
    .flatMap((row) => {
      const name = row.text('crop');
      const also = row.text(ALSO_CALLED);
      const all = wordsOf(`${name} ${also}`);
      if (!wanted.every((word) => all.some((one) => begins(one, word)))) return [];
      const [head = ''] = name.split(',');
      const ranks = [rank(head, wanted), ...also.split(',').map((one) => rank(one, wanted) + AS_WELL)];
      const far = wanted.every((word) => all.some((one) => same(one, word))) ? WHOLE_WORDS : WHOLE_WORDS + 1;
      const found: FirstCrop = { name, family: row.text('family'), planting: planted.get(name)?.id };
      return [{ found, rank: wanted.length === 0 ? 0 : Math.min(far, ...ranks) }];
    })
    .toSorted((a, b) => a.rank - b.rank)
    .map(({ found }) => found);
}

/** A crop that is also called so comes behind one whose name it is. */
const AS_WELL = 0.5;

/** The rank of names that have all the words somewhere. */
const WHOLE_WORDS = 2;

/** 0 where a name is just these words, 1 where it ends in them, else past all. */
function rank(name: string, wanted: readonly Word[]): number {
  const words = wordsOf(name);
  const last = words.slice(-wanted.length);
  const ends = last.length === wanted.length && last.every((word, at) => same(word, wanted[at] ?? []));
  if (!ends) return Number.POSITIVE_INFINITY;
  return words.length === wanted.length ? 0 : 1;
}

/** A word as it stands and without what may be its plural's end: 'tomatoes', 'tomatoe', 'tomato'. */
type Word = readonly string[];

function same(a: Word, b: Word): boolean {
  return a.some((form) => b.includes(form));
}

function begins(name: Word, typed: Word): boolean {
  return name.some((form) => typed.some((beginning) => form.startsWith(beginning)));
}

/** 'carrots' and 'carrot', 'tomatoes' and 'tomato', 'radishes', 'berries' and 'berry', 'chillies' and 'chilli'. */
function wordsOf(text: string): readonly Word[] {
  return text
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '')
    .map((word) => [
      word,
      ...(/[^s]s$/.test(word) ? [word.slice(0, -1)] : []),
      ...(/(?:o|sh|ch|x|i)es$/.test(word) ? [word.slice(0, -2)] : []),
      ...(/ies$/.test(word) ? [word.replace(/ies$/, 'y')] : []),
    ]);
}

function plantingsByCrop(book: Book): ReadonlyMap<string, AskedRow> {
  const found = new Map<string, AskedRow>();
  for (const row of askRows(book, PLANTINGS)) if (!found.has(row.text('crop'))) found.set(row.text('crop'), row);
  return found;
}

/** What a tick does: a variety called like the crop, where there is none yet, and a planting of it. */
export function tickCommands(book: Book, crop: string): readonly Command[] {
  const variety: Command = { command: 'insert row', sheet: VARIETIES, entries: { variety: crop, crop } };
  const planting: Command = { command: 'insert row', sheet: PLANTINGS, entries: { planting: crop, variety: crop } };
  return rowNamed(book, VARIETIES, crop) === undefined ? [variety, planting] : [planting];
}

/** What taking a tick away does: its planting goes, and the variety that came with it. */
export function untickCommands(book: Book, { name, planting }: FirstCrop): readonly Command[] {
  if (planting === undefined) return [];
  const variety = askRows(book, VARIETIES).find((row) => row.text('variety') === name);
  const own = askRows(book, PLANTINGS).filter((row) => row.text('variety') === name);
  return [
    { command: 'remove rows', sheet: PLANTINGS, rows: [planting] },
    ...(variety === undefined || own.length > 1
      ? []
      : [{ command: 'remove rows', sheet: VARIETIES, rows: [variety.id] } satisfies Command]),
  ];
}

/** Ticks or unticks a crop as one step. */
export function toggleCrop(
  workbook: Workbook,
  crop: FirstCrop,
): { readonly commands: readonly Command[]; readonly said: ReturnType<typeof message> } {
  return crop.planting === undefined
    ? { commands: tickCommands(workbook, crop.name), said: message('add row', { row: crop.name, sheet: 'Plantings' }) }
    : { commands: untickCommands(workbook, crop), said: message('remove row', { row: crop.name, sheet: 'Plantings' }) };
}
