// Numbers as people type them: 1,250 or 1 250, 1,23,456, 1.5 or 1,5, 1/2, 1 1/2, ½, in the figures of any script. Reads the
// number at the front of a text and gives back the rest; knows nothing of units.

import { quoted, refused } from './reading.ts';

export type NumberRead =
  | { readonly ok: true; readonly value: number; readonly rest: string }
  | { readonly ok: false; readonly why: string };

/** Thousands, or as in India a thousand and then hundreds of it. */
const GROUPED = /^\d{1,3}([,.]\d{3})+$|^\d\d?(,\d\d)+,\d{3}$/;
const DIGIT = /\p{Nd}/u;

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
    const [all, whole, fraction = ''] = vulgar;
    // Written out by the rules of Unicode: '½' is '1⁄2'.
    const [over, under] = fraction.normalize('NFKC').split('⁄');
    return { value: Number(whole) + Number(over) / Number(under), length: all.length };
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
  if (repeated) return marks.includes(other) ? undefined : ungrouped(typed);
  if (marks.length > 1) {
    const at = typed.lastIndexOf(last);
    const whole = ungrouped(typed.slice(0, at));
    return whole === undefined ? undefined : `${whole}.${typed.slice(at + 1)}`;
  }
  const couldGroup = /^[1-9]\d{0,2}[.,]\d{3}$/.test(typed);
  const groups = couldGroup && (last === ',') !== decimalComma;
  return groups ? typed.replace(last, '') : typed.replace(',', '.');
}

/** `typed` has marks of one kind. */
function ungrouped(typed: string): string | undefined {
  return GROUPED.test(typed) ? typed.replace(/[,.]/g, '') : undefined;
}

/**
 * A text with figures 0 to 9 where it has those of another script, and with plain signs where it has wide ones, as Japanese input
 * methods give them: '１２．５' is '12.5'.
 */
export function plainDigits(text: string): string {
  return text
    .replace(/[！-～]/g, (wide) => wide.normalize('NFKC'))
    .replace(/[^\0-\x7f]/g, (sign) => {
      if (!DIGIT.test(sign)) return sign;
      // The figures of a script stand in a row of sixteen signs, the 0 first or seventh.
      const code = sign.charCodeAt(0);
      const place = code % 16;
      return String(DIGIT.test(String.fromCharCode(code - place)) ? place : place - 6);
    });
}
