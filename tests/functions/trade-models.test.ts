// The trade's models as formulas: each published number through the whole way, from the text of a formula to the figure shown;
// what lies outside a model's range says so. The source stands beside each number.

import quantileNormal from '@stdlib/stats-base-dists-normal-quantile';
import { describe, expect, it } from 'vitest';
import { civilDay, isoDate } from '../../engine/index.ts';
import { numberOf, readTable, textOf } from '../reference/table.ts';
import { type Answer, answers, type Table, workedOut } from './formulas.ts';

const quantity = (unit: string): Table['columns'][string] => ({ type: 'number', unit: { us: unit, si: unit } });

const PLOTS: Table = {
  name: 'Weighed',
  key: undefined,
  columns: { Trial: { type: 'text' }, Density: quantity('plants/m2'), Mass: quantity('g') },
  rows: readTable('onion-density-trials').map((row) => [
    textOf(row, 'trial'),
    `${numberOf(row, 'density')} ${textOf(row, 'density_unit')}`,
    `${numberOf(row, 'mass_g')} g`,
  ]),
};

/** A year that stays at 15 degC. */
const STEADY: Table = {
  name: 'Steady',
  key: undefined,
  columns: { Day: { type: 'date' }, Mean: { type: 'temperature' } },
  rows: Array.from({ length: 365 }, (_, day) => [isoDate(civilDay(2027, 1, 1) + day), '15 degC']),
};

/** Ten last frosts set at the evenly spaced quantiles of a normal distribution, day 100 and 10 days. */
const FROSTS: Table = {
  name: 'Frosts',
  key: undefined,
  columns: { Last: { type: 'date' }, First: { type: 'date' }, Known: { type: 'yesno' } },
  rows: Array.from({ length: 9 }, (_, index) => {
    const away = Math.round(quantileNormal((index + 1) / 10, 0, 10));
    return [isoDate(civilDay(2027, 1, 1) + 99 + away), isoDate(civilDay(2027, 1, 1) + 299 + away), 'yes'];
  }),
};

/** South of the equator: last frosts of spring in September and October, first of autumn in April and May. */
const SOUTH: Table = {
  name: 'South',
  key: undefined,
  columns: { Last: { type: 'date' }, First: { type: 'date' }, Known: { type: 'yesno' } },
  rows: [
    ['2024-09-20', '2024-05-02', 'yes'],
    ['2025-10-04', '2025-04-21', 'yes'],
    ['2026-09-28', '2026-04-28', 'yes'],
  ],
};

const LOTS: Table = {
  name: 'Lots',
  key: undefined,
  columns: { Name: { type: 'text' }, Until: { type: 'date' }, Mass: quantity('kg') },
  rows: [
    ['keeper', '2028-03-01', '50'],
    ['early', '2027-11-01', '20'],
    ['sold', '2027-10-01', '0'],
    ['large', '2028-03-01', '80'],
  ],
};

const TABLES = [PLOTS, STEADY, FROSTS, SOUTH, LOTS];

function one(formula: string): Answer {
  const [answer] = answers([formula], TABLES);
  if (answer === undefined) throw new Error(formula);
  return answer;
}

function number(formula: string): number {
  const answer = one(formula);
  if (answer.is !== 'value' || typeof answer.value !== 'number')
    throw new Error(`${formula}: ${JSON.stringify(answer)}`);
  return answer.value;
}

function text(formula: string): string {
  const answer = one(formula);
  if (answer.is !== 'value' || typeof answer.value !== 'string')
    throw new Error(`${formula}: ${JSON.stringify(answer)}`);
  return answer.value;
}

const BEAN = '25 days; 25 days; 30 days; 20 days; 0.15; 1.19; 0.35';

