// The crop library against itself, against the columns of the Crops sheet and against the sheets as they open. What it
// takes from print is compared in tests/reference/tables.test.ts.

import { describe, expect, it } from 'vitest';
import { squarenessFactor, standPlantMass } from '../../engine/agronomy/yield-density.ts';
import { toCanonical } from '../../engine/units/unit.ts';
import { cropsSheet } from '../../sheets-templates/crops.ts';
import type { FigureColumn } from '../../sheets-templates/library/columns.ts';
import type { Crop } from '../../sheets-templates/library/figure.ts';
import { figureSources, LIBRARY, libraryRows } from '../../sheets-templates/library/library.ts';
import * as standings from '../../sheets-templates/library/source.ts';
import * as keeping from '../../sheets-templates/library/sources-keeping.ts';
import * as seasons from '../../sheets-templates/library/sources-season.ts';
import * as seeds from '../../sheets-templates/library/sources-seeds.ts';
import * as space from '../../sheets-templates/library/sources-space.ts';
import { WORK_RATES } from '../../sheets-templates/library/work-rates.ts';
import { canonical, cropOf, figure, found, read, unitOfColumn } from './library-figures.ts';
import { errorsOf, seasonOf } from './season.ts';

/** Cut flowers are sold by the stem: they have no yield by weight. */
const FLOWERS = ['Sunflower, cut', 'Zinnia', 'Snapdragon', 'Cosmos', 'Lisianthus', 'Statice'];
const FOOD = LIBRARY.filter(({ name }) => !FLOWERS.includes(name));

function density(crop: Crop): number {
  const rows = found(figure(crop, 'Rows per bed', ''), 'Rows per bed');
  const across = 0.762 * (figure(crop, 'Beds across', '') ?? 1);
  return rows / (across * found(figure(crop, 'In-row spacing', 'm'), 'In-row spacing'));
}

describe('what the library holds', () => {
  it('has 85 crops or more, each named once and under an id of its own', () => {
    expect(LIBRARY.length).toBeGreaterThanOrEqual(85);
    expect(new Set(LIBRARY.map(({ name }) => name)).size).toBe(LIBRARY.length);
    expect(new Set(LIBRARY.map(({ id }) => id)).size).toBe(LIBRARY.length);
    for (const { id } of LIBRARY) expect(id).toMatch(/^[a-z]+(-[a-z]+)*$/);
  });

  it('fills columns of the Crops sheet only, and leaves none of its entered ones empty in every row', () => {
    const filled = new Set(libraryRows().flatMap((row) => Object.keys(row)));
    // A farm's own figures are taken over from its records.
    const entered = cropsSheet.columns
      .filter(({ id, role }) => role === 'entered' && !id.startsWith('own-'))
      .map(({ name }) => name);
    const all = new Set(cropsSheet.columns.map(({ name }) => name));
    expect([...filled].filter((name) => !all.has(name))).toEqual([]);
    expect(entered.filter((name) => !filled.has(name))).toEqual([]);
  });

  it('gives what every crop needs to be planned', () => {
    const always: readonly FigureColumn[] = [
      'Family',
      'Also called',
      'Usual start',
      'Frost limit',
      'Growth minimum',
      'Growth best from',
      'Growth best to',
      'Growth maximum',
      'Degree-day base',
      'In-row spacing',
      'Rows per bed',
      'Harvest window',
      'Harvest unit',
      'Picking',
      'Weeding',
    ];
    const food: readonly FigureColumn[] = [
      'Unit mass',
      'Yield',
      'Storage temperature',
      'Storage humidity',
      'Storage life',
    ];
    const bare = (crop: Crop, needed: readonly FigureColumn[]) =>
      needed.filter((column) => crop.figures[column] === undefined);
    for (const crop of LIBRARY) expect(bare(crop, always), crop.name).toEqual([]);
    for (const crop of FOOD)
      expect(
        bare(crop, food).filter((column) => column !== 'Unit mass' || !['Claytonia'].includes(crop.name)),
        crop.name,
      ).toEqual([]);
  });

  it('gives days to maturity for the way a crop is usually started', () => {
    for (const crop of LIBRARY) {
      const start = found(crop.figures['Usual start'], 'Usual start').text;
      const either =
        start === 'direct seed' || start === 'sets'
          ? (crop.figures['Days to maturity direct'] ?? crop.figures['Days to maturity'])
          : crop.figures['Days to maturity'];
      expect(either, crop.name).toBeDefined();
      if (start === 'blocks' || start === 'cells')
        expect(crop.figures['Weeks in propagation'], crop.name).toBeDefined();
    }
  });

  it('asks no seed of garlic and the other crops planted in pieces', () => {
    for (const name of ['Garlic', 'Potato', 'Sweet potato', 'Ginger, young', 'Sunchoke', 'Strawberry'])
      expect(cropOf(name).figures['Planted piece'], name).toBeDefined();
    for (const name of ['Garlic', 'Potato', 'Sweet potato'])
      expect(cropOf(name).figures['Germination standard'], name).toBeUndefined();
  });
});

