// Reads what a person types into a cell, by the column's type. Gives the canonical value, or a sentence that says what to
// write instead; never throws and never guesses silently. The workbook calls it for every edit and every imported cell.

import { readDate } from './date-text.ts';
import { plainDigits } from './number-text.ts';
import { readQuantity, readTemperature } from './quantity-text.ts';
import { type EntryContext, type EntryRead, quoted, refused } from './reading.ts';
import { nameOfType, type ValueType } from './type.ts';
import type { Writing } from './writing.ts';

export type { EntryContext, EntryRead } from './reading.ts';

/** No number, quantity or date is written longer; anything longer is refused before it is looked at. */
const LONGEST_FIGURE = 200;

/**
 * The value that `text` means in a column of `type`. Blank text is a blank. Numbers come back in canonical units (m, kg,
 * day, K, shares as 0.85), dates as civil days, yes/no as boolean, choices as spelt among the options, links as their text
 * (the workbook finds the row). `unit` is the unit typed explicitly, undefined where the column's own was meant.
 */
export function readEntry(text: string, type: ValueType, context: EntryContext): EntryRead {
  const typed = plainFigures(text.trim(), type, context.writing);
  if (typed === '') return { ok: true, value: null, unit: undefined };
  if (typed.length > LONGEST_FIGURE && type.kind !== 'text' && type.kind !== 'link' && type.kind !== 'choice') {
    return refused(`${quoted(typed)} is too long to be ${nameOfType(type)}: write it shorter.`);
  }
  switch (type.kind) {
    case 'number':
      return readQuantity(typed, type, context);
    case 'temperature':
      return readTemperature(typed, type, context);
    case 'date': {
      const read = readDate(typed, context);
      return read.ok ? { ok: true, value: read.civil, unit: undefined } : read;
    }
    case 'yesno':
      return readYesNo(typed);
    case 'choice':
      return readChoice(typed, type.options);
    case 'text':
    case 'link':
      return { ok: true, value: typed, unit: undefined };
    case 'record':
      return refused(`These figures are worked out together: change what they rest on.`);
  }
}

/** Figures 0 to 9 whatever the script, and no apostrophes between thousands, where people write them here. */
function plainFigures(text: string, { kind }: ValueType, writing: Writing | undefined): string {
  if (kind !== 'number' && kind !== 'temperature' && kind !== 'date') return text;
  const plain = plainDigits(text);
  if (writing === undefined) return plain;
  const { group } = writing;
  const marked = plain.replace(/(?<=\d)\u066b(?=\d)/g, writing.decimal).replace(/(?<=\d)\u066c(?=\d)/g, '');
  const apostrophes = group === '\u2019' || group === "'";
  return apostrophes ? marked.replace(/(?<=\d)['\u2019](?=\d{3}(?!\d))/g, '') : marked;
}

function readYesNo(typed: string): EntryRead {
  if (/^(y|yes|true)$/i.test(typed)) return { ok: true, value: true, unit: undefined };
  if (/^(n|no|false)$/i.test(typed)) return { ok: true, value: false, unit: undefined };
  return refused(`${quoted(typed)} is neither yes nor no: write yes or no.`);
}

/** As spelt, else ignoring case, else the one option that starts so. */
function readChoice(typed: string, options: readonly string[]): EntryRead {
  // As most of a pasted block or a file is spelt.
  if (options.includes(typed)) return { ok: true, value: typed, unit: undefined };
  const lower = typed.toLowerCase();
  const starting = options.filter((option) => option.toLowerCase().startsWith(lower));
  const option =
    options.find((candidate) => candidate.toLowerCase() === lower) ?? (starting.length === 1 ? starting[0] : undefined);
  if (option !== undefined) return { ok: true, value: option, unit: undefined };
  if (starting.length > 1) return refused(`${quoted(typed)} could be ${starting.join(' or ')}: write more of it.`);
  return refused(`${quoted(typed)} isn't among the choices: write ${options.join(', ')}.`);
}
