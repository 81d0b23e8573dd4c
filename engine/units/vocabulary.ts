// The unit words of one workbook: the table, its powers and quotients, the workbook's money, and general units once their
// list is fetched. Finds a unit by any usual spelling, names the nearest one for a misspelling, and says why some words are
// not units. The checker, the reader of entries and the workbook use it.

import { CELSIUS_DAY, FAHRENHEIT_DAY, type Part, partsOf, unitOfParts } from './arithmetic.ts';
import { currencyOf } from './currency.ts';
import { LENGTH, MONEY, sameDimension } from './dimension.ts';
import { generalUnit, knowsGeneralUnits } from './general.ts';
import { type Atom, ONE, TABLE, TABLE_SYMBOLS } from './table.ts';
import type { Unit } from './unit.ts';

export interface Vocabulary {
  /**
   * The unit of a symbol as people write it, compound ones too: 'lb', 'Inches', 'lb/ft2', 'ft²', 'sq ft', 'seeds/g',
   * 'money/lb'. '' is the plain number ONE. Letters' case counts where it tells two units apart, else not. undefined for
   * what isn't a unit here, months and years among them.
   */
  find(symbol: string): Unit | undefined;
  /** The symbol of the unit nearest to a misspelt one; undefined where none is near. */
  nearest(symbol: string): string | undefined;
  /** Why a word that people do use as a unit isn't one here, in a sentence with the way out; undefined for all others. */
  refusal(symbol: string): string | undefined;
  /** ISO 4217 code of the workbook's money. */
  readonly currency: string;
  /** The simple units' symbols, for completing what is typed. */
  readonly symbols: readonly string[];
}

/** No unit is written longer; anything longer is none, and is not looked at. */
const LONGEST = 120;

/** Where case alone tells units apart (M: metre, million or thousand; T: ton or spoon), no other case is guessed. */
const NEVER_GUESSED = new Set(['M', 'MM', 'T', 'Mg', 'MG', 'C', 'F', 'k']);

const NO_MONTH =
  'A month has no fixed length: write days or weeks (30 days, 4 weeks), or move a date by months with EDATE.';
const NO_YEAR = 'A year has no fixed length: write days (365 days), or move a date by years with EDATE.';

const REFUSALS: ReadonlyMap<string, string> = new Map([
  ...['month', 'months', 'mo', 'mos', 'mth', 'mths'].map((word) => [word, NO_MONTH] as const),
  ...['year', 'years', 'yr', 'yrs', 'y'].map((word) => [word, NO_YEAR] as const),
  ['C', 'C alone is not a unit here: write degC for a temperature, Cdeg for a difference of temperatures.'],
  ['F', 'F alone is not a unit here: write degF for a temperature, Fdeg for a difference of temperatures.'],
  ['M', 'M can mean a thousand, a million or a metre: write the number in full, or m for metres.'],
  ['T', 'T can mean several things: write ton (2000 lb), t (1000 kg) or tbsp.'],
  ['stick', 'A stick has no fixed mass: write oz or g.'],
  ['lbf', 'lbf is a force: write lb for a mass.'],
]);

