// How many plants stand in a block, cell or place: the share with none, one, two and so on of a planting sown by the place. Pure:
// from the engine's queries to what is drawn.

import { type Book, decimalText, rowName, settings } from '../../../../engine/index.ts';
import type { Reading } from '../../drawing/reader.tsx';
import { PLANTINGS } from '../../panels/columns.ts';
import { askRow, askRows } from '../kit/ask.ts';
import type { PictureTable } from '../kit/model.ts';

const SHARES = ['empty-stations', 'with-1-plant', 'with-2-plants', 'with-3-plants', 'with-4-plants', 'with-5-or-more'];
const NAMES = ['none', '1', '2', '3', '4', '5 or more'];

export interface SownPlanting {
  readonly id: string;
  readonly slot: number;
  readonly name: string;
}

/** Plantings that are sown so many seeds to a place. */
export function sownPlantings(book: Book): readonly SownPlanting[] {
  return askRows(book, PLANTINGS).flatMap((row) => {
    const isSown = SHARES.every((column) => row.figure(column) !== undefined);
    return isSown ? [{ id: row.id, slot: row.slot, name: rowName(book, PLANTINGS, row.slot) }] : [];
  });
}

export interface Blocks {
  readonly title: string;
  readonly says: string;
  /** With none, one, two plants and so on, in percent. */
  readonly bars: readonly { readonly name: string; readonly percent: number }[];
  readonly readings: readonly Reading[];
  readonly table: PictureTable;
}

export function plantsPerBlock(book: Book, { slot, name }: SownPlanting): Blocks {
  const row = askRow(book, PLANTINGS, slot);
  const { writing } = settings(book);
  const rounded = (percent: number): string => decimalText(percent, 0, percent > 0 && percent < 1 ? 1 : 0, writing);
  const bars = SHARES.map((column, at) => ({ name: NAMES[at] ?? '', percent: (row.figure(column) ?? 0) * 100 }));
  const place = PLACES[row.text('start')] ?? 'place';
  const words = bars.map(({ percent }, at) => `${rounded(percent)}% of ${place}s with ${plantsIn(at)}`);
  const usual = bars.reduce((most, bar, at) => (bar.percent > (bars[most]?.percent ?? 0) ? at : most), 0);
  const seeds = row.text('seeds-per-station');
  const sown = `${name}, ${seeds} ${seeds === '1' ? 'seed' : 'seeds'} a ${place}`;
  return {
    title: `Plants in a ${place}`,
    says: `${sown}: ${row.text('plants-per-station')} plants on average in the ${place}s that have any; most often ${plantsIn(usual)} (${rounded(
      bars[usual]?.percent ?? 0,
    )}%), and ${rounded(bars[0]?.percent ?? 0)}% stay empty.`,
    bars,
    readings: words.map((each, x) => ({ x, words: `${each}.` })),
    table: {
      head: [`Plants in a ${place}`, `Share of ${place}s, %`],
      rows: bars.map(({ name: plants, percent }) => [plants, rounded(percent)]),
    },
  };
}

const PLACES: Readonly<Record<string, string>> = { blocks: 'block', cells: 'cell' };

function plantsIn(at: number): string {
  return at === 0 ? 'no plant' : at === 1 ? '1 plant' : `${NAMES[at] ?? ''} plants`;
}
