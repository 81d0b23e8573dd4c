// Cuts a formula's text into tokens with their places. Never stops: what is wrong is noted as the first diagnostic and
// the rest is still cut, so that the parser can refuse and the formula bar can still help. Called by parser.ts and
// assist.ts; calls the unit words alone. A number takes the unit that follows it: 8 in, 2.5 lb/ft2, 3 fl oz.

import type { Diagnostic, Span } from './tree.ts';

export type Token = Span &
  (
    | { readonly token: 'number'; readonly value: number }
    /** `unit` as written, blanks around its strokes taken out. */
    | { readonly token: 'quantity'; readonly value: number; readonly unit: string; readonly unitSpan: Span }
    | { readonly token: 'text'; readonly value: string; readonly closed: boolean }
    /** [Column], doubled brackets undone. */
    | { readonly token: 'bracket'; readonly name: string; readonly closed: boolean }
    /** 'Seed lots', doubled quotes undone. */
    | { readonly token: 'quoted'; readonly name: string; readonly closed: boolean }
    /** A bare word: a function, a table, TRUE or FALSE. */
    | { readonly token: 'word'; readonly word: string }
    /** An operator, parenthesis, separator or the stroke of a path. */
    | { readonly token: 'sign'; readonly sign: string }
    | { readonly token: 'end' }
  );

export interface Lexed {
  /** Always closed by one 'end' token. */
  readonly tokens: readonly Token[];
  /** The first thing wrong with the text, if anything. */
  readonly diagnostic: Diagnostic | undefined;
}

