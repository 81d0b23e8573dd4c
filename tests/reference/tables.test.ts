// The crop library against a second transcription of the tables it is taken from (tables/*.csv, typed from the publications
// in their own units), whole: every published figure has its row there, every row its figure, and a digit changed in
// either shows.

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import type { Figure } from '../../sheets-templates/library/figure.ts';
import { LIBRARY } from '../../sheets-templates/library/library.ts';
import { canonical, cropOf, figureOf, found, typeOf } from '../sheets/library-figures.ts';

type Row = Readonly<Record<string, string>>;

const FOLDER = join(import.meta.dirname, 'tables');

function tableOf(file: string): readonly Row[] {
  const parsed = Papa.parse<Row>(readFileSync(join(FOLDER, file), 'utf8'), { header: true, skipEmptyLines: true });
  expect(parsed.errors, file).toEqual([]);
  return parsed.data;
}

function textOf(row: Row, header: string): string {
  return found(row[header], header);
}

/** Tables of their own form, compared below. */
const OWN_FORM = ['yields.csv', 'emergence-days.csv'];
const FIGURE_TABLES = readdirSync(FOLDER).filter((file) => file.endsWith('.csv') && !OWN_FORM.includes(file));

function isPublished({ source }: Figure): boolean {
  return source.cite !== 'memory' && source.cite !== 'common practice';
}

function figureAt(row: Row): Figure {
  const column = textOf(row, 'column');
  const entries = Object.entries(cropOf(textOf(row, 'crop')).figures);
  return found(entries.find(([name]) => name === column)?.[1], `${row.crop} ${column}`);
}

/** Half of the last digit that the library writes, in the column's own canonical unit: 0.05 degC for 4.4 degC. */
function halfOfLastDigit(text: string, column: string): number {
  const digits = found(/^-?\d+(\.\d+)?/.exec(text)?.[0], text);
  const step = 10 ** -(digits.split('.')[1]?.length ?? 0);
  const rest = text.slice(digits.length);
  const type = typeOf(column);
  return Math.abs(canonical(`${Number(digits) + step}${rest}`, type) - canonical(text, type)) / 2;
}

function same(text: string, printed: string, column: string): boolean {
  const difference = Math.abs(canonical(text, typeOf(column)) - canonical(printed, typeOf(column)));
  return difference <= halfOfLastDigit(text, column) * 1.000001;
}

/** What a printed range may stand as: its middle, or that rounded to the unit. */
function middles(low: number, high: number): readonly string[] {
  const middle = (low + high) / 2;
  return [...new Set([`${Number(middle.toFixed(6))}`, `${Math.round(middle)}`])];
}

/** What of a row and its figure in the library does not agree, a sentence each. */
function faultsOf(row: Row): readonly string[] {
  const column = textOf(row, 'column');
  const where = `${row.crop}, ${column} (${textOf(row, 'source').slice(0, 60)})`;
  const figure = figureAt(row);
  const [low, value, high, unit] = [textOf(row, 'low'), textOf(row, 'value'), textOf(row, 'high'), textOf(row, 'unit')];
  const withUnit = (number: string) => `${number}${unit === '%' || unit === '' ? unit : ` ${unit}`}`;
  const faults: string[] = isPublished(figure) ? [] : [`${where}: the library recalls it`];
  if (typeOf(column).type === 'text') {
    return figure.text === value ? faults : [...faults, `${where}: ${figure.text} for ${value}`];
  }
  const allowed = (value === '' ? middles(Number(low), Number(high)) : [value]).map(withUnit);
  if (!allowed.some((printed) => same(figure.text, printed, column)))
    faults.push(`${where}: ${figure.text} for ${allowed.join(' or ')}`);
  const ends = [
    [figure.range?.low, low === '' ? value : low],
    [figure.range?.high, high === '' ? value : high],
  ] as const;
  for (const [text, printed] of ends)
    if (text !== undefined && !same(text, withUnit(printed), column))
      faults.push(`${where}: end ${text} for ${withUnit(printed)}`);
  return faults;
}

describe.each(FIGURE_TABLES)('%s', (file) => {
  it('agrees with the library row by row', () => {
    expect(tableOf(file).flatMap(faultsOf)).toEqual([]);
  });

  it('names each figure once', () => {
    const names = tableOf(file).map((row) => `${row.crop}, ${row.column}`);
    expect(names.filter((name, at) => names.indexOf(name) !== at)).toEqual([]);
  });
});

describe('the tables together', () => {
  it('hold every published figure of the library', () => {
    const held = new Set(
      [...FIGURE_TABLES, 'yields.csv', 'emergence-days.csv'].flatMap((file) =>
        tableOf(file).map((row) => `${row.crop}, ${row.column ?? file}`),
      ),
    );
    const has = (crop: string, column: string) =>
      held.has(`${crop}, ${column}`) ||
      (column.startsWith('Yield') && held.has(`${crop}, yields.csv`)) ||
      (column.startsWith('Emergence') && held.has(`${crop}, emergence-days.csv`));
    const missing = LIBRARY.flatMap((crop) =>
      Object.entries(crop.figures)
        .filter(([column, figure]) => isPublished(figure) && typeOf(column).type !== 'text' && !has(crop.name, column))
        .map(([column, figure]) => `${crop.name}, ${column}: ${figure.text} (${figure.source.cite})`),
    ).filter((name) => !BY_WORD.some((column) => name.includes(`, ${column}: `)));
    expect(missing).toEqual(KEPT_APART);
  });
});

