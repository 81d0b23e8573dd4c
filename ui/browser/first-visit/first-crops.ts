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

/** Crops found by their names, in the library's order; all for ''. Plurals and parts of names count. */
export function cropsFound(book: Book, typed: string): readonly FirstCrop[] {
  const planted = plantingsByCrop(book);
  const wanted = wordsOf(typed);
  return askRows(book, CROPS)
    .filter((row) => {
      const names = wordsOf(`${row.text('crop')} ${row.text(ALSO_CALLED)}`);
      return wanted.every((word) => names.some((name) => name.startsWith(word)));
    })
    .map((row): FirstCrop => {
      const name = row.text('crop');
      return { name, family: row.text('family'), planting: planted.get(name)?.id };
    });
}

/** Words without their plural ends: 'carrots' and 'carrot', 'tomatoes' and 'tomato', 'radishes', 'berries'. */
function wordsOf(text: string): readonly string[] {
  return text
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '')
    .map((word) =>
      word
        .replace(/ies$/, 'y')
        .replace(/(oe|she|che|xe)s$/, (end) => end.slice(0, -2))
        .replace(/([^s])s$/, '$1'),
    );
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
