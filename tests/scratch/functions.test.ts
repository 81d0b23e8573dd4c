// The trade's functions on scratch papers: each gives what the engine gives in a formula of the workbook, in US and in metric
// units. A function that is not tried here fails the test.

import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { TRADE } from '../../engine/functions/trade/index.ts';
import { FUNCTIONS, type FunctionDefinition, message, parameterAt, type Scalar } from '../../engine/index.ts';
import { type Measures, measureOf, measureOfAnswer, typeSeen } from '../../ui/scratch/call-measures.ts';
import { canBeCalled } from '../../ui/scratch/engine-call.ts';
import { FROM_ENGINE } from '../../ui/scratch/engine-functions.ts';
import { type Measure, plainFigure } from '../../ui/scratch/figures.ts';
import { type Book, type ColumnDeclaration, opened, type TypeDeclaration } from '../book.ts';
import { Desk } from './paper.ts';

/** A number stands in what the parameter counts in. */
type Sample =
  | number
  | string
  | { readonly date: string }
  | { readonly column: readonly [sheet: string, column: string] }
  /** What another function gives. */
  | { readonly record: string }
  | undefined;

const day = (date: string): Sample => ({ date });
const of = (sheet: string, column: string): Sample => ({ column: [sheet, column] });

const DAYS = [of('Climate', 'Day'), of('Climate', 'Mean')];
const LAST = [of('Frosts', 'Last'), of('Frosts', 'Station'), 'North'];
const FIRST = [of('Frosts', 'First'), of('Frosts', 'Station'), 'North'];
const PLOTS = [of('Plots', 'Density'), of('Plots', 'Mass'), of('Plots', 'Trial'), 'A'];
const GRADES = [of('Grades', 'Grade'), of('Grades', 'From'), of('Grades', 'To'), of('Grades', 'Share')];
const STAND = [{ record: 'BEDTOTRY' }, { record: 'BULBSTAND' }, { record: 'BULBSALE' }];
const LIBRARY = [20, 10, 30, 4, 28, 3];

/** Of each function of the trade its arguments, in US and in metric units where they can't be the same. */
const SAMPLES: Readonly<
  Record<string, readonly Sample[] | { readonly us: readonly Sample[]; readonly si: readonly Sample[] }>