const BLANK = /[\s\u00a0]+/y;
const NUMBER = /(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?/y;
const WORD = /[\p{L}_][\p{L}\p{M}\p{N}_]*(?:\.[\p{L}\p{N}_][\p{L}\p{M}\p{N}_]*)*/uy;
const UNIT_WORD = /[\p{L}\p{Sc}°][\p{L}\p{M}\p{N}\p{Sc}°²³]*/uy;
const UNIT_POWER = /\s*\^\s*(\d+)(?![\d.])/y;
const UNIT_STROKE = /\s*\/\s*/y;
/** Signs with which no word begins, those of most parts of a formula. */
const PLAIN_SIGNS = `[('";)*+-/=<>&%`;
const SIGN = /<=|>=|<>|[-+*/^&=<>%();,.]/y;

/** Units multiplied and divided in one; a rate has three or four. */
const MOST_UNITS = 12;

/** What people also write, and what stands for it here. */
const SAME_SIGN: ReadonlyMap<string, string> = new Map([
  ['≤', '<='],
  ['≥', '>='],
  ['≠', '<>'],
  ['×', '*'],
  ['·', '*'],
  ['÷', '/'],
  ['−', '-'],
  ['–', '-'],
]);

/** Written so elsewhere; refused with the right sign as the fix, for a silent change could hide a slip. */
const WRONG_SIGN: readonly (readonly [string, string, string])[] = [
  ['==', '=', 'Equal is written with one sign: ='],
  ['!=', '<>', 'Unequal is written <>'],
  ['=>', '>=', 'At least is written >='],
  ['=<', '<=', 'At most is written <='],
  ['**', '^', 'A power is written with ^'],
];

/** Without one of these second no sign is wrong: next to none is, so the list is seldom gone through. */
const WRONG_SECONDS: ReadonlySet<string> = new Set(WRONG_SIGN.map(([written]) => written.charAt(1)));

/** Cuts `text` into tokens; `isUnit` says whether a word, alone or with its powers and strokes, is a unit. */
export function cutFormula(text: string, isUnit: (symbol: string) => boolean): Lexed {
  const tokens: Token[] = [];
  let diagnostic: Diagnostic | undefined;
  let at = 0;

  const warn = (from: number, to: number, why: string, fix?: string): void => {
    diagnostic ??= fix === undefined ? { from, to, why } : { from, to, why, fix: { text: fix, span: { from, to } } };
  };
  const match = (pattern: RegExp, from: number): RegExpExecArray | null => {
    pattern.lastIndex = from;
    return pattern.exec(text);
  };
  const lengthOf = (pattern: RegExp, from: number): number => {
    pattern.lastIndex = from;
    return pattern.test(text) ? pattern.lastIndex - from : 0;
  };
  const afterBlanks = (from: number): number => {
    return mayBeBlank(text.charCodeAt(from)) ? from + lengthOf(BLANK, from) : from;
  };

  /** Text up to `close`, in which a doubled sign stands for one. */
  const enclosed = (open: string, close: string): { inside: string; closed: boolean } => {
    let inside = '';
    at += open.length;
    const end = text.indexOf(close, at);
    const plain = end > at && text.charAt(end + 1) !== close ? text.slice(at, end) : open;
    if (!plain.includes(open)) {
      at = end + close.length;
      return { inside: plain, closed: true };
    }
    while (at < text.length) {
      const sign = text.charAt(at);
      if (text.startsWith(sign, at + 1) && (sign === close || sign === open)) {
        inside += sign;
        at += 2;
      } else if (sign === close) {
        at += close.length;
        return { inside, closed: true };
      } else if (sign === open) {
        break;
      } else {
        inside += sign;
        at += 1;
      }
    }
    return { inside, closed: false };
  };

  /** The end of one unit word with its power, and how it reads, at `from`; a word before a bracket is a name. */
  const unitFactor = (from: number): { end: number; symbol: string } | undefined => {
    const first = lengthOf(UNIT_WORD, from);
    if (first === 0) return undefined;
    const word = text.slice(from, from + first);
    const gap = lengthOf(BLANK, from + first);
    const second = gap === 0 ? 0 : lengthOf(UNIT_WORD, from + first + gap);
    const both = `${word} ${text.slice(from + first + gap, from + first + gap + second)}`;
    const [end, symbol] = second > 0 && isUnit(both) ? [from + first + gap + second, both] : [from + first, word];
    if (!isUnit(symbol) || '(['.includes(text.charAt(afterBlanks(end)) || ' ')) return undefined;
    const power = match(UNIT_POWER, end);
    if (power === null || !isUnit(`${symbol}^${power[1]}`)) return { end, symbol };
    return { end: end + power[0].length, symbol: `${symbol}^${power[1]}` };
  };

  const unitAt = (from: number): { end: number; symbol: string } | undefined => {
    let unit = unitFactor(from);
    for (let count = 1; unit !== undefined; count += 1) {
      const stroke = lengthOf(UNIT_STROKE, unit.end);
      const next = stroke === 0 ? undefined : unitFactor(unit.end + stroke);
      if (next === undefined) break;
      if (count >= MOST_UNITS) {
        warn(
          from,
          next.end,
          `One unit is made of at most ${MOST_UNITS} others: write the rest as amounts of their own.`,
        );
        break;
      }
      if (!isUnit(`${unit.symbol}/${next.symbol}`)) break;
      unit = { end: next.end, symbol: `${unit.symbol}/${next.symbol}` };
    }
    return unit;
  };

  const number = (length: number): void => {
    const from = at;
    at += length;
    const value = Number(text.slice(from, at));
    if (!Number.isFinite(value)) warn(from, at, 'This number is too large to reckon with.');
    const mark = text.charAt(at);
    if (mark === '"' || mark === "'") {
      const fix = `${text.slice(from, at)} ${mark === '"' ? 'in' : 'ft'}`;
      warn(from, at + 1, `Inches and feet are written with letters in a formula: ${fix}.`, fix);
    }
    const start = afterBlanks(at);
    const unit = unitAt(start);
    if (unit === undefined) {
      tokens.push({ token: 'number', value, from, to: at });
      return;
    }
    at = unit.end;
    tokens.push({
      token: 'quantity',
      value,
      unit: unit.symbol,
      unitSpan: { from: start, to: unit.end },
      from,
      to: unit.end,
    });
  };

  /** An operator or a sign that only other programs know; true where something was taken. */
  const sign = (): boolean => {
    const wrong = WRONG_SECONDS.has(text.charAt(at + 1))
      ? WRONG_SIGN.find(([written]) => text.startsWith(written, at))
      : undefined;
    if (wrong !== undefined) {
      const [written, right, why] = wrong;
      warn(at, at + written.length, `${why}.`, right);
      tokens.push({ token: 'sign', sign: right, from: at, to: at + written.length });
      at += written.length;
      return true;
    }
    const length = lengthOf(SIGN, at);
    const known = length === 0 ? SAME_SIGN.get(text.charAt(at)) : text.slice(at, at + length);
    if (known === undefined) return false;
    const from = at;
    at += Math.max(1, length);
    tokens.push({ token: 'sign', sign: known, from, to: at });
    return true;
  };

  while (true) {
    at = afterBlanks(at);
    const from = at;
    if (at >= text.length) break;
    const first = text.charAt(at);
    const numberLength = '0123456789.'.includes(first) ? lengthOf(NUMBER, at) : 0;
    const wordLength = numberLength > 0 || PLAIN_SIGNS.includes(first) ? 0 : lengthOf(WORD, at);
    if (numberLength > 0) {
      number(numberLength);
    } else if (wordLength > 0) {
      at += wordLength;
      tokens.push({ token: 'word', word: text.slice(from, at), from, to: at });
    } else if (first === '[') {
      const { inside, closed } = enclosed('[', ']');
      const name = inside.trim();
      tokens.push({ token: 'bracket', name, closed, from, to: at });
      if (!closed) warn(from, at, 'This [ is not closed: put ] after the name of the column.');
      else if (name === '') warn(from, at, 'Write the name of a column between the brackets.');
    } else if (first === "'") {
      const { inside, closed } = enclosed("'", "'");
      const name = inside.trim();
      tokens.push({ token: 'quoted', name, closed, from, to: at });
      if (!closed) warn(from, at, "This ' is not closed: put ' after the name of the table.");
      else if (name === '') warn(from, at, 'Write the name of a table between the quotes.');
    } else if (first === '"') {
      const { inside, closed } = enclosed('"', '"');
      tokens.push({ token: 'text', value: inside, closed, from, to: at });
      if (!closed) warn(from, at, 'This text is not closed: put " at its end.');
    } else if (!sign()) {
      const whole = String.fromCodePoint(text.codePointAt(at) as number);
      at += whole.length;
      warn(from, at, strayWhy(whole));
    }
  }
  tokens.push({ token: 'end', from: text.length, to: text.length });
  return { tokens, diagnostic };
}

/** Plain letters and signs are looked over at once; what else there is a pattern tells. */
function mayBeBlank(code: number): boolean {
  return code <= 0x20 || code >= 0x80;
}

function strayWhy(sign: string): string {
  if (sign === ':') return 'Columns are named whole, not by ranges of cells: write Table[Column].';
  if ('“”„«»'.includes(sign)) return 'Put text between straight quotes: "text".';
  if ('‘’`´'.includes(sign)) return "Put the name of a table between straight quotes: 'Seed lots'.";
  if (sign === ']') return 'This ] closes nothing: put [ before the name of the column.';
  if (/\p{Sc}/u.test(sign)) return `Write the amount before its currency: 5 ${sign}.`;
  if ('{}'.includes(sign))
    return 'Lists of values are not written in formulas; put them in a table and name its column.';
  return `${sign} has no meaning in a formula; take it out.`;
}
