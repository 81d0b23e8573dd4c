// How things stand with the workbook on screen: whether it is kept, as which, and in what file of the person's own. The page
// reads these signals; what keeps the workbook sets them, and says here what can't be kept.

import { signal } from '@preact/signals';
import { tell } from '../store/notices.ts';
import type { OwnFile } from './records.ts';

export type Keeping =
  /** Fresh, and not changed yet. */
  | { readonly state: 'nothing yet' }
  | { readonly state: 'keeping' }
  | { readonly state: 'kept'; readonly at: number }
  | { readonly state: 'failed'; readonly why: string };

/** How things stand with what is on screen; the top line shows it. */
export const keeping = signal<Keeping>({ state: 'nothing yet' });

/** The id under which the workbook on screen is kept; undefined for a fresh one that was not changed yet. */
export const keptAs = signal<string | undefined>(undefined);

/** The person's file of the workbook on screen, as far as it is known. */
export const ownFile = signal<OwnFile | undefined>(undefined);

/** What a person can do when the workbook can't be kept; main.tsx says what saving is. */
export interface Helps {
  readonly saveToFile: () => void;
}

let helps: Helps = { saveToFile: () => undefined };

/** What helps from now on. */
export function helpWith(given: Helps): void {
  helps = given;
}

export function saveToFile(): void {
  helps.saveToFile();
}

const SAVE = { label: 'Save to a file', run: saveToFile };

/** A refusal with the way to save the workbook to a file, or with other help. */
export function tellWithHelp(says: string, help = SAVE): void {
  tell(says, 'refusal', help);
}

/** The workbook on screen can't be kept; said once for as long as the reason stays the same. */
export function fail(why: string, help = SAVE): void {
  const before = keeping.peek();
  keeping.value = { state: 'failed', why };
  if (before.state === 'failed' && before.why === why) return;
  tellWithHelp(why, help);
}
