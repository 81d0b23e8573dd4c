// Days as people type and paste them on a scratch paper: 3/15, 15 Mar, 15.3. A paper keeps them with their year, 2027-03-15, so that it
// says the same in every locale and season. Read as in the sheets; what is no day stays the text that it is.

import { type EntryContext, isoDate, readEntry } from '../../engine/index.ts';

/** Figures parted by strokes, 15.3. with its last point, a month by its name. 8-10, 1.5 and weeks are something else on a paper. */
const FORM =
  /^(?:\d{1,2}\/\d{1,2}(?:\/(?:\d{2}|\d{4}))?|\d{1,2}\. ?\d{1,2}\. ?(?:\d{2}|\d{4})?|\d{1,2}\.?[ -]?\p{L}{3,}\.?(?:[ -]\d{4})?|(?!week\b)\p{L}{3,}\.? \d{1,2}(?:,? \d{4})?)$/iu;

/** What a paper keeps of a day; undefined for what is none. */
export function keptDay(typed: string, context: EntryContext): string | undefined {
  const text = typed.trim();
  if (!FORM.test(text)) return undefined;
  const read = readEntry(text, { kind: 'date' }, context);
  return read.ok && typeof read.value === 'number' ? isoDate(read.value) : undefined;
}
