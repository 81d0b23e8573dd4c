// What reading an entry gives and what it needs to know; shared by the readers of numbers, quantities and dates.

import type { Unit } from '../units/unit.ts';
import type { Vocabulary } from '../units/vocabulary.ts';
import type { Writing } from './writing.ts';

export interface EntryContext {
  readonly vocabulary: Vocabulary;
  /** The season: the year of a date typed without one, unless `starts` says more. */
  readonly year: number;
  /** First day of the season: a date typed without its year is in the twelve months from it. */
  readonly starts?: number | undefined;
  /** 1,250 means one and a quarter, 1.250 twelve hundred and fifty. Otherwise the other way round. */
  readonly decimalComma?: boolean;
  /** 3/4 means 3 April. Otherwise 4 March. A day above 12 is recognised either way. */
  readonly dayFirst?: boolean;
  /** How people write here: names of months and days besides the English ones, marks of thousands, other figures. */
  readonly writing?: Writing;
}

/** The canonical value and the unit that was typed, if one was; or a sentence that says what to write instead. */
export type EntryRead =
  | { readonly ok: true; readonly value: number | string | boolean | null; readonly unit: Unit | undefined }
  | { readonly ok: false; readonly why: string };

export function refused(why: string): { readonly ok: false; readonly why: string } {
  return { ok: false, why };
}

/** The typed text for a sentence; long texts are cut. */
export function quoted(text: string): string {
  return `"${text.length > 40 ? `${text.slice(0, 40)}…` : text}"`;
}