/** What a source says in words, not figures. */
const BY_WORD = ['Bolting trigger'];

/** Published figures with a comparison of their own elsewhere: yields of trials and curing losses. */
const KEPT_APART: readonly string[] = [];

describe('emergence-days.csv', () => {
  const rows = tableOf('emergence-days.csv');
  const names = [...new Set(rows.map((row) => textOf(row, 'crop')))];

  it.each(names)('gives the emergence of %s by least squares on the reciprocals of its days', (name) => {
    const own = rows
      .filter((row) => row.crop === name)
      .map((row) => ({ warmth: Number(row.degC), rate: 1 / Number(row.days) }));
    const mean = (of: (one: (typeof own)[number]) => number) => own.reduce((sum, one) => sum + of(one), 0) / own.length;
    const [warmth, rate] = [mean((one) => one.warmth), mean((one) => one.rate)];
    const slope =
      own.reduce((sum, one) => sum + (one.warmth - warmth) * (one.rate - rate), 0) /
      own.reduce((sum, one) => sum + (one.warmth - warmth) ** 2, 0);
    const thermal = found(cropOf(name).figures['Emergence thermal time'], name);
    const decimals = thermal.text.includes('.') ? 1 : 0;
    expect(figureOf(name, 'Emergence thermal time', 'degC day')).toBeCloseTo(1 / slope, decimals);
    const base = found(cropOf(name).figures['Emergence base'], name);
    if (base.source.cite.startsWith('least squares'))
      expect(Math.abs(figureOf(name, 'Emergence base', 'degC') - (warmth - rate / slope))).toBeLessThan(0.051);
  });
});

const ACRE = 4046.8564224;
const POUND = 0.45359237;
const SHORT_TON = 2000;
const FOOT = 0.3048;
const INCH = 0.0254;
/** Share of a field that beds 30 in wide with paths of 16 in are. */
const BED_SHARE = 0.65;
const BED_WIDTH = 30 * INCH;

/** Yield of bed, kg/m2, of a printed one: by the acre of field, or by the row of a garden. */
function bedYield(printed: number, unit: string): number {
  if (unit === 'lb/acre') return (printed * POUND) / ACRE / BED_SHARE;
  if (unit === 'short ton/acre') return (printed * SHORT_TON * POUND) / ACRE / BED_SHARE;
  const onBed = /^lb\/100 ft x (\d) rows$/.exec(unit);
  if (onBed !== null) return (printed * POUND * Number(onBed[1])) / (100 * FOOT * BED_WIDTH);
  const garden = /^lb\/10 ft, rows (\d+) in$/.exec(unit);
  if (garden !== null) return (printed * POUND) / (10 * FOOT * Number(garden[1]) * INCH);
  const stalks = /^stalks of ([\d.]+) kg\/100 ft x (\d) rows$/.exec(unit);
  if (stalks !== null) return (printed * Number(stalks[1]) * Number(stalks[2])) / (100 * FOOT * BED_WIDTH);
  if (unit === 'kg/m2') return printed;
  throw new Error(`no yield is reckoned by ${unit}`);
}

describe('yields.csv', () => {
  const rows = tableOf('yields.csv');
  const names = [...new Set(rows.map((row) => textOf(row, 'crop')))];

  // A library yield is one of the printed ones, or the middle of those of two guides, rounded to a tenth.
  it.each(names)('gives the yields of %s in print, turned into yields of bed', (name) => {
    const own = rows.filter((row) => row.crop === name);
    const { figures } = cropOf(name);
    const columns = Object.entries(figures).filter(([column, one]) => column.startsWith('Yield') && isPublished(one));
    for (const [column, one] of columns) {
      const texts = one.range === undefined ? [one.text] : [one.range.low, one.text, one.range.high];
      for (const text of texts) {
        const printed = own.flatMap((row) =>
          ['low', 'good', 'excellent'].flatMap((end) =>
            textOf(row, end) === '' ? [] : [bedYield(Number(row[end]), textOf(row, 'unit'))],
          ),
        );
        const between = printed.flatMap((first) => printed.map((second) => (first + second) / 2));
        const value = canonical(text, typeOf(column));
        const nearest = Math.min(...between.map((one) => Math.abs(one - value)));
        if (TRIALS.includes(`${name}, ${column}, ${text}`)) continue;
        expect(nearest, `${name}, ${column}: ${text}`).toBeLessThanOrEqual(halfOfLastDigit(text, column) * 1.000001);
      }
    }
  });
});

/** Yields of single trials: 4.9 and 8.48 kg a tomato plant at 2.62 per m2; kale to the crown, 5.57 kg/m2 in four cuts. */
const TRIALS: readonly string[] = [
  'Tomato, Yield, 12.9 kg/m2',
  'Tomato, Yield high, 22.2 kg/m2',
  'Kale, Yield high, 5.6 kg/m2',
];
