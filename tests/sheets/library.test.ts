// The crop library against the publications it cites, against itself, and against the columns of the Crops sheet.

import { describe, expect, it } from 'vitest';
import type { TypeDeclaration } from '../../engine/schema/declaration.ts';
import { toCanonical, type Unit } from '../../engine/units/unit.ts';
import { createVocabulary } from '../../engine/units/vocabulary.ts';
import { readEntry } from '../../engine/values/entry.ts';
import type { ValueType } from '../../engine/values/type.ts';
import { cropsSheet } from '../../sheets-templates/crops.ts';
import type { Crop, FigureColumn } from '../../sheets-templates/library/figure.ts';
import { figureSources, LIBRARY, libraryRows } from '../../sheets-templates/library/library.ts';
import * as sources from '../../sheets-templates/library/sources.ts';
import * as published from './published-tables.ts';

const vocabulary = createVocabulary({ currency: 'USD' });

function found<T>(value: T | undefined, what: string): T {
  if (value === undefined) throw new Error(`${what} is missing`);
  return value;
}

function cropOf(name: string): Crop {
  return found(
    LIBRARY.find((crop) => crop.name === name),
    name,
  );
}

function typeOf(column: string): TypeDeclaration {
  return found(
    cropsSheet.columns.find(({ name }) => name === column),
    column,
  ).type;
}

function unitOf(symbol: string): Unit {
  return found(vocabulary.find(symbol), `unit ${symbol}`);
}

/** The unit that a bare number of the column is read in. */
function unitOfColumn(type: TypeDeclaration, units: 'us' | 'si'): Unit {
  if (type.type === 'number') return unitOf(type.unit[units]);
  return unitOf(units === 'us' ? 'degF' : 'degC');
}

/** The column's type in a workbook of US customary or of SI units. */
function valueType(type: TypeDeclaration, units: 'us' | 'si'): ValueType {
  if (type.type === 'choice') return { kind: 'choice', options: type.options };
  if (type.type === 'temperature') return { kind: 'temperature', unit: unitOfColumn(type, units) };
  if (type.type !== 'number') return { kind: 'text' };
  const unit = unitOfColumn(type, units);
  return { kind: 'number', dimension: unit.dimension, unit };
}

/** What the workbook makes of a typed figure: the same value in US customary and in SI units. */
function read(text: string, type: TypeDeclaration): string | number {
  const [inUs, inSi] = (['us', 'si'] as const).map((units) => {
    const entry = readEntry(text, valueType(type, units), { vocabulary, year: 2027 });
    if (!entry.ok) throw new Error(entry.why);
    return entry.value;
  });
  expect(inUs, text).toBe(inSi);
  if (typeof inSi !== 'number' && typeof inSi !== 'string') throw new Error(`${text} is neither number nor text`);
  return inSi;
}

/** A typed figure, '8 in' or '340', as its canonical number (m, kg, day, K, 1). */
function canonical(text: string, type: TypeDeclaration): number {
  const value = read(text, type);
  if (typeof value !== 'number') throw new Error(`${text} is no number`);
  return value;
}

function inUnit(value: number, unit: Unit): number {
  return ((value - unit.offset) * unit.denominator) / unit.numerator;
}

/** The figure of a crop in a unit; undefined where the library leaves it blank. */
function figure(crop: Crop, column: FigureColumn, symbol: string): number | undefined {
  const text = crop.figures[column]?.text;
  if (text === undefined) return undefined;
  return inUnit(canonical(text, typeOf(column)), unitOf(symbol));
}

function figureOf(name: string, column: FigureColumn, symbol: string): number {
  return found(figure(cropOf(name), column, symbol), `${name} ${column}`);
}

/** The lowest and highest of a figure; the figure twice where it has no range. */
function bandOf(name: string, column: FigureColumn, symbol: string): readonly [number, number] {
  const { text, range } = found(cropOf(name).figures[column], `${name} ${column}`);
  const unit = unitOf(symbol);
  return [
    inUnit(canonical(range?.low ?? text, typeOf(column)), unit),
    inUnit(canonical(range?.high ?? text, typeOf(column)), unit),
  ];
}