/** The unit words of a workbook that counts in `currency` (ISO 4217 code). */
export function createVocabulary(options: { currency: string }): Vocabulary {
  const money = moneyWords(options.currency);
  const spellings: ReadonlyMap<string, Unit> = new Map([
    ...TABLE,
    ['degCday', CELSIUS_DAY],
    ['degC day', CELSIUS_DAY],
    ['degFday', FAHRENHEIT_DAY],
    ['degF day', FAHRENHEIT_DAY],
    ...money,
  ]);
  const anyCase = ignoringCase(spellings);
  const known = new Map<string, Unit | undefined>();
  let withGeneral = knowsGeneralUnits();

  function word(text: string): Unit | undefined {
    const exact = spellings.get(text) ?? spellings.get(withoutDots(text));
    if (exact !== undefined) return exact;
    if (NEVER_GUESSED.has(text)) return undefined;
    return anyCase.get(withoutDots(text).toLowerCase());
  }

  function oneWord(text: string): Unit | undefined {
    return word(text) ?? generalUnit(text);
  }

  function piece(text: string): readonly Part[] | undefined {
    const whole = word(text);
    if (whole !== undefined) return partsOf(whole);
    const powered = /^(.+?)(?:\^(-?\d+(?:\.\d+)?)|(?<! )([23]))$/.exec(text);
    if (powered !== null) {
      const base = piece(powered[1] ?? '');
      const exponent = Number(powered[2] ?? powered[3]);
      return base?.map((part) => ({ unit: part.unit, exponent: part.exponent * exponent }));
    }
    const areaOrVolume = /^(square|sq|cubic|cu)\.?\s*(.+)$/i.exec(text);
    const side = areaOrVolume === null ? undefined : oneWord(areaOrVolume[2] ?? '');
    if (side === undefined || !sameDimension(side.dimension, LENGTH)) {
      const general = generalUnit(text);
      return general && partsOf(general);
    }
    const exponent = areaOrVolume?.[1]?.toLowerCase().startsWith('s') ? 2 : 3;
    return partsOf(side).map((part) => ({ unit: part.unit, exponent }));
  }

  function read(symbol: string): Unit | undefined {
    const text = tidied(symbol);
    if (text === '') return ONE;
    const whole = word(text);
    if (whole !== undefined) return whole;
    if (/^[*/]/.test(text)) return undefined;
    const parts: Part[] = [];
    for (const { text: one, sign } of factors(text.replace(/^1\//, '/'))) {
      const found = piece(one);
      if (found === undefined) return undefined;
      parts.push(...found.map((part) => ({ unit: part.unit, exponent: part.exponent * sign })));
    }
    return unitOfParts(parts);
  }

  function find(symbol: string): Unit | undefined {
    if (symbol.length > LONGEST) return undefined;
    if (withGeneral !== knowsGeneralUnits()) {
      withGeneral = knowsGeneralUnits();
      known.clear();
    }
    if (!known.has(symbol)) known.set(symbol, read(symbol));
    return known.get(symbol);
  }

  function nearest(symbol: string): string | undefined {
    if (symbol.length > LONGEST) return undefined;
    if (REFUSALS.has(symbol)) return symbol === 'C' || symbol === 'F' ? `deg${symbol}` : undefined;
    let built = '';
    for (const { text, sign } of factors(tidied(symbol))) {
      const near = piece(text) === undefined ? nearestWord(text, spellings) : text;
      if (near === undefined) return undefined;
      built += `${built === '' ? '' : sign === 1 ? '*' : '/'}${near}`;
    }
    return built === '' || find(built) === undefined ? undefined : built;
  }

  return {
    find,
    nearest,
    refusal: (symbol) => REFUSALS.get(symbol) ?? REFUSALS.get(symbol.toLowerCase()),
    currency: options.currency,
    symbols: [...TABLE_SYMBOLS, CELSIUS_DAY.symbol, FAHRENHEIT_DAY.symbol, options.currency],
  };
}

function moneyWords(currency: string): readonly (readonly [string, Unit])[] {
  const unit: Atom = { symbol: currency, dimension: MONEY, numerator: 1, denominator: 1, offset: 0 };
  return ['money', currency, ...currencyOf(currency).signs].map((spelling) => [spelling, unit] as const);
}

/** Spellings in lower case with their unit, where all that read so agree. */
function ignoringCase(spellings: ReadonlyMap<string, Unit>): ReadonlyMap<string, Unit> {
  const found = new Map<string, Unit>();
  const split = new Set<string>();
  for (const [spelling, unit] of spellings) {
    const lower = spelling.toLowerCase();
    if (found.has(lower) && found.get(lower) !== unit) split.add(lower);
    found.set(lower, unit);
  }
  for (const lower of split) found.delete(lower);
  return found;
}

function tidied(symbol: string): string {
  return symbol
    .normalize('NFC')
    .replace(/²/g, '^2')
    .replace(/³/g, '^3')
    .replace(/[·⋅×]/g, '*')
    .replace(/\s+per\s+/g, '/')
    .replace(/\s+/g, ' ')
    .replace(/\s*([*/^])\s*/g, '$1')
    .trim();
}

function withoutDots(text: string): string {
  return text.replace(/([a-z])\./gi, '$1');
}

function factors(text: string): readonly { readonly text: string; readonly sign: 1 | -1 }[] {
  return [...text.matchAll(/([*/]?)([^*/]*)/g)]
    .filter((match) => match[0] !== '')
    .map((match) => ({ text: match[2] ?? '', sign: match[1] === '/' ? -1 : 1 }));
}

function nearestWord(text: string, spellings: ReadonlyMap<string, Unit>): string | undefined {
  const lower = text.toLowerCase();
  let best = lower.length <= 1 ? 0 : lower.length <= 4 ? 1 : 2;
  let found: Unit | undefined;
  for (const [spelling, unit] of spellings) {
    if (spelling.length < 2) continue;
    const apart = editDistance(lower, spelling.toLowerCase(), best);
    if (apart > best || (apart === best && found !== undefined)) continue;
    best = apart;
    found = unit;
  }
  return found?.symbol;
}

/** Letters to change, add, drop or swap with a neighbour to make one word of the other; above `most` where more. */
function editDistance(a: string, b: string, most: number): number {
  if (Math.abs(a.length - b.length) > most) return most + 1;
  let before: number[] = [];
  let last: number[] = Array.from({ length: b.length + 1 }, (_, at) => at);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = (last[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      const swap = swapped ? (before[j - 2] ?? 0) + 1 : Number.POSITIVE_INFINITY;
      next.push(Math.min(change, swap, (last[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    before = last;
    last = next;
  }
  return last[b.length] ?? most + 1;
}
