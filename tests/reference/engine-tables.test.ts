// Published tables and constants of the engine against a second transcription of them (tables/engine/*.csv), whole, so that
// a digit changed in either shows. What a model makes of them is checked elsewhere.

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { BULBING_BASE, BULBING_THERMAL_TIME } from '../../engine/agronomy/bulbing.ts';
import { CURING_CONDITIONS, SWEET_ONION_CURING_LOSS } from '../../engine/agronomy/curing.ts';
import { CIVIL_TWILIGHT_ZENITH, SUNRISE_ZENITH } from '../../engine/agronomy/day-length.ts';
import { THERMAL_TIMES_TO_EMERGENCE } from '../../engine/agronomy/emergence.ts';
import { GERMINATION_STANDARDS } from '../../engine/agronomy/germination-standards.ts';
import { GERMINATION_BY_TEMPERATURE, GERMINATION_TEMPERATURES } from '../../engine/agronomy/germination-table.ts';
import { ONION_SHAPE } from '../../engine/agronomy/grades.ts';
import { GROWTH_AFTER_LODGING, LODGED_TO_PULL } from '../../engine/agronomy/harvest.ts';
import {
  LEAF_GROWTH_BASE,
  LEAF_GROWTH_UPPER,
  onionDryWeight,
  onionLeafArea,
} from '../../engine/agronomy/leaf-growth.ts';
import { PROTEIN_PER_NITROGEN } from '../../engine/agronomy/nutrients.ts';
import { TYPE_BANDS } from '../../engine/agronomy/onion-types.ts';
import { STANDARD_TRAY } from '../../engine/agronomy/propagation-volume.ts';
import { DISEASE_CLEAR_YEARS } from '../../engine/agronomy/rotation.ts';
import { dryWeightShare, seedMoisture } from '../../engine/agronomy/seed-moisture.ts';
import { VIABILITY_CONSTANTS } from '../../engine/agronomy/seed-viability-constants.ts';
import { US_ONION_SIZES } from '../../engine/agronomy/size-bands.ts';
import { SQUARENESS_LOSS_AT_RANGE } from '../../engine/agronomy/yield-density.ts';

type Row = Readonly<Record<string, string>>;

const INCH = 0.0254;

function rowsOf(name: string): readonly Row[] {
  const text = readFileSync(join(import.meta.dirname, 'tables', 'engine', `${name}.csv`), 'utf8');
  const parsed = Papa.parse<Row>(text, { header: true, skipEmptyLines: true });
  expect(parsed.errors, name).toEqual([]);
  return parsed.data;
}

function numberAt(row: Row, header: string): number {
  const text = row[header] ?? '';
  return text === '' ? Number.NaN : Number(text);
}

describe('the germination table of Harrington and Minges', () => {
  it('has the days and the seedlings of every kind at every temperature, and no kind more', () => {
    const printed = rowsOf('germination-by-temperature');
    const held = GERMINATION_BY_TEMPERATURE.flatMap(({ kind, days, percent }) =>
      GERMINATION_TEMPERATURES.map((degC, at) => ({ kind, degC, days: days[at], percent: percent[at] })),
    );
    const typed = printed.map((row) => ({
      kind: row.kind,
      degC: numberAt(row, 'degC'),
      days: Number(row.days === '' ? Number.NaN : row.days),
      percent: numberAt(row, 'percent'),
    }));
    const order = (one: { kind: string | undefined; degC: number }) => `${one.kind} ${100 + one.degC}`;
    const sorted = <T extends { kind: string | undefined; degC: number }>(rows: readonly T[]) =>
      [...rows].sort((one, other) => order(one).localeCompare(order(other)));
    expect(sorted(held)).toEqual(sorted(typed.map((row) => ({ ...row, days: row.days }))));
  });
});

describe('germination standards of 7 CFR 201.31', () => {
  it('are those printed, kind by kind', () => {
    const printed = Object.fromEntries(
      rowsOf('federal-germination').map((row) => [row.kind, numberAt(row, 'percent') / 100]),
    );
    expect(GERMINATION_STANDARDS).toEqual(printed);
  });
});

describe('seed viability constants', () => {
  it('are those of the papers, each once', () => {
    const four = (one: readonly number[]) => one.join(' ');
    const held = VIABILITY_CONSTANTS.map(({ species, ke, cw, ch, cq }) => `${species}: ${four([ke, cw, ch, cq])}`);
    const printed = rowsOf('viability-constants').map(
      (row) =>
        `${(row.species ?? '').split(' (')[0]}: ${four(['KE', 'CW', 'CH', 'CQ'].map((header) => numberAt(row, header)))}`,
    );
    expect(held.filter((one) => !printed.includes(one))).toEqual([]);
    expect(new Set(held).size).toBe(held.length);
  });
});