/** Formula, published number in the unit shown, half of its last digit. */
const PUBLISHED: readonly (readonly [source: string, formula: string, gives: number, within: number])[] = [
  ['FAO-56 example 28', `CROPCOEFFICIENT(20 days; ${BEAN})`, 0.15, 0.005],
  ['FAO-56 example 28', `CROPCOEFFICIENT(40; ${BEAN})`, 0.77, 0.005],
  ['FAO-56 example 28', `CROPCOEFFICIENT(70 days; ${BEAN})`, 1.19, 0.005],
  ['FAO-56 example 28', `CROPCOEFFICIENT(95 days; ${BEAN})`, 0.56, 0.005],
  ['FAO-56 figure 36', `CROPWATER(4.2 mm/day; 30 days; 40 days; ${BEAN})`, 24, 0.6],
  ['FAO-56 figure 36', `CROPWATER(6 mm/day; 70 days; 80 days; ${BEAN})`, 71, 0.6],
  ['FAO-56 example 27', 'CLIMATECOEFFICIENT(1.2; 1.3 m/s; 75%; 2 m)', 1.07, 0.005],
  ['FAO-56 example 27', 'CLIMATECOEFFICIENT(1.2; 4.6 m/s; 44%; 200 cm)', 1.3, 0.006],
  ['FAO-56 box 15', 'CLIMATECOEFFICIENT(1.15; 2.2 m/s; 30%; 0.4 m)', 1.19, 0.005],
  ['FAO-56 example 36', 'AVAILABLEWATER(0.15; 0.06; 40 cm)', 36, 0.5],
  ['FAO-56 example 36', 'READILYAVAILABLE(AVAILABLEWATER(0.35; 0.23; 1.2 m); 0.55)', 79, 0.5],
  ['FAO-56 example 37', 'WATERSTRESS(67 mm; AVAILABLEWATER(0.32; 0.12; 0.8 m); 0.4) / 1%', 97, 0.6],
  ['Khokhar 2019', 'NUTRIENTREMOVED(60 t; 1.8 kg/t)', 108, 0.5],
  ['Khokhar 2019', 'NUTRIENTREMOVED(60 t; 0.35 kg/t)', 21, 0.5],
  ['Khokhar 2019', 'NUTRIENTREMOVED(60 t; 2 kg/t)', 120, 0.5],
  ['Oxide factors of fertiliser labels, P x 2.29', 'PHOSPHATE(1 kg)', 2.29, 0.005],
  ['Oxide factors of fertiliser labels, K x 1.20', 'POTASH(1 kg)', 1.2, 0.005],
  ['Maw & Mullinix 2005: optimal maturity 7.3 %', 'CUREDMASS(1000 kg; 7.3%)', 927, 1e-9],
  ['Msika & Jackson 1997: 3.3 % a month', 'STOREDMASS(927 kg; 3.3%; 6 * 30.436875 days)', 927 * 0.967 ** 6, 1e-9],
  ['University of Connecticut IPM: clubroot', 'DISEASEYEARS("Brassicaceae")', 7, 0],
  ['University of Connecticut IPM: clubroot', 'ROTATIONCLEAR(2024; DISEASEYEARS("Brassicaceae"))', 2032, 0],
  ['Harrington & Minges 1954', 'EMERGENCEAT("Onion, bulb"; 10 degC)', 13, 1e-9],
  ['Harrington & Minges 1954', 'EMERGENCEAT("Onion"; 68 degF)', 5, 1e-9],
  ['Harrington & Minges 1954', 'SEEDLINGSAT("Lettuce"; 30 degC) / 1%', 12, 1e-9],
  ['7 CFR 201.31', 'SEEDSTANDARD("Onion") / 1%', 70, 1e-9],
  ['7 CFR 201.31', 'SEEDSTANDARD("Carrot") / 1%', 55, 1e-9],
  ['Brewster 2008 eq 4.17a', 'LEAFAREA(0 degC day)', 0.5, 1e-12],
  ['Brewster 2008 eq 4.17a: ln area rises 0.0108 a degree-day', 'LN(LEAFAREA(500) / LEAFAREA(400))', 1.08, 1e-9],
  ['Brewster 2008 eq 4.17b: exp(-6.086)', 'ONIONDRYMASS(0 degC day)', 0.00227, 5e-6],
];

describe('published numbers as formulas', () => {
  const found = workedOut(
    PUBLISHED.map(([, formula]) => formula),
    TABLES,
  );
  for (const [source, formula, gives, within] of PUBLISHED) {
    it(`${source}: ${formula}`, () => {
      const answer = found(formula);
      expect(answer.is, JSON.stringify(answer)).toBe('value');
      const value = answer.is === 'value' && typeof answer.value === 'number' ? answer.value : Number.NaN;
      expect(Math.abs(value - gives), String(value)).toBeLessThanOrEqual(within + 1e-12);
    });
  }
});