/** Plants per m2 at the usual single spacing. */
function usualDensity(crop: Crop): number {
  const across = found(figure(crop, 'Row spacing', 'm'), 'Row spacing');
  return 1 / (across * found(figure(crop, 'In-row spacing', 'm'), 'In-row spacing'));
}

describe('what the library holds', () => {
  it('has 49 crops, each named once', () => {
    expect(LIBRARY).toHaveLength(49);
    expect(new Set(LIBRARY.map(({ name }) => name)).size).toBe(49);
  });

  it('fills columns of the Crops sheet only, and leaves none of them empty in every row', () => {
    const filled = new Set(libraryRows().flatMap((row) => Object.keys(row)));
    expect([...filled].sort()).toEqual(cropsSheet.columns.map(({ name }) => name).sort());
  });

  it('gives what every crop needs to be planned', () => {
    const needed: readonly FigureColumn[] = [
      'Family',
      'Usual start',
      'Germination minimum',
      'Germination best from',
      'Germination best to',
      'Germination maximum',
      'Seeding depth',
      'Hardiness',
      'Frost limit',
      'Degree-day base',
      'In-row spacing',
      'Row spacing',
      'Rows per bed',
      'Isolated plant mass',
      'Ceiling yield',
      'Squareness loss',
      'Harvest window',
      'Harvest unit',
      'Unit mass',
      'Yield',
      'Yield low',
      'Yield high',
      'Marketable share',
      'Storage temperature',
      'Storage humidity',
      'Storage life',
      'Rotation years',
      'Nitrogen removal',
      'Phosphorus removal',
      'Potassium removal',
      'Crop coefficient initial',
      'Crop coefficient mid',
      'Crop coefficient end',
      'Initial stage',
      'Late stage',
    ];
    for (const crop of LIBRARY) {
      const missing = needed.filter((column) => crop.figures[column] === undefined);
      expect(missing, crop.name).toEqual([]);
    }
  });

  it('gives days to maturity for every way a crop is usually started', () => {
    for (const crop of LIBRARY) {
      const start = found(crop.figures['Usual start'], 'Usual start').text;
      const column = start === 'direct seed' || start === 'sets' ? 'Days to maturity direct' : 'Days to maturity';
      const either = crop.figures[column];
      expect(either, `${crop.name} ${column}`).toBeDefined();
      if (start === 'blocks' || start === 'cells') {
        expect(crop.figures['Weeks in propagation'], crop.name).toBeDefined();
        expect(crop.figures['Usual seeds per block'], crop.name).toBeDefined();
      }
    }
  });
});

describe('what each figure says of itself', () => {
  it('has a citation kept in sources.ts, or says memory or common practice', () => {
    const cites = Object.values(sources)
      .flatMap((one) => ('cite' in one ? [one.cite] : []))
      .sort((one, other) => other.length - one.length);
    for (const crop of LIBRARY)
      for (const { column, source, note } of figureSources(crop.name)) {
        const rest = cites.reduce((left, cite) => left.replace(cite, ''), source);
        expect(source, `${crop.name} ${column}`).not.toBe('');
        expect(rest.replaceAll('; ', ''), `${crop.name} ${column}`).toBe('');
        if (note !== '') expect(source, `${crop.name} ${column}`).toBe('memory');
      }
  });

  it('is named once in the note of its row, under its source', () => {
    for (const row of libraryRows()) {
      const named = found(row.Sources, 'Sources')
        .split(' | ')
        .flatMap((part) => part.slice(0, part.indexOf(': ')).split(', '));
      const filled = Object.keys(row).filter((name) => !['Crop', 'Ranges', 'Doubts', 'Sources'].includes(name));
      expect([...named].sort(), row.Crop).toEqual([...filled].sort());
    }
  });

  it('takes no figure over from a relative without saying so', () => {
    const shallot = figureSources('Shallot');
    expect(shallot.find(({ column }) => column === 'Seed life')).toEqual({
      column: 'Seed life',
      text: '1',
      source: 'memory',
      note: 'as for onion',
    });
    expect(figureSources('Turnip greens')).toEqual([]);
  });

  it('reads as a number with a unit of its column, within the limits of the column and its own range', () => {
    for (const crop of LIBRARY)
      for (const column of cropsSheet.columns) {
        const entry = Object.entries(crop.figures).find(([name]) => name === column.name)?.[1];
        if (entry === undefined) continue;
        const { type } = column;
        const where = `${crop.name}, ${column.name}: ${entry.text}`;
        if (type.type === 'text' || type.type === 'choice') expect(read(entry.text, type), where).toBe(entry.text);
        else {
          const value = canonical(entry.text, type);
          const unit = unitOfColumn(type, 'si');
          if (column.least !== undefined) expect(value, where).toBeGreaterThanOrEqual(toCanonical(unit, column.least));
          if (column.most !== undefined) expect(value, where).toBeLessThanOrEqual(toCanonical(unit, column.most));
          if (entry.range === undefined) continue;
          const low = canonical(entry.range.low, type);
          const high = canonical(entry.range.high, type);
          expect(low, where).toBeLessThan(high);
          expect(value, where).toBeGreaterThanOrEqual(low);
          expect(value, where).toBeLessThanOrEqual(high);
        }
      }
  });
});

