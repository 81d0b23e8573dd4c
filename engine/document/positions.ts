// Places of rows between other rows, as texts that sort: between any two there is room for another, so that a row is moved
// or put in without touching its neighbours, and two people who do so at once still agree on the order. After the fractional
// indexing of Greenspan 2020 (observablehq.com, Implementing Fractional Indexing): digits of base 62 behind a point,
// never ending in the lowest digit.

const DIGITS = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz';
const BASE = DIGITS.length;
const LOWEST = DIGITS.charAt(0);
const FIRST = DIGITS.charAt(1);

/** What a position from outside must look like. */
export const POSITION = /^[0-9A-Za-z]*[1-9A-Za-z]$/;

function digitAt(position: string, at: number): number {
  return at < position.length ? DIGITS.indexOf(position.charAt(at)) : 0;
}

/** A place between two; '' before is the very beginning, undefined after the very end. throws where `before` doesn't sort before `after`. */
export function positionBetween(before: string, after: string | undefined): string {
  if (after === undefined) return positionAfter(before);
  if (before >= after) throw new Error(`There is no place between ${before} and ${after}.`);
  let common = '';
  for (let at = 0; ; at++) {
    const low = digitAt(before, at);
    const high = digitAt(after, at);
    if (low === high) {
      common += DIGITS.charAt(low);
      continue;
    }
    if (high - low > 1) return common + DIGITS.charAt(low + Math.ceil((high - low) / 2));
    // Neighbouring digits: what follows `before` from here on, with nothing above it any more.
    return common + DIGITS.charAt(low) + positionAfter(before.slice(at + 1));
  }
}

/**
 * The next place after all: counts up at the same length, and where that is used up doubles it, so that places stay short
 * however many rows are put at the end one by one.
 */
function positionAfter(before: string): string {
  if (before === '') return DIGITS.charAt(BASE / 2);
  // Sixty times of sixty-one the last digit alone counts up: a sheet's worth of rows is put at the end so.
  const last = digitAt(before, before.length - 1);
  if (last < BASE - 1) return before.slice(0, -1) + DIGITS.charAt(last + 1);
  const digits = Array.from(before, (digit) => DIGITS.indexOf(digit));
  const up = digits.findLastIndex((digit) => digit < BASE - 1);
  if (up < 0) return `${before}${LOWEST.repeat(before.length - 1)}${FIRST}`;
  const counted = digits.map((digit, i) => (i < up ? digit : i === up ? digit + 1 : 0));
  // A place never ends in the lowest digit, so that one is passed over.
  counted[digits.length - 1] = 1;
  return counted.map((digit) => DIGITS.charAt(digit)).join('');
}

/** So many places between two, in order and evenly apart, none longer than it must be. */
export function positionsBetween(before: string, after: string | undefined, count: number): string[] {
  if (count === 0) return [];
  if (count === 1) return [positionBetween(before, after)];
  if (after === undefined) return before === '' ? firstPositions(count) : positionsAfter(before, count);
  const middle = Math.floor(count / 2);
  const at = positionBetween(before, after);
  return [...positionsBetween(before, at, middle), at, ...positionsBetween(at, after, count - middle - 1)];
}

function positionsAfter(before: string, count: number): string[] {
  let last = before;
  return Array.from({ length: count }, () => {
    last = positionAfter(last);
    return last;
  });
}

/** The places of `count` rows that begin a sheet. */
function firstPositions(count: number): string[] {
  let width = 1;
  while (BASE ** width < (count + 1) * 2) width++;
  const step = Math.floor(BASE ** width / (count + 1));
  return Array.from({ length: count }, (_, i) => numeral((i + 1) * step, width));
}

/** A whole number in base 62 with leading zeros, its trailing zeros left out. */
function numeral(value: number, width: number): string {
  let text = '';
  for (let rest = value, i = 0; i < width; i++, rest = Math.floor(rest / BASE))
    text = DIGITS.charAt(rest % BASE) + text;
  return text.replace(/0+$/, '');
}