describe('own trials', () => {
  const plots = 'Weighed[Density]; Weighed[Mass]; Weighed[Trial]';

  // Ratkowsky 1983 p. 58 and Mead 1970, fitted by an independent least-squares program on ln(mass).
  for (const row of readTable('density-fits').filter((fit) => textOf(fit, 'form') === 'reciprocal')) {
    const trial = textOf(row, 'trial');
    it(`fits a, b and the masses of ${trial}`, () => {
      const of = `${plots}; "${trial}"`;
      expect(number(`FITA(${of}) / (1/1 g)`) / numberOf(row, 'a')).toBeCloseTo(1, 5);
      expect(number(`FITB(${of}) / (1 m2/1 g)`) / numberOf(row, 'b')).toBeCloseTo(1, 5);
      expect(number(`FITISOLATED(${of})`)).toBeCloseTo(1 / numberOf(row, 'a'), 2);
      expect(number(`FITCEILING(${of})`)).toBeCloseTo(0.001 / numberOf(row, 'b'), 3);
      expect(number(`FITSPREAD(${of}) / 1%`)).toBeCloseTo(100 * numberOf(row, 'residual_sd'), 1);
      expect(number(`FITMASS(50/1 m2; ${of})`)).toBeCloseTo(numberOf(row, 'mass_at_50'), 1);
    });
  }

  it('fits theta of the general form', () => {
    const row = readTable('density-fits').find(
      (fit) => textOf(fit, 'form') === 'general' && textOf(fit, 'trial') === 'Purnong Landing',
    );
    const theta = row === undefined ? Number.NaN : numberOf(row, 'shape');
    expect(number(`FITTHETA(${plots}; "Purnong Landing")`)).toBeCloseTo(theta, 4);
    expect(number('GENERALMASS(25/1 m2; 0.003842139; 0.00013017038; 0.90552748)')).toBeCloseTo(236.14, 1);
    expect(number('OPTIMUMDENSITY(0.003842139; 0.00013017038; 0.90552748)')).toBeCloseTo(
      (0.003842139 * 0.90552748) / (0.00013017038 * (1 - 0.90552748)),
      6,
    );
  });

  it('says why there is no curve, and does not go beyond the densities tried', () => {
    expect(text(`FITSAYS(${plots}; "no such trial")`)).toMatch(/at least three weighed plots/);
    expect(one(`FITISOLATED(${plots}; "no such trial")`).is).toBe('blank');
    const beyond = one(`FITMASS(400/1 m2; ${plots}; "Purnong Landing")`);
    expect(beyond.is === 'error' && beyond.why).toMatch(/outside those of the trial/);
  });
});