> = {
  DAYLENGTH: [44, day('2027-06-01')],
  DAYLENGTHDATE: [44, 14, 2027],
  LONGDAYFROM: [44, 14, day('2027-02-01')],
  SHORTDAYFROM: [44, 11, day('2027-07-01')],
  LONGESTDAY: [44, 2027],
  THERMALTIME: [10, 24, 5, 30],
  WARMTHBETWEEN: [day('2027-04-01'), day('2027-06-01'), 5, 30, ...DAYS],
  WARMTHDATE: [day('2027-04-01'), 300, 5, 30, ...DAYS],
  WARMTHSTART: [day('2027-08-01'), 300, 5, 30, ...DAYS],
  DAILYOFMONTHS: [day('2027-05-20'), of('Months', 'Month'), of('Months', 'Rain')],
  HOTTESTDAY: [day('2027-03-01'), ...DAYS],
  TEMPERATUREAROUND: [day('2027-05-01'), ...DAYS],
  WARMFROM: [day('2027-07-15'), 10, ...DAYS],
  WARMUNTIL: [day('2027-07-15'), 10, ...DAYS],
  STARTWARMTH: [4],
  COLDFELT: [day('2027-01-01'), day('2027-04-01'), 0, 4, 10, 16, ...DAYS],
  FREEZETHAWDAYS: {
    us: [day('2027-01-01'), day('2027-04-01'), 4, of('Climate', 'Day'), of('Climate', 'Low'), of('Climate', 'High')],
    si: [day('2027-01-01'), day('2027-04-01'), 2, of('Climate', 'Day'), of('Climate', 'Low'), of('Climate', 'High')],
  },
  DAYSABOVE: [day('2027-01-01'), day('2027-12-01'), 15, ...DAYS],
  FROSTTOCOME: [day('2027-04-20'), ...LAST],
  FROSTCOME: [day('2027-10-10'), ...FIRST],
  LASTFROSTDATE: [0.1, 2027, ...LAST],
  FIRSTFROSTDATE: [0.1, 2027, ...FIRST],
  BULBINGDATE: [44, day('2027-04-15'), 14, 600, undefined, undefined, ...DAYS],
  BULBINGHELDBY: [44, day('2027-04-15'), 14, 600, undefined, undefined, ...DAYS],
  LEAFGROWTH: [day('2027-04-15'), day('2027-06-01'), ...DAYS],
  LEAFAREA: [500],
  ONIONDRYMASS: [500],
  TOPSDOWNDATE: [day('2027-06-10'), 600, ...DAYS],
  LODGINGSAYS: [0.6],
  SUITSFARM: [15.4, 14, 700, 44, 36, 50],
  SUITSWHY: [15.4, 16.5, 700, 44, 52, 60],
  SEEDMOISTURE: [0.4, 15, 0.22],
  SEEDVIABILITY: [0.95, 400, 0.09, 15, 6.975, 3.47, 0.04, 0.000428],
  SEEDLIFE: [0.95, 400, 2],
  EMERGENCEDAYS: [15, 1.4, 219],
  EMERGENCEAT: ['Onion', 15],
  SEEDLINGSAT: ['Onion', 15],
  SEEDSTANDARD: ['Onion'],
  COVER: [
    1200,
    of('Packs', 'Seeds'),
    of('Packs', 'Price'),
    of('Packs', 'Pack'),
    of('Packs', 'Supplier'),
    of('Packs', 'Variety'),
    'Red',
  ],
  BLOCKSNEEDED: [200, 0.85, 0.9],
  EMPTYSHARE: [3, 0.85],
  MEANPLANTS: [3, 0.85],
  PLANTSSHARE: [2, 3, 0.85],
  THINNEDMEAN: [3, 0.85, 2],
  THINNINGS: [3, 0.85, 2],
  STATIONS: [600, 6, 4],
  OFFSETSTATIONS: [600, 6, 4],
  OFFSETGAIN: [600, 6, 4],
  OFFSETWHY: [600, 6, 4],
  RECTANGULARITY: [12, 4],
  SQUARENESS: [3, 0.12],
  PLANTMASS: [4, 0.4, 1.1],
  DENSITYFORMASS: [0.2, 0.5, 1.2],
  BULBDIAMETER: { us: [0.3, 0.2, 60], si: [0.15, 0.2, 950] },
  GRADESHARE: [3, 0.2, 2, 4],
  GRADEMASSSHARE: [3, 0.2, 2, 4],
  FIT: PLOTS,
  FITGENERAL: PLOTS,
  FITAT: { us: [3, ...PLOTS], si: [30, ...PLOTS] },
  GENERALMASS: { us: [3, 0.002, 0.00007, 1], si: [30, 0.002, 0.00007, 1] },
  OPTIMUMDENSITY: [0.02, 0.0007, 0.8],
  BEDTOTRY: { us: [2, 12, 1, 600, 30, 4, 1], si: [5, 30, 2.5, 1500, 75, 4, 1] },
  BULBSTAND: { us: [0.7, 1.2, 0.12, 0.2, 60, 0.9], si: [0.3, 6, 0.12, 0.2, 950, 0.9] },
  BULBSALE: [2, 0.05],
  BESTSPACINGS: [...STAND, ...GRADES],
  SPACINGFOR: ['medium', ...STAND, ...GRADES],
  HARVESTED: [5, 20, 0.5, 0.2],
  CUTS: [12, 10, 0.6, 0.3],
  BULBLIGHT: [500],
  CUREDMASS: [100, 0.2],
  FRESHFORCURED: [80, 0.2],
  CURINGLOSS: [100, 85],
  CURINGCONDITIONS: ['Onion, bulb'],
  RACKAREA: { us: [400, 35, 12], si: [200, 560, 30] },
  CONTAINERS: { us: [400, 35, 1, 0.9], si: [200, 560, 0.03, 0.9] },
  CURINGAIR: { us: [400, 35, 2880], si: [200, 560, 2880] },
  STOREDMASS: [100, 0.04, 90],
  MASSTOSTORE: [80, 0.04, 90],
  MONTHLYLOSS: [0.15, 120],
  STOREVOLUME: { us: [400, 35, 0.7], si: [200, 560, 0.7] },
  STOREVERDICT: [2, 0.7, 0, 2, 0.65, 0.7, -0.8],
  KEEPSUNTIL: [day('2027-09-01'), 150],
  SOLDFROMSTORE: [
    1,
    day('2027-09-13'),
    of('Store', 'Place'),
    of('Store', 'Week'),
    of('Store', 'Incoming'),
    of('Store', 'Wanted'),
    of('Store', 'Product'),
    'Onion',
  ],
  HARGREAVES: [44, day('2027-06-15'), 12, 27],
  WATERCOURSE: [20, 45, 20, 10, 0.6, 1.05, 0.9],
  COEFFICIENTON: [{ record: 'WATERCOURSE' }, 40],
  WATERTAKEN: { us: [{ record: 'WATERCOURSE' }, 0.2, 30, 37], si: [{ record: 'WATERCOURSE' }, 5, 30, 37] },
  CLIMATECOEFFICIENT: { us: [1.05, 2, 0.4, 16], si: [1.05, 2, 0.4, 40] },
  AVAILABLEWATER: { us: [0.27, 0.12, 12], si: [0.27, 0.12, 30] },
  READILYAVAILABLE: [4, 0.4],
  WATERSTRESS: [3, 4, 0.4],
  WATERINGDAYS: { us: [4, 0.4, 0.2], si: [10, 0.4, 5] },
  NUTRIENTREMOVED: [100, 0.003],
  PHOSPHATE: [2],
  POTASH: [2],
  CLEARYEARS: [2024, 2027],
  ROTATIONCLEAR: [2024, 4],
  DISEASEYEARS: ['Brassicaceae'],
  ROTATIONSAYS: ['Amaryllidaceae', 2027, 4, 'Brassicaceae', 'Amaryllidaceae', '', ''],
  SQUARESIFS: [20, of('Months', 'Month'), of('Months', 'Half'), 'first'],
  LEARNED: LIBRARY,
  LEARNEDLOW: LIBRARY,
  LEARNEDHIGH: LIBRARY,
  LEARNEDWEIGHT: LIBRARY,
};

