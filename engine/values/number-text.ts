// Numbers as people type them: 1,250 or 1 250, 1.5 or 1,5, 1/2, 1 1/2, ½. Reads the number at the front of a text and
// gives back the rest; knows nothing of units.

import { quoted, refused } from './reading.ts';

export type NumberRead =
  | { readonly ok: true; readonly value: number; readonly rest: string }
  | { readonly ok: false; readonly why: string };

const VULGAR: ReadonlyMap<string, number> = new Map([
  ['½', 1 / 2],
  ['¼', 1 / 4],
  ['¾', 3 / 4],
  ['⅓', 1 / 3],
  ['⅔', 2 / 3],
  ['⅕', 1 / 5],
  ['⅖', 2 / 5],
  ['⅗', 3 / 5],
  ['⅘', 4 / 5],
  ['⅙', 1 / 6],
  ['⅚', 5 / 6],
  ['⅛', 1 / 8],
  ['⅜', 3 / 8],
  ['⅝', 5 / 8],
  ['⅞', 7 / 8],
]);

const SIGN = /^([+\-−]?)\s*/;
const FRACTION = /^(?:(\d+)(?:\s+|-))?(\d+)\s*[/⁄]\s*(\d+)(?![\d.,]*\d)/;
const VULGAR_FRACTION = /^(\d*)\s*([½¼¾⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞])/;
const SPACED = /^(\d{1,3}(?:[ \u00a0\u2009\u202f]\d{3})+)(?!\d)([.,]\d+)?/;
const DIGITS = /^(?:\d+(?:[.,]\d+)*|[.,]\d+)(?:e[+-]?\d+)?/i;

/**
 * The number at the front of `text` and what follows it, blanks trimmed. A lone comma or point before exactly three
 * digits is read as `decimalComma` says (1,250 is 1250, with decimal comma 1.25); everywhere else the marks speak for
 * themselves (1,5; 1.234,5; 1,234,567). undefined where no number stands in front.
 */
export function readNumber(text: string, decimalComma: boolean): NumberRead | undefined {
  const sign = SIGN.exec(text);
  const negative = sign !== null && sign[1] !== '' && sign[1] !== '+';
  const unsigned = text.slice(sign?.[0].length ?? 0);
  const found = unsignedNumber(unsigned, decimalComma);
  if (found === undefined) return undefined;
  if (found.value === undefined || !Number.isFinite(found.value)) return refused(found.why ?? TOO_LARGE);
  const value = negative && found.value !== 0 ? -found.value : found.value;
  return { ok: true, value, rest: unsigned.slice(found.length).trim() };
}

const TOO_LARGE = 'The number is too large to count with.';

interface Found {
  readonly value: number | undefined;
  readonly length: number;
  readonly why?: string;
}

function unsignedNumber(text: string, decimalComma: boolean): Found | undefined {
  const fraction = FRACTION.exec(text);
  if (fraction !== null) {
    const [all, whole = '0', over, under] = fraction;
    if (Number(under) === 0) return { value: undefined, length: all.length, why: `${quoted(all)} divides by 0.` };
    return { value: Number(whole) + Number(over) / Number(under), length: all.length };
  }
  const vulgar = VULGAR_FRACTION.exec(text);
  if (vulgar !== null) {
    return { value: Number(vulgar[1]) + (VULGAR.get(vulgar[2] ?? '') ?? 0), length: vulgar[0].length };
  }
  const spaced = SPACED.exec(text);
  if (spaced !== null) {
    const [all, whole = '', decimals = ''] = spaced;
    return { value: Number(whole.replace(/\s/g, '') + decimals.replace(',', '.')), length: all.length };
  }
  const digits = DIGITS.exec(text);
  if (digits === null) return undefined;
  const typed = digits[0];
  const trailingPoint = /^\.(?![\d.])/.test(text.slice(typed.length)) ? 1 : 0;
  const plain = plainDecimal(typed, decimalComma);
  return plain === undefined
    ? {
        value: undefined,
        length: typed.length,
        why: `${quoted(typed)} doesn't read as one number: write 1250 or 1250.5.`,
      }
    : { value: Number(plain), length: typed.length + trailingPoint };
}

/** Digits with marks as a decimal with a point and no grouping; undefined where the marks contradict each other. */
function plainDecimal(typed: string, decimalComma: boolean): string | undefined {
  const marks = [...typed].filter((character) => character === ',' || character === '.');
  const last = marks.at(-1);
  if (last === undefined) return typed;
  const other = last === ',' ? '.' : ',';
  const repeated = marks.filter((mark) => mark === last).length > 1;
  if (repeated) return marks.includes(other) ? undefined : ungrouped(typed, last);
  if (marks.length > 1) {
    const at = typed.lastIndexOf(last);
    const whole = ungrouped(typed.slice(0, at), other);
    return whole === undefined ? undefined : `${whole}.${typed.slice(at + 1)}`;
  }
  const couldGroup = /^[1-9]\d{0,2}[.,]\d{3}$/.test(typed);
  const groups = couldGroup && (last === ',') !== decimalComma;
  return groups ? typed.replace(last, '') : typed.replace(',', '.');
}

function ungrouped(typed: string, mark: string): string | undefined {
  const groups = typed.split(mark);
  const [first = '', ...others] = groups;
  const sound = /^\d{1,3}$/.test(first) && others.every((group) => /^\d{3}$/.test(group));
  return sound ? groups.join('') : undefined;
}
