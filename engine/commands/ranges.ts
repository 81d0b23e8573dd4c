// Entries that are not known for sure: '80..90%', '25..35 lb', '12 May..28 May', or low, likely and high, '20..25..35 lb'. The
// cell holds what is likely, which is the middle where only the ends are written.

import { numberContent, placeContent } from '../document/cells.ts';
import type { Content, ContentRange } from '../document/content.ts';
import type { ProgramColumn } from '../schema/compile.ts';
import { isMixed } from '../units/table.ts';
import { fromCanonical, toCanonical, type Unit } from '../units/unit.ts';
import { isoDate } from '../values/civil.ts';
import { FILLED } from '../values/column.ts';
import { showDate } from '../values/date-text.ts';
import { type EntryContext, readEntry } from '../values/entry.ts';
import { unitLabel } from '../values/show.ts';
import { equalNumbers } from '../values/tolerance.ts';
import type { ValueType } from '../values/type.ts';
import type { Draft } from './draft.ts';
import { readTyped, type TypedEntry } from './read-typed.ts';

export type RangeRead =
  | { readonly ok: true; readonly likely: Content; readonly range: ContentRange }
  | { readonly ok: false; readonly why: string };

/** The two or three parts of a range; undefined where an entry is none, or the column holds no figure that could be one. */
export function rangeParts({ type }: ProgramColumn, entry: string): readonly string[] | undefined {
  if (type?.kind !== 'number' && type?.kind !== 'temperature' && type?.kind !== 'date') return undefined;
  if (!entry.includes('..') && !entry.includes('…')) return undefined;
  return entry.split(/\.\.+|…/).map((part) => part.trim());
}

interface End {
  readonly content: Content;
  readonly value: number;
  readonly unit: Parameters<typeof numberContent>[3];
}

/** `plain`: as formulas have figures, rather than as the workbook's locale has them. */
export function readRange(
  column: ProgramColumn,
  parts: readonly string[],
  draft: Pick<Draft, 'document'>,
  { plain }: Pick<TypedEntry, 'plain'> = {},
): RangeRead {
  const { document } = draft;
  const context = document.entryIn(column, plain);
  const last = parts.at(-1) ?? '';
  if (parts.length > 3 || parts.some((part) => part === ''))
    return { ok: false, why: `Write a range as two figures, 80..90%, or as low, likely and high, 75..80..90%.` };
  const ends: End[] = [];
  for (const part of parts) {
    const entry = withUnitOf(part, last, column.type, context);
    const read = readTyped(column, plain === undefined ? { entry } : { entry, plain }, draft);
    if (!read.ok) return read;
    const placed = placeContent(read.content, column, document.program, document);
    if (!placed.ok || placed.cell.state !== FILLED) return { ok: false, why: `“${part}” is no end of a range.` };
    ends.push({ content: read.content, value: placed.cell.value, unit: placed.cell.unit });
  }
  const [low, high] = [ends[0], ends.at(-1)];
  const middle = ends.length === 3 ? ends[1] : undefined;
  if (low === undefined || high === undefined) return { ok: false, why: 'A range has two ends.' };
  if (low.value > high.value || (middle !== undefined && (middle.value < low.value || middle.value > high.value)))
    return { ok: false, why: whyNotInOrder(parts, ends, column, draft) };
  const likely = middle?.content ?? middleOf(low, high, column, draft);
  return { ok: true, likely, range: { low: low.content, high: high.content } };
}

/** Days are said with the years in which they were taken, as they may be in order without. */
function whyNotInOrder(
  parts: readonly string[],
  ends: readonly End[],
  { type }: ProgramColumn,
  { document }: Pick<Draft, 'document'>,
): string {
  if (type?.kind !== 'date') {
    return `${parts.join(' to ')} is not in order: write the lowest first and the highest last.`;
  }
  const days = ends.map(({ value }) => showDate(value, document.writing)).join(' to ');
  return `${days} is not in order: write the earliest first and the latest last, or their years.`;
}

function middleOf(low: End, high: End, column: ProgramColumn, { document }: Pick<Draft, 'document'>): Content {
  const { type } = column;
  const middle = (low.value + high.value) / 2;
  if (type?.kind === 'number' || type?.kind === 'temperature') {
    const value = asWritten(middle, high.unit ?? type.unit);
    return numberContent(value, type, column, high.unit, document.program);
  }
  return { date: isoDate(Math.round(middle)) };
}

/** A middle written longer than this, such as 10 in as part of a foot, is no figure that a person would write. */
const MOST_DIGITS = 12;

/** A middle without the dust of halving and of turning units: of 80% and 90% it is 85%, not 85.00000000000001%. */
function asWritten(middle: number, unit: Unit): number {
  const raw = fromCanonical(unit, middle);
  for (let digits = 1; digits <= MOST_DIGITS; digits++) {
    const shorter = Number(raw.toPrecision(digits));
    const value = toCanonical(unit, shorter);
    if (equalNumbers(value, middle)) return value;
  }
  return middle;
}

/**
 * A figure with the unit of the last where it has none of its own: '80..90%', '1 1/2..2 yd'. As it is where it isn't read, is no
 * quantity, or the last has none either; beside '2 ft 6 in' a bare figure counts in the larger of the two.
 */
export function withUnitOf(part: string, last: string, type: ValueType | undefined, context: EntryContext): string {
  if (type?.kind !== 'number' && type?.kind !== 'temperature') return part;
  const own = readEntry(part, type, context);
  const unit = unitTyped(last, type, context);
  if (!own.ok || own.unit !== undefined || unit === undefined) return part;
  // Its own unit is what the column takes a bare figure in, but for shares, where 0.5 and 0.5% are two.
  if (unit.symbol === type.unit.symbol && unit.symbol !== '%') return part;
  return `${part} ${unitLabel(isMixed(unit) ? unit.larger : unit, context.vocabulary.currency)}`;
}

function unitTyped(text: string, type: ValueType, context: EntryContext): Unit | undefined {
  const read = readEntry(text, type, context);
  return read.ok ? read.unit : undefined;
}