function column(name: string, type: TypeDeclaration): ColumnDeclaration {
  return { name, type, group: '', note: '', role: 'entered', formula: '' };
}
const TEXT: TypeDeclaration = { type: 'text' };
const DATE: TypeDeclaration = { type: 'date' };
const WARM: TypeDeclaration = { type: 'temperature' };
const number = (us = '', si = us): TypeDeclaration => ({ type: 'number', unit: { us, si } });
const SHEET = { question: '', about: '', checks: [], cautions: [], rows: { from: 'entry' } } as const;

/** A year that is coldest in January, day by day. */
function year(): readonly Record<string, string>[] {
  return Array.from({ length: 365 }, (_, i) => {
    const mean = 10 - 14 * Math.cos(((i - 15) / 365) * 2 * Math.PI);
    const date = new Date(Date.UTC(2027, 0, 1 + i)).toISOString().slice(0, 10);
    return {
      Day: date,
      Mean: `${mean.toFixed(2)} degC`,
      Low: `${(mean - 5).toFixed(2)} degC`,
      High: `${(mean + 6).toFixed(2)} degC`,
    };
  });
}

function trials(units: 'us' | 'si'): Book {
  const days = (from: string, count: number, step: number): readonly string[] =>
    Array.from({ length: count }, (_, i) =>
      new Date(Date.parse(from) + i * step * 86_400_000).toISOString().slice(0, 10),
    );
  const frosts = days('2010-04-18', 14, 366).map((last, i) => ({
    Last: last,
    First: days('2010-10-05', 14, 364)[i] ?? '',
    Station: i % 4 === 3 ? 'South' : 'North',
  }));
  const plots = [12, 20, 30, 45, 60, 80, 100, 25].map((density, i) => ({
    Density: `${density} 1/m2`,
    Mass: `${(1 / (3 + 0.11 * density + (i % 3) * 0.05)).toFixed(5)} kg`,
    Trial: i === 7 ? 'B' : 'A',
  }));
  return opened({
    title: 'Trials',
    units,
    currency: 'USD',
    today: 20_800,
    sheets: [
      { ...SHEET, name: 'Bench', rows: { from: 'single' }, columns: [column('Nothing', number())] },
      {
        ...SHEET,
        name: 'Climate',
        columns: [column('Day', DATE), column('Mean', WARM), column('Low', WARM), column('High', WARM)],
      },
      {
        ...SHEET,
        name: 'Months',
        columns: [column('Month', number()), column('Rain', number()), column('Half', TEXT)],
      },
      { ...SHEET, name: 'Frosts', columns: [column('Last', DATE), column('First', DATE), column('Station', TEXT)] },
      {
        ...SHEET,
        name: 'Plots',
        columns: [column('Density', number('1/ft2', '1/m2')), column('Mass', number('oz', 'g')), column('Trial', TEXT)],
      },
      {
        ...SHEET,
        name: 'Packs',
        columns: [
          column('Seeds', number()),
          column('Price', number('money')),
          column('Pack', TEXT),
          column('Supplier', TEXT),
          column('Variety', TEXT),
        ],
      },
      {
        ...SHEET,
        name: 'Grades',
        columns: [
          column('Grade', TEXT),
          column('From', number('in', 'mm')),
          column('To', number('in', 'mm')),
          column('Share', number('%')),
        ],
      },
      {
        ...SHEET,
        name: 'Store',
        columns: [
          column('Place', number()),
          column('Week', DATE),
          column('Incoming', number('lb', 'kg')),
          column('Wanted', number('lb', 'kg')),
          column('Product', TEXT),
        ],
      },
    ],
    rows: {
      Climate: year(),
      Months: Array.from({ length: 12 }, (_, i) => ({
        Month: i + 1,
        Rain: 40 + 3 * i,
        Half: i < 6 ? 'first' : 'second',
      })),
      Frosts: frosts,
      Plots: plots,
      Packs: [
        { Seeds: 500, Price: 4, Pack: 'A', Supplier: 'One', Variety: 'Red' },
        { Seeds: 250, Price: 3, Pack: 'B', Supplier: 'Two', Variety: 'Red' },
        { Seeds: 5000, Price: 1, Pack: 'C', Supplier: 'Two', Variety: 'White' },
      ],
      Grades: [
        { Grade: 'small', From: '35 mm', To: '50 mm', Share: '50%' },
        { Grade: 'medium', From: '50 mm', To: '70 mm', Share: '100%' },
        { Grade: 'large', From: '70 mm', To: '90 mm', Share: '90%' },
      ],
      Store: [
        { Place: 1, Week: '2027-09-06', Incoming: '100 kg', Wanted: '30 kg', Product: 'Onion' },
        { Place: 1, Week: '2027-09-13', Incoming: '0 kg', Wanted: '40 kg', Product: 'Onion' },
        { Place: 2, Week: '2027-09-13', Incoming: '50 kg', Wanted: '10 kg', Product: 'Leek' },
      ],
    },
  });
}