describe('what each figure says of itself', () => {
  it('has a citation kept in sources-*.ts, or says memory or common practice', () => {
    const cites = [seeds, seasons, space, keeping, standings]
      .flatMap((file) => Object.values(file))
      .flatMap((one) => (typeof one === 'object' && 'cite' in one ? [one.cite] : []))
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
    const shallot = figureSources('Shallot').find(({ column }) => column === 'Bolting cold');
    expect(shallot).toEqual({ column: 'Bolting cold', text: '15 degC', source: 'memory', note: 'as for onion' });
    expect(figureSources('Turnip greens')).toEqual([]);
  });

  it('reads as a number with a unit of its column, within the limits of the column and its own range', () => {
    for (const crop of LIBRARY)
      for (const column of cropsSheet.columns) {
        const entry = Object.entries(crop.figures).find(([name]) => name === column.name)?.[1];
        if (entry === undefined) continue;
        const { type } = column;
        const where = `${crop.name}, ${column.name}: ${entry.text}`;
        if (type.type === 'link')
          expect(
            WORK_RATES.map(({ work }) => work),
            where,
          ).toContain(entry.text);
        else if (type.type === 'text' || type.type === 'choice') expect(read(entry.text, type), where).toBe(entry.text);
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
  it('orders temperatures, yields, lives and bolting figures', () => {
    const orders: readonly (readonly [unit: string, columns: readonly FigureColumn[]])[] = [
      ['degC', ['Germination minimum', 'Germination best from', 'Germination best to', 'Germination maximum']],
      ['degC', ['Growth minimum', 'Growth best from', 'Growth best to', 'Growth maximum']],
      ['degC', ['Bolting cold base', 'Bolting cold best from', 'Bolting cold best to', 'Bolting cold']],
      ['degC', ['Degree-day base', 'Degree-day ceiling']],
      ['day', ['Bolting cold days', 'Bolting cold days most']],
      ['kg/m2', ['Yield low', 'Yield', 'Yield high']],
      ['plants/m2', ['Density least', 'Density most']],
      ['degC', ['Frost limit', 'Frost limit young']],
    ];
    for (const crop of LIBRARY)
      for (const [unit, columns] of orders) {
        const values = columns.flatMap((column) => figure(crop, column, unit) ?? []);
        expect(
          [...values].sort((one, other) => one - other),
          `${crop.name}, ${columns[0]}`,
        ).toEqual(values);
      }
  });

  it('keeps every share of a crowding trial inside the densities of that trial', () => {
    for (const crop of LIBRARY) {
      const [least, most] = [figure(crop, 'Density least', 'plants/m2'), figure(crop, 'Density most', 'plants/m2')];
      if (least === undefined || most === undefined) continue;
      expect(density(crop) * 1.5, crop.name).toBeGreaterThan(least);
      expect(density(crop) / 1.5, crop.name).toBeLessThan(most);
    }
  });

  it('stands at sane densities: below one large vine to above a thousand baby leaves per m2', () => {
    for (const crop of LIBRARY) {
      expect(density(crop), crop.name).toBeGreaterThan(0.5);
      expect(density(crop), crop.name).toBeLessThan(1500);
    }
    expect(density(cropOf('Watermelon'))).toBeLessThan(1);
    expect(density(cropOf('Salad mix, baby leaf'))).toBeGreaterThan(1000);
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

describe('the Crops sheet as it opens', () => {
  const book = seasonOf({});
  const number = (crop: Crop, column: string) =>
    found(book.number('Crops', crop.name, column), `${crop.name} ${column}`);

  it('has no cell in error', () => {
    expect(errorsOf(book.book)).toEqual([]);
  });

  // Columns are shown in US units: oz, lb/ft2, plants/ft2 and inches. The masses are compared in those.
  it('gives the likely yield at the usual spacing, within one per cent', () => {
    for (const crop of FOOD) {
      const plants = number(crop, 'Usual density');
      const between = number(crop, 'Row spacing');
      const within = found(figure(crop, 'In-row spacing', 'in'), 'In-row spacing');
      const ounces = standPlantMass({
        density: plants,
        isolated: number(crop, 'Isolated plant mass'),
        ceiling: number(crop, 'Ceiling yield') * 16,
        rectangularity: Math.max(between / within, within / between),
        squarenessLoss: number(crop, 'Squareness loss') / 100,
      });
      const sold = ((plants * ounces) / 16) * (number(crop, 'Marketable share') / 100);
      expect(sold / number(crop, 'Yield'), crop.name).toBeGreaterThan(0.99);
      expect(sold / number(crop, 'Yield'), crop.name).toBeLessThan(1.01);
    }
  });

  it('follows a yield that the grower sets', () => {
    const own = seasonOf({ Crops: [{ Crop: 'Carrot', Yield: '2 kg/m2' }] });
    const before = number(cropOf('Carrot'), 'Ceiling yield');
    const factor = 2 / found(figure(cropOf('Carrot'), 'Yield', 'kg/m2'), 'Yield');
    expect(found(own.number('Crops', 'Carrot', 'Ceiling yield'), 'Ceiling yield') / before).toBeCloseTo(factor, 6);
  });

  it('loses nothing to rows far apart where trials found none', () => {
    expect(number(cropOf('Carrot'), 'Squareness loss')).toBe(0);
    expect(1 - number(cropOf('Onion, bulb'), 'Squareness loss') / 100).toBeCloseTo(squarenessFactor(8), 9);
  });

  it('names the hardiness that the frost limit gives', () => {
    for (const crop of LIBRARY) {
      const limit = found(figure(crop, 'Frost limit', 'degC'), 'Frost limit');
      const word = limit > -1.5 ? 'tender' : limit > -5 ? 'half-hardy' : limit > -11 ? 'hardy' : 'very hardy';
      expect(book.value('Crops', crop.name, 'Hardiness'), `${crop.name} at ${limit} C`).toBe(word);
    }
  });

  it('takes a germination above the legal least, and never below it', () => {
    for (const crop of LIBRARY) {
      const least = book.number('Crops', crop.name, 'Germination standard');
      const likely = book.number('Crops', crop.name, 'Typical germination');
      if (least === undefined || likely === undefined) continue;
      expect(likely, crop.name).toBeGreaterThan(least);
      expect(found(book.number('Crops', crop.name, 'Typical germination low'), 'low')).toBeLessThanOrEqual(likely);
      expect(found(book.number('Crops', crop.name, 'Typical germination high'), 'high')).toBeGreaterThanOrEqual(likely);
    }
    expect(book.number('Crops', 'Carrot', 'Typical germination')).toBe(93);
  });

  it('works out rates of picking from the pieces of an hour or from their weight, low to high', () => {
    for (const crop of FOOD) {
      const rates = ['Picking rate low', 'Picking rate', 'Picking rate high'].map((column) =>
        book.number('Crops', crop.name, column),
      );
      if (crop.figures['Unit mass'] === undefined) continue;
      expect(
        rates.every((rate) => rate !== undefined && rate > 0),
        crop.name,
      ).toBe(true);
      expect(rates, crop.name).toEqual([...rates].sort((one, other) => (one ?? 0) - (other ?? 0)));
    }
    const kale = found(book.number('Crops', 'Kale', 'Picking rate'), 'Kale');
    expect(kale).toBeCloseTo((60 * found(figure(cropOf('Kale'), 'Unit mass', 'kg'), 'Unit mass')) / 0.45359237, 6);
  });
});