describe('frost by date', () => {
  const spring = 'Frosts[Last]; Frosts[Known]; TRUE';
  const autumn = 'Frosts[First]; Frosts[Known]; TRUE';

  it('gives half at the mean date, and the dates at a risk on either side of it', () => {
    expect(number(`FROSTTOCOME(DATE(2027; 4; 10); ${spring}) / 1%`)).toBeCloseTo(50, 6);
    expect(number(`FROSTCOME(DATE(2027; 10; 27); ${autumn}) / 1%`)).toBeCloseTo(50, 6);
    const last = number(`LASTFROSTDATE(10%; 2028; ${spring})`);
    const first = number(`FIRSTFROSTDATE(10%; 2028; ${autumn})`);
    const days = FROSTS.rows.map(([date]) =>
      Math.round((Date.parse(date ?? '') - Date.parse('2027-01-01')) / 86_400_000),
    );
    const mean = days.reduce((sum, day) => sum + day, 0) / days.length;
    const deviation = Math.sqrt(days.reduce((sum, day) => sum + (day - mean) ** 2, 0) / (days.length - 1));
    const away = quantileNormal(0.9, 0, deviation);
    expect(last - civilDay(2028, 1, 1)).toBe(Math.ceil(mean + away));
    expect(first - civilDay(2028, 1, 1)).toBe(Math.floor(mean + 200 - away));
  });

  it('turns the year round south of the equator', () => {
    const last = 'South[Last]; South[Known]; TRUE';
    const first = 'South[First]; South[Known]; TRUE';
    const share = (formula: string): number => number(`${formula} / 100%`);
    expect(share(`FROSTTOCOME(DATE(2027; 8; 1); ${last})`)).toBeGreaterThan(0.99);
    expect(share(`FROSTTOCOME(DATE(2028; 1; 5); ${last})`)).toBeLessThan(0.01);
    expect(share(`FROSTCOME(DATE(2027; 8; 1); ${first})`)).toBeLessThan(0.01);
    expect(share(`FROSTCOME(DATE(2028; 6; 20); ${first})`)).toBeGreaterThan(0.99);
    const [spring, autumn] = [`LASTFROSTDATE(50%; 2027; ${last})`, `FIRSTFROSTDATE(50%; 2027; ${first})`].map(number);
    // Means by hand: days 264, 277 and 271 of spring; 123, 111 and 118 of autumn.
    expect(spring).toBe(civilDay(2027, 1, 1) + Math.ceil((264 + 277 + 271) / 3) - 1);
    expect(autumn).toBe(civilDay(2028, 1, 1) + Math.floor((123 + 111 + 118) / 3) - 1);
  });

  it('refuses a risk of nothing, and has no answer without two years', () => {
    const sure = one(`LASTFROSTDATE(0%; 2028; ${spring})`);
    expect(sure.is === 'error' && sure.why).toMatch(/risk/);
    expect(one('FROSTTOCOME(DATE(2027; 4; 10); Frosts[Last]; Frosts[Known]; FALSE)').is).toBe('blank');
  });
});

describe('onions in a year that stays at 15 degC', () => {
  const season = (critical: string): string =>
    `38; DATE(2027; 3; 1); ${critical}; 600 degC day; ; ; Steady[Day]; Steady[Mean]`;

  it('waits 60 days for 600 degree-days above 5 degC where days are long enough', () => {
    expect(number(`BULBINGDATE(${season('12 h')})`)).toBe(civilDay(2027, 3, 1) + 59);
    expect(text(`BULBINGHELDBY(${season('12 h')})`)).toBe('thermal time');
  });

  it('waits for the day where that comes later', () => {
    expect(number(`BULBINGDATE(${season('14 h')})`)).toBe(number('DAYLENGTHDATE(38; 14 h; 2027)'));
    expect(text(`BULBINGHELDBY(${season('14 h')})`)).toBe('day length');
    expect(one(`BULBINGDATE(${season('16 h')})`).is).toBe('blank');
  });

  it('counts leaf growth at 9 degree-days a day and the tops down at 10', () => {
    const days = 'Steady[Day]; Steady[Mean]';
    expect(number(`LEAFGROWTH(DATE(2027; 3; 1); DATE(2027; 3; 11); ${days}) / (1 degC day)`)).toBeCloseTo(90, 9);
    expect(number(`TOPSDOWNDATE(DATE(2027; 5; 1); 1000 degC day; ${days})`)).toBe(civilDay(2027, 5, 1) + 99);
  });

  it('reads a nursery warmer than the field until planting out', () => {
    const raised = '38; DATE(2027; 1; 10); 12 h; 600 degC day; DATE(2027; 2; 9); 25 degC; Steady[Day]; Steady[Mean]';
    // 30 days at 20 make the 600.
    expect(number(`BULBINGDATE(${raised})`)).toBe(number('DAYLENGTHDATE(38; 12 h; 2027)'));
    expect(text(`BULBINGHELDBY(${raised})`)).toBe('day length');
  });
});