/** Both forms of a call: as the paper has it, and as the workbook's language has it. */
class Calls {
  readonly desk: Desk;
  /** The same workbook without a paper, where records stand in columns. */
  readonly #bench: Book;
  readonly #measures: Measures;
  readonly #units: 'us' | 'si';
  #count = 0;

  constructor(units: 'us' | 'si') {
    this.#units = units;
    this.desk = new Desk(trials(units));
    this.#bench = trials(units);
    this.#measures = this.desk.room.measures;
    for (const name of new Set(Object.values(SAMPLES).flatMap((sample) => this.#records(sample)))) this.#keep(name);
  }

  #records(sample: (typeof SAMPLES)[string]): readonly string[] {
    return this.#chosen(sample).flatMap((one) => (typeof one === 'object' && 'record' in one ? [one.record] : []));
  }

  #chosen(sample: (typeof SAMPLES)[string]): readonly Sample[] {
    return 'us' in sample ? sample[this.#units] : sample;
  }

  /** A record stands in a column before its figures are read. */
  #keep(name: string): void {
    this.#add(name, this.typed(name));
  }

  args(name: string): readonly Sample[] {
    const sample = SAMPLES[name];
    if (sample === undefined) throw new Error(`${name} has no sample`);
    return this.#chosen(sample);
  }

  plain(name: string): string {
    const said = this.args(name).map((one): string => {
      if (one === undefined) return '';
      if (typeof one === 'number') return String(one);
      if (typeof one === 'string') return `"${one}"`;
      if ('date' in one) return `DATE(${one.date.split('-').map(Number).join(',')})`;
      if ('record' in one) return this.plain(one.record).slice(1);
      const [sheet, wanted] = one.column;
      const found = this.desk.room.names
        .all()
        .find((named) => named.sheet.name === sheet && named.column.name === wanted);
      return found?.name ?? '';
    });
    return `=${name}(${said.join(',')})`;
  }

  typed(name: string): string {
    const definition = definitionOf(name);
    const said = this.args(name).map((one, i): string => {
      if (one === undefined) return '';
      if (typeof one === 'string') return `"${one}"`;
      if (typeof one === 'number') return this.#quantity(one, definition, i);
      if ('date' in one) return `DATE(${one.date.split('-').map(Number).join('; ')})`;
      if ('record' in one) return `[${one.record}]`;
      return `${one.column[0]}[${one.column[1]}]`;
    });
    return `${name}(${said.join('; ')})`;
  }

  #quantity(n: number, definition: FunctionDefinition, i: number): string {
    const { signature } = definition;
    const parameter = parameterAt(signature, i, this.args(signature.name).length);
    const measure: Measure = parameter === undefined ? { is: 'as is' } : measureOf(parameter, this.#measures);
    if (measure.is !== 'number' || measure.unit.symbol === '') return String(n);
    const { symbol } = measure.unit;
    return symbol.startsWith('1/') ? `${n} / (1 ${symbol.slice(2)})` : `${n} ${symbol}`;
  }

  /** The engine's answer as a plain figure in what the paper's answer counts in. */
  expected(name: string): readonly Scalar[] {
    const definition = definitionOf(name);
    const { result } = definition.signature;
    if (result.is === 'record') {
      this.#keepOnce(name);
      return result.record.figures.map((figure) => {
        const type = measureOfAnswer(
          { ...definition.signature, result: { is: 'rule', rule: () => figure.type } },
          [],
          this.#measures,
        );
        return told(this.#asked(`[${name}].[${figure.name}]`), type);
      });
    }
    const types = this.args(name).map((sample, i, { length }) => {
      const parameter = parameterAt(definition.signature, i, length);
      const type =
        parameter === undefined || sample === undefined
          ? undefined
          : typeSeen(parameter, measureOf(parameter, this.#measures));
      return { type, constant: undefined };
    });
    return [told(this.#asked(this.typed(name)), measureOfAnswer(definition.signature, types, this.#measures))];
  }

  /** A formula that reads a record stands in the one row of Bench, where the records are. */
  #asked(formula: string): Scalar {
    const book = this.#bench;
    if (!formula.includes('[BEDTOTRY]') && !formula.includes('[WATERCOURSE]') && !formula.includes('].[')) {
      const answer = book.evaluate(formula);
      if (!answer.ok) throw new Error(`${formula}: ${answer.diagnostic.why}`);
      return answer.value;
    }
    const wanted = `Answer ${++this.#count}`;
    this.#add(wanted, formula);
    const diagnostic = book.column('Bench', wanted)?.diagnostic;
    if (diagnostic !== undefined) throw new Error(`${formula}: ${diagnostic.why}`);
    return book.value('Bench', book.rows('Bench')[0] ?? 0, wanted);
  }

  #add(name: string, formula: string): void {
    const done = this.#bench.workbook.do(
      [{ command: 'add formula', sheet: 'bench', name, formula }],
      message('add column', { column: name }),
    );
    if (done.refused) throw new Error(`${formula}: ${done.why}`);
  }

  #keepOnce(name: string): void {
    if (this.#bench.column('Bench', name) === undefined) this.#keep(name);
  }
}

function definitionOf(name: string): FunctionDefinition {
  const found = FUNCTIONS.get(name);
  if (found === undefined) throw new Error(`There is no ${name}`);
  return found;
}

function told(answer: Scalar, measure: Measure | string): Scalar {
  if (typeof measure === 'string') throw new Error(measure);
  return plainFigure(answer, measure);
}

const NAMES = TRADE.map(({ signature }) => signature.name);

test('all of the trade are there but the one that asks what was typed in a row', () => {
  expect(NAMES.filter((name) => !FROM_ENGINE.includes(name))).toEqual(['TYPED']);
  expect(NAMES.filter((name) => canBeCalled(definitionOf(name)) && SAMPLES[name] === undefined)).toEqual([]);
});

describe.each(['us', 'si'] as const)('in %s units', (units) => {
  let calls: Calls;
  beforeAll(() => {
    calls = new Calls(units);
  });
  afterAll(() => calls.desk.room.destroy());

  test.each(Object.keys(SAMPLES))('%s', (name) => {
    const expected = calls.expected(name);
    calls.desk.type({ A1: calls.plain(name) });
    const letters = Array.from(expected, (_, i) => `${String.fromCharCode(65 + i)}1`);
    const shown = letters.map((cell) => calls.desk.shown(cell));
    expect(shown.map(({ why }) => why).filter((why) => why !== '')).toEqual([]);
    // A call that answered nothing would agree with anything.
    expect(expected.some((value) => value !== null)).toBe(true);
    for (const [i, value] of expected.entries()) {
      const given = shown[i]?.value ?? null;
      if (typeof value === 'number')
        expect(Math.abs(Number(given) - value)).toBeLessThanOrEqual(1e-9 * Math.abs(value));
      else expect(given).toEqual(value === '' ? null : value);
    }
    calls.desk.type({ A1: '' });
  });
});