describe('years clear of a disease', () => {
  it('are those of the University of Connecticut', () => {
    const held = DISEASE_CLEAR_YEARS.map(({ family, disease, years, most }) => [family, disease, years, most]);
    const printed = rowsOf('disease-years').map((row) => [
      row.family,
      row.disease,
      numberAt(row, 'years'),
      row.most === '' ? undefined : numberAt(row, 'most'),
    ]);
    expect(held).toEqual(printed);
  });
});

describe('bands in print', () => {
  const bands = (table: string) => rowsOf('bands').filter((row) => row.table === table);

  it('of onion types agree', () => {
    const held = TYPE_BANDS.map(({ type, from, to }) => [type, from, to]);
    expect(held).toEqual(bands('onion types').map((row) => [row.name, numberAt(row, 'from'), numberAt(row, 'to')]));
  });

  it('of onion sizes agree', () => {
    const sizes = bands('onion sizes');
    expect(US_ONION_SIZES.map(({ name }) => name)).toEqual(sizes.map(({ name }) => name));
    US_ONION_SIZES.forEach(({ from, to }, at) => {
      const row = sizes[at] ?? {};
      expect(from / INCH).toBeCloseTo(numberAt(row, 'from'), 9);
      if (row.to === '') expect(to).toBe(Number.POSITIVE_INFINITY);
      else expect(to / INCH).toBeCloseTo(numberAt(row, 'to'), 9);
    });
  });

  it('of curing agree', () => {
    const held = CURING_CONDITIONS.flatMap(({ crop, temperature, humidity, days }) => [
      [`${crop} temperature`, ...temperature],
      [`${crop} humidity`, ...humidity.map((share) => share * 100)],
      [`${crop} days`, ...days],
    ]);
    expect(held).toEqual(bands('curing').map((row) => [row.name, numberAt(row, 'from'), numberAt(row, 'to')]));
  });
});

const [GERMINATED, ROOTED] = THERMAL_TIMES_TO_EMERGENCE.filter(({ standing }) => standing === 'published');

const CONSTANTS: Readonly<Record<string, number>> = {
  'bulbing thermal time': BULBING_THERMAL_TIME,
  'bulbing base': BULBING_BASE,
  'leaf growth base': LEAF_GROWTH_BASE,
  'leaf growth ceiling': LEAF_GROWTH_UPPER,
  'sunrise zenith': SUNRISE_ZENITH,
  'civil twilight zenith': CIVIL_TWILIGHT_ZENITH,
  'protein per nitrogen': PROTEIN_PER_NITROGEN,
  'onion shape': ONION_SHAPE,
  'lodged to pull': LODGED_TO_PULL,
  'growth after lodging low': GROWTH_AFTER_LODGING.low,
  'growth after lodging high': GROWTH_AFTER_LODGING.high,
  'sweet onion curing loss early': SWEET_ONION_CURING_LOSS.early,
  'sweet onion curing loss optimal': SWEET_ONION_CURING_LOSS.optimal,
  'sweet onion curing loss late': SWEET_ONION_CURING_LOSS.late,
  'squareness loss at eight': SQUARENESS_LOSS_AT_RANGE,
  'onion germination base': GERMINATED?.base ?? Number.NaN,
  'onion germination thermal time': GERMINATED?.thermalTime ?? Number.NaN,
  'onion first roots base': ROOTED?.base ?? Number.NaN,
  'onion first roots thermal time': ROOTED?.thermalTime ?? Number.NaN,
  'tray length': STANDARD_TRAY.length / INCH,
  'tray width': STANDARD_TRAY.width / INCH,
};

describe('single constants', () => {
  const printed = rowsOf('constants');

  it('are all in the table, and the table holds no other', () => {
    expect(Object.keys(CONSTANTS).sort()).toEqual(printed.map((row) => row.constant ?? '').sort());
  });

  it.each(printed.map((row) => [row.constant ?? '', numberAt(row, 'value')] as const))('%s is %d', (name, value) => {
    expect(CONSTANTS[name]).toBeCloseTo(value, 6);
  });
});

describe('equations at worked points', () => {
  const answers: Readonly<Record<string, (at: readonly number[]) => number>> = {
    'leaf area': ([degreeDays = Number.NaN]) => onionLeafArea(degreeDays),
    'leaf mass': ([degreeDays = Number.NaN]) => onionDryWeight(degreeDays),
    'seed moisture': ([humidity = Number.NaN, temperature = Number.NaN, oil = Number.NaN]) =>
      100 * dryWeightShare(seedMoisture(humidity / 100, temperature, oil / 100)),
  };

  it.each(rowsOf('equations').map((row) => [row.equation ?? '', row.at ?? '', numberAt(row, 'value')] as const))(
    '%s at %s is %d',
    (equation, at, value) => {
      const answer = answers[equation]?.(at.split(' ').map(Number)) ?? Number.NaN;
      expect(Math.abs(answer / value - 1)).toBeLessThan(1e-6);
    },
  );
});