describe('figures that must agree with each other', () => {
  it('orders germination temperatures from coolest to warmest', () => {
    for (const crop of LIBRARY) {
      const four = (
        ['Germination minimum', 'Germination best from', 'Germination best to', 'Germination maximum'] as const
      ).map((column) => found(figure(crop, column, 'degC'), column));
      expect(
        [...four].sort((a, b) => a - b),
        crop.name,
      ).toEqual(four);
    }
  });

  it('puts the yield in the middle of low and high', () => {
    for (const crop of LIBRARY) {
      const [low, middle, high] = (['Yield low', 'Yield', 'Yield high'] as const).map((column) =>
        found(figure(crop, column, 'kg/m2'), column),
      );
      expect(found(low, 'low'), crop.name).toBeLessThan(found(high, 'high'));
      expect(found(middle, 'middle'), crop.name).toBeCloseTo((found(low, 'low') + found(high, 'high')) / 2, 9);
    }
  });

  it('names the hardiness that the frost limit gives', () => {
    for (const crop of LIBRARY) {
      const limit = found(figure(crop, 'Frost limit', 'degC'), 'Frost limit');
      const word = limit > -1.5 ? 'tender' : limit > -5 ? 'half-hardy' : limit > -11 ? 'hardy' : 'very hardy';
      expect(found(crop.figures.Hardiness, 'Hardiness').text, `${crop.name} at ${limit} C`).toBe(word);
    }
  });

  it('fits its rows on the bed or beds they cover', () => {
    for (const crop of LIBRARY) {
      const across = found(figure(crop, 'Row spacing', 'in'), 'Row spacing');
      const rowsPerBed = found(figure(crop, 'Rows per bed', ''), 'Rows per bed');
      const beds = found(figure(crop, 'Beds across', ''), 'Beds across');
      expect(across * rowsPerBed, crop.name).toBeCloseTo(30 * beds, 6);
    }
  });

  it('stands at sane densities: below one large vine to above a thousand baby leaves per m2', () => {
    for (const crop of LIBRARY) {
      expect(usualDensity(crop), crop.name).toBeGreaterThan(0.5);
      expect(usualDensity(crop), crop.name).toBeLessThan(1500);
    }
    expect(usualDensity(cropOf('Watermelon'))).toBeLessThan(1);
    expect(usualDensity(cropOf('Salad mix, baby leaf'))).toBeGreaterThan(1000);
  });

  it('gives by its crowding figures a marketable yield within the usual one at the usual spacing', () => {
    for (const crop of LIBRARY) {
      const density = usualDensity(crop);
      const between = found(figure(crop, 'Row spacing', 'm'), 'Row spacing');
      const within = found(figure(crop, 'In-row spacing', 'm'), 'In-row spacing');
      const isolated = found(figure(crop, 'Isolated plant mass', 'kg'), 'Isolated plant mass');
      const ceiling = found(figure(crop, 'Ceiling yield', 'kg/m2'), 'Ceiling yield');
      const loss = found(figure(crop, 'Squareness loss', ''), 'Squareness loss');
      const ratio = Math.min(8, Math.max(between / within, within / between));
      const squareness = 1 - (loss * Math.log(ratio)) / Math.log(8);
      const total = (density / (1 / isolated + density / ceiling)) * squareness;
      const marketable = total * found(figure(crop, 'Marketable share', ''), 'Marketable share');
      expect(marketable, crop.name).toBeGreaterThanOrEqual(found(figure(crop, 'Yield low', 'kg/m2'), 'low'));
      expect(marketable, crop.name).toBeLessThanOrEqual(found(figure(crop, 'Yield high', 'kg/m2'), 'high'));
    }
  });

  it('uses four viability constants or none', () => {
    for (const crop of LIBRARY) {
      const given = (['KE', 'CW', 'CH', 'CQ'] as const).filter((column) => crop.figures[column] !== undefined);
      expect([0, 4], crop.name).toContain(given.length);
    }
    for (const name of ['Eggplant', 'Arugula', 'Cabbage', 'Carrot', 'Leek', 'Garlic'])
      expect(cropOf(name).figures.KE, name).toBeUndefined();
  });
});

