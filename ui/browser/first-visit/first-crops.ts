// The crops of the library as a newcomer ticks them: found as people say them, each tick a variety and a planting at the crop's usual
// spacing, untick takes them away again. Pure: questions and commands; the first questions and the tests call it.

import { type Book, type Command, message, rowNamed, type Workbook } from '../../../engine/index.ts';
import { PLANTINGS, VARIETIES } from '../panels/columns.ts';
import { type AskedRow, askRows } from '../pictures/kit/ask.ts';
import { withoutAccents } from './accents.ts';
import { isInGroup } from './crop-groups.ts';

const CROPS = 'crops';
const ALSO_CALLED = 'also-called';

export interface FirstCrop {
  readonly name: string;
  readonly family: string;
  /** Its planting's row id, where it is ticked. */
  readonly planting: string | undefined;
}

/**
 * Crops found by their names; all for ''. Plurals and parts of names count, and so do names written as one word or as two. What is
 * called just so comes first, then names of which what was typed is the last word ('corn' is sweet corn before it is corn salad),
 * then other whole words, then beginnings of words, and last what is in a group that is called so ('herbs'); else they stand in the
 * library's order.
 */
export function cropsFound(book: Book, typed: string): readonly FirstCrop[] {
  const planted = plantingsByCrop(book);
  const wanted = wordsOf(typed);
  return askRows(book, CROPS)
    .flatMap((row) => {
      const name = row.text('crop');
      const found: FirstCrop = { name, family: row.text('family'), planting: planted.get(name)?.id };
      const place = wanted.length === 0 ? 0 : rankOf(name, row.text(ALSO_CALLED), wanted);
      if (place !== undefined) return [{ found, rank: place }];
      return isInGroup(typed, found) ? [{ found, rank: IN_GROUP }] : [];
    })
    .toSorted((a, b) => a.rank - b.rank)
    .map(({ found }) => found);
}

/** How well a crop's names are what is wanted, 0 the best; undefined where they are not. */
function rankOf(name: string, also: string, wanted: readonly Word[]): number | undefined {
  const all = wordsOf(`${name} ${also}`);
  const [head = ''] = name.split(',');
  const ranks = [rank(head, wanted), ...also.split(',').map((one) => rank(one, wanted) + AS_WELL)];
  const have = (how: (name: Word, word: Word) => boolean): boolean =>
    wanted.every((word) => all.some((one) => how(one, word)));
  if (have(same)) ranks.push(WHOLE_WORDS);
  if (have(begins)) ranks.push(WHOLE_WORDS + 1);
  const least = Math.min(...ranks);
  return Number.isFinite(least) ? least : undefined;
}

/** A crop that is also called so comes behind one whose name it is. */
const AS_WELL = 0.5;

/** The rank of names that have all the words somewhere. */
const WHOLE_WORDS = 2;

/** The rank of what is only in a group that is called so. */
const IN_GROUP = WHOLE_WORDS + 2;

/** 0 where a name is just these words, together or apart, 1 where it ends in them, else past all. */
function rank(name: string, wanted: readonly Word[]): number {
  const words = wordsOf(name);
  if (same(joined(words), joined(wanted))) return 0;
  const last = words.slice(-wanted.length);
  return last.length === wanted.length && last.every((word, at) => same(word, wanted[at] ?? []))
    ? 1
    : Number.POSITIVE_INFINITY;
}

/** Words as one: 'mange tout' as 'mangetout', with what may be the end of the last one's plural and without. */
function joined(words: readonly Word[]): Word {
  const front = words.slice(0, -1).map(([word = '']) => word);
  return (words.at(-1) ?? []).map((form) => [...front, form].join(''));
}

/** A word as it stands and without what may be its plural's end: 'tomatoes', 'tomatoe', 'tomato'. */
type Word = readonly string[];

function same(a: Word, b: Word): boolean {
  return a.some((form) => b.includes(form));
}

function begins(name: Word, typed: Word): boolean {
  return name.some((form) => typed.some((beginning) => form.startsWith(beginning)));
}

/** 'carrots' and 'carrot', 'tomatoes' and 'tomato', 'radishes', 'berries' and 'berry', 'chillies' and 'chilli'; 'jalapeños' and “lady's”
    without accents and apostrophes. */
function wordsOf(text: string): readonly Word[] {
  return withoutAccents(text)
    .replace(/['\u2019]/g, '')
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