describe('after harvest', () => {
  it('reckons racks, containers and losses', () => {
    expect(number('RACKAREA(100 kg; 500 kg/m3; 10 cm) / 1 m2')).toBeCloseTo(2, 12);
    expect(number('CONTAINERS(100 kg; 500 kg/m3; 40 L)')).toBe(5);
    expect(number('CONTAINERS(100 kg; 500 kg/m3; 40 L; 90%)')).toBe(6);
    expect(number('CURINGLOSS(100 kg; 94 kg) / 1%')).toBeCloseTo(6, 10);
    expect(one('CURINGLOSS(100 kg; 104 kg)').is).toBe('blank');
    expect(number('CUREDMASS(FRESHFORCURED(80 lb; 7%); 7%) / 1 lb')).toBeCloseTo(80, 10);
    expect(number('STOREDMASS(MASSTOSTORE(80 kg; 3%; 90 days); 3%; 90 days) / 1 kg')).toBeCloseTo(80, 10);
    expect(number('STOREDMASS(1 kg; MONTHLYLOSS(20%; 100 days); 100 days) / 1 kg')).toBeCloseTo(0.8, 10);
    expect(text('CURINGCONDITIONS("Onion, bulb")')).toBe('20 to 30 degC, 70 % humidity, 14 to 20 days');
    expect(one('CURINGCONDITIONS("Lettuce")').is).toBe('blank');
  });

  it('judges the store, the tops and the order of selling', () => {
    expect(text('STOREVERDICT(3.5 degC; 67%; 0 degC; 4 degC; 67%)')).toMatch(/keeps best at; the humidity is right/);
    expect(text('STOREVERDICT(12 degC; 67%; 0 degC; 4 degC; 67%)')).toMatch(/warmer/);
    expect(text('STOREVERDICT(-3 degC; 67%; 0 degC; ; 65%; 70%; -0.8 degC)')).toMatch(/freezing point/);
    expect(text('LODGINGSAYS(40%)')).toMatch(/still grow/);
    expect(text('LODGINGSAYS(60%)')).toMatch(/pull in dry weather/);
    expect(text('SELLFIRST(Lots[Name]; Lots[Until]; Lots[Mass]; Lots[Mass]; ">=0 kg")')).toBe('early');
    expect(number('SELLRANK(DATE(2028; 3; 1); 50 kg; Lots[Until]; Lots[Mass])')).toBe(3);
    expect(number('SELLRANK(DATE(2028; 3; 1); 80 kg; Lots[Until]; Lots[Mass])')).toBe(2);
    expect(number('KEEPSUNTIL(DATE(2027; 8; 1); 30 days)')).toBe(civilDay(2027, 8, 31));
  });

  it('tells a kept rotation from a broken one', () => {
    const says = (last: string): string =>
      text(`ROTATIONSAYS("Amaryllidaceae"; 2027; 3; "Fabaceae"; "${last}"; "Apiaceae"; "Asteraceae")`);
    expect(says('Amaryllidaceae')).toBe(
      'Amaryllidaceae stood here in 2025: 1 clear year since, 3 wanted. Choose another bed, or wait until 2029.',
    );
    expect(says('Poaceae')).toMatch(/^Clear/);
  });
});

describe('outside the range of a model the cell says so', () => {
  const OUTSIDE: readonly (readonly [formula: string, names: RegExp])[] = [
    ['LEAFAREA(700 degC day)', /600 degree-days/],
    ['LEAFAREA(-1 degC day)', /Brewster/],
    ['STOREDMASS(10 kg; 60%; 30 days)', /half in a month/],
    ['STOREDMASS(10 kg; 3%; 600 days)', /about a year/],
    ['CUREDMASS(10 kg; 70%)', /no longer curing/],
    ['RACKAREA(10 kg; 50 kg/m3; 10 cm)', /bulk density/],
    ['CLIMATECOEFFICIENT(1.15; 9 m/s; 30%; 0.4 m)', /1 to 6 m\/s/],
    ['READILYAVAILABLE(40 mm; 0.95)', /depletion/],
    ['NUTRIENTREMOVED(1 t; 90 kg/t)', /45 kg/],
    ['EMERGENCEAT("Onion"; 45 degC)', /0 to 40 C/],
    ['LODGINGSAYS(140%)', /share of the plants/],
    ['BULBINGDATE(38; DATE(2027;3;1); 22 h; 600; ; ; Steady[Day]; Steady[Mean])', /critical day lengths/],
    ['ROTATIONCLEAR(2027; 40)', /twenty/],
  ];
  const found = workedOut(
    OUTSIDE.map(([formula]) => formula),
    TABLES,
  );
  for (const [formula, names] of OUTSIDE) {
    it(formula, () => {
      const answer = found(formula);
      expect(answer.is === 'error' ? answer.why : JSON.stringify(answer)).toMatch(names);
    });
  }
});