describe('published tables', () => {
  it('keeps the germination standards of 7 CFR 201.31', () => {
    const standards = new Map(published.FEDERAL_GERMINATION);
    let checked = 0;
    for (const crop of LIBRARY) {
      const entry = crop.figures['Germination standard'];
      if (entry === undefined || entry.source.cite === 'memory') continue;
      const kind = published.KIND_OF_CROP[crop.name] ?? crop.name;
      expect(entry.text, crop.name).toBe(`${found(standards.get(kind), kind)}%`);
      checked += 1;
    }
    expect(checked).toBeGreaterThanOrEqual(40);
  });

  it.each(Object.entries(published.SEED_LIFE))("keeps the seed life of Knott's Handbook for %s", (name, years) => {
    expect(figureOf(name, 'Seed life', '')).toBe(years);
    expect(found(cropOf(name).figures['Seed life'], name).source.cite).toContain("Knott's Handbook");
  });

  it.each(Object.entries(published.CROP_COEFFICIENTS))('keeps the crop coefficients of FAO-56 for %s', (name, kc) => {
    const columns = ['Crop coefficient initial', 'Crop coefficient mid', 'Crop coefficient end'] as const;
    expect(columns.map((column) => figureOf(name, column, ''))).toEqual(kc);
  });

  it.each(Object.entries(published.STAGE_TOTALS))('adds the stages of %s to the total FAO-56 prints', (name, total) => {
    const columns = ['Initial stage', 'Development stage', 'Mid-season stage', 'Late stage'] as const;
    expect(columns.reduce((sum, column) => sum + figureOf(name, column, 'day'), 0)).toBe(total);
  });

  it.each(Object.entries(published.NEW_ENGLAND_STORE))(
    'stores %s in the band of New England Table 16',
    (name, { degF, humidity }) => {
      const [coolest, warmest] = bandOf(name, 'Storage temperature', 'degF');
      expect(coolest).toBeLessThanOrEqual(degF[1] + 0.5);
      expect(warmest).toBeGreaterThanOrEqual(degF[0] - 0.5);
      const [driest, dampest] = bandOf(name, 'Storage humidity', '%');
      expect(driest).toBeLessThanOrEqual(humidity[1]);
      expect(dampest).toBeGreaterThanOrEqual(humidity[0]);
    },
  );

  it.each(Object.entries(published.HANDBOOK_66_STORE))(
    'stores %s as Handbook 66 of 1954 does',
    (name, { degF, humidity, weeks }) => {
      const columns = ['Storage temperature', 'Storage humidity', 'Storage life'] as const;
      const [warmth, damp, life] = columns.map((column, at) => figureOf(name, column, ['degF', '%', 'week'][at] ?? ''));
      expect(found(warmth, 'temperature')).toBeGreaterThanOrEqual(degF[0] - 0.5);
      expect(found(warmth, 'temperature')).toBeLessThanOrEqual(degF[1] + 0.5);
      expect(found(damp, 'humidity')).toBeGreaterThanOrEqual(humidity[0]);
      expect(found(damp, 'humidity')).toBeLessThanOrEqual(humidity[1]);
      expect(found(life, 'life')).toBeGreaterThanOrEqual(weeks[0]);
      expect(found(life, 'life')).toBeLessThanOrEqual(weeks[1]);
    },
  );

  it.each(Object.entries(published.NUTRIENTS))('removes what USDA finds in %s', (name, nutrients) => {
    const columns = ['Nitrogen removal', 'Phosphorus removal', 'Potassium removal'] as const;
    columns.forEach((column, at) => {
      expect(figureOf(name, column, 'kg/t')).toBeCloseTo(found(nutrients[at], column), 9);
    });
  });

  // Khokhar 2019, J. Hort. Sci. Biotechnol. 94: 703-717: 60 t/ha of bulbs removes 108 kg N, 21 kg P and 120 kg K.
  it('removes 108, 21 and 120 kg of N, P and K with 60 t of onions', () => {
    expect(figureOf('Onion, bulb', 'Nitrogen removal', 'kg/t') * 60).toBeCloseTo(108, 6);
    expect(figureOf('Onion, bulb', 'Phosphorus removal', 'kg/t') * 60).toBeCloseTo(21, 6);
    expect(figureOf('Onion, bulb', 'Potassium removal', 'kg/t') * 60).toBeCloseTo(120, 6);
  });

  it.each(Object.entries(published.TRANSPLANT_WEEKS))(
    'raises %s as long as Mid-Atlantic Table A-4 says',
    (name, weeks) => {
      expect(figureOf(name, 'Weeks in propagation', 'week')).toBeGreaterThanOrEqual(weeks[0]);
      expect(figureOf(name, 'Weeks in propagation', 'week')).toBeLessThanOrEqual(weeks[1]);
    },
  );

  it.each(Object.entries(published.EMERGENCE_DAYS))(
    'fits the emergence of %s to the days of Harrington & Minges by least squares on their reciprocals',
    (name, readings) => {
      const n = readings.length;
      const meanT = readings.reduce((sum, [t]) => sum + t, 0) / n;
      const meanRate = readings.reduce((sum, [, days]) => sum + 1 / days, 0) / n;
      const slope =
        readings.reduce((sum, [t, days]) => sum + (t - meanT) * (1 / days - meanRate), 0) /
        readings.reduce((sum, [t]) => sum + (t - meanT) ** 2, 0);
      expect(figureOf(name, 'Emergence base', 'degC')).toBeCloseTo(meanT - meanRate / slope, 1);
      expect(figureOf(name, 'Emergence thermal time', 'degC day')).toBeCloseTo(1 / slope, 0);
    },
  );

  // The residual standard deviation of ln mass in the fit is 8.5 %.
  it.each(published.PURNONG_ONIONS)('weighs onions at %d per m2 within three deviations of %d g', (density, grams) => {
    const isolated = figureOf('Onion, bulb', 'Isolated plant mass', 'g');
    const ceiling = figureOf('Onion, bulb', 'Ceiling yield', 'g/m2');
    const mass = 1 / (1 / isolated + density / ceiling);
    expect(Math.abs(Math.log(mass / grams))).toBeLessThan(3 * 0.085);
  });

  // USDA National Nutrient Database SR28, household weights: onion 2.5 in across 110 g, beet 2 in across 82 g.
  it.each([
    ['Onion, bulb', 2.5, 110],
    ['Beet', 2, 82],
  ] as const)('shapes %s so that %d in across weighs %d g', (name, inches, grams) => {
    expect((figureOf(name, 'Bulb shape factor', 'g/cm3') * (inches * 2.54) ** 3) / grams).toBeCloseTo(1, 2);
  });
});
