// What the functions share that stand inside hyperformula: what they know of the workbook, the names they have in there, and how their
// sentences are told from hyperformula's own messages.

import { FUNCTIONS } from '../../engine/index.ts';
import type { Measures } from './call-measures.ts';
import { ENGINE_FIRST } from './engine-first.ts';
import type { Measure } from './figures.ts';

/** What the functions need to know of the workbook: hyperformula hands it to them as its context. */
export class WorkbookContext {
  readonly measures: Measures;
  /** As numbers are written here: a tag of a language, and the sign or name of the currency. */
  readonly locale: string;
  readonly currency: string;
  /** What the column counts in that stands on a sheet of hyperformula's; undefined for the sheets of papers. */
  readonly measureOn: (sheet: number) => Measure | undefined;

  constructor(
    measures: Measures,
    { locale, currency }: { readonly locale: string; readonly currency: string },
    measureOn: (sheet: number) => Measure | undefined,
  ) {
    this.measures = measures;
    this.locale = locale;
    this.currency = currency;
    this.measureOn = measureOn;
  }
}

/** Before a sentence of ours, to tell it from hyperformula's own messages; no letter that is seen. */
export const SAID_HERE = '\u2060';

/** The sentence of a fault that one of our functions gave; undefined where it said none. */
export function saidHere(message: string | undefined): string | undefined {
  return message?.startsWith(SAID_HERE) === true && message !== SAID_HERE ? message.slice(SAID_HERE.length) : undefined;
}

/** Functions of other spreadsheets that stand in pasted-functions.ts. */
export const PASTED: ReadonlySet<string> = new Set(
  'ROW COLUMN INDEX VLOOKUP HLOOKUP XLOOKUP AVERAGEIFS AGGREGATE DOLLAR TREND'.split(' '),
);

/** Functions whose answer is a day when they are asked of days (day-functions.ts). */
export const KEEPS_DAYS: ReadonlySet<string> = new Set(
  (
    'MAX MIN MAXA MINA AVERAGE AVERAGEA MEDIAN MODE MODE.SNGL LARGE SMALL PERCENTILE PERCENTILE.INC PERCENTILE.EXC QUARTILE ' +
    'QUARTILE.INC QUARTILE.EXC TRIMMEAN MAXIFS MINIFS AVERAGEIF AVERAGEIFS SUBTOTAL'
  ).split(' '),
);

/** Before the names of functions that stand beside one of hyperformula's own. */
const INSIDE = 'DIBBLE.';
/** Before the names of those that make days of its answer. */
const IN_DAYS = 'DIBBLE.DAYS.';

/** hyperformula takes any name that begins so for its own OFFSET, so those have another name inside it. */
const TAKEN = /^OFFSET(?=.)/;

/** The name that formulas say inside hyperformula for a function, where its own function of that name stays as it is. */
export function nameInside(name: string): string {
  const upper = name.toUpperCase();
  return KEEPS_DAYS.has(upper) ? IN_DAYS + upper : nameBeside(name);
}

/** The same of a function that makes no days of what it gives. */
export function nameBeside(name: string): string {
  const upper = name.toUpperCase();
  const isOther = ENGINE_FIRST.has(upper) || PASTED.has(upper) || (TAKEN.test(upper) && FUNCTIONS.has(upper));
  return isOther ? INSIDE + upper : name;
}

export function nameOutside(name: string): string {
  const before = [IN_DAYS, INSIDE].find((one) => name.startsWith(one)) ?? '';
  return name.slice(before.length);
}
