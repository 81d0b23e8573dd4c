// What happened against the plan, and what is learned from it: sums by hand, sentences for slips, and seasons simulated from a known
// truth, which the learned figures must find.

import { describe, expect, it } from 'vitest';
import { civilDay, isoDate } from '../../engine/index.ts';
import { learnedOffers, takeOver } from '../../sheets-templates/index.ts';
import { errorsOf, type Rows, type Season, seasonOf } from './season.ts';

const MONTHS = 'January February March April May June July August September October November December'.split(' ');
const LOWS = [-12, -10, -5, 1, 7, 12, 15, 14, 9, 3, -3, -9];

const ROWS: Rows = {
  'Monthly climate': MONTHS.map((Month, at) => ({
    Month,
    Low: `${LOWS[at]} degC`,
    High: `${(LOWS[at] ?? 0) + 11} degC`,
  })),
  Beds: [{ Bed: 'One', Length: '20 m', Width: '75 cm' }],
  Varieties: [{ Variety: 'Leaf', Crop: 'Lettuce, head' }],
  Plantings: [
    {
      Planting: 'Leaf',
      Variety: 'Leaf',
      Start: 'blocks',
      Bed: 'One',
      'Bed length used': '10 m',
      Sown: '2027-04-01',
      'Planted out': '2027-05-06',
    },
  ],
};
const TODAY = { today: civilDay(2027, 10, 20), units: 'si' } as const;

function opened(records: Rows[string], more: Rows = {}): Season {
  return seasonOf({ ...ROWS, ...more, Records: records }, {}, TODAY);
}

const RECORDS: Rows[string] = [
  { Planting: 'Leaf', On: '2027-04-02', What: 'sown' },
  { Planting: 'Leaf', On: '2027-04-12', What: 'came up', Count: '70', Of: '80' },
  { Planting: 'Leaf', On: '2027-05-09', What: 'set out' },
  { Planting: 'Leaf', On: '2027-06-01', What: 'stood', Count: '57', Of: '60' },
  { Planting: 'Leaf', On: '2027-06-25', Amount: '6 kg', Hours: '0.5' },
  { Planting: 'Leaf', On: '2027-07-01', What: 'picked', Amount: '9 kg', Hours: '0.7' },
  { Planting: 'Leaf', On: '2027-07-01', What: 'sorted out', Amount: '1 kg' },
  { Planting: 'Leaf', On: '2027-07-05', What: 'picked', Amount: '4 kg' },
];

describe('plan against what happened', () => {
  const season = opened(RECORDS);
  const of = (column: string): number => season.number('Planting results', 'Leaf', column) ?? Number.NaN;

  it('opens without a cell in error', () => expect(errorsOf(season.book)).toEqual([]));

  it('adds up what was noted, beside what was planned', () => {
    expect(of('Germination')).toBeCloseTo(87.5, 9);
    expect(of('Field survival')).toBeCloseTo(95, 9);
    expect(of('Pickings')).toBe(3);
    expect(of('Picked')).toBeCloseTo(19, 9);
    expect(of('Sorted out')).toBeCloseTo(1, 9);
    expect(of('Picking rate')).toBeCloseTo(15 / 1.2, 9);
    expect(of('Yield')).toBeCloseTo(19 / 7.5, 9);
    expect(of('Expected')).toBeCloseTo(season.number('Plantings', 'Leaf', 'Marketable yield') ?? Number.NaN, 9);
    expect(of('Against the plan')).toBeCloseTo((100 * 19) / of('Expected'), 6);
    expect(of('Days later')).toBe(civilDay(2027, 6, 25) - Number(season.value('Plantings', 'Leaf', 'Harvest')));
  });

  it('is told by crop and by bed too', () => {
    expect(season.number('Crop results', 'Lettuce, head', 'Picked')).toBeCloseTo(19, 9);
    expect(season.number('Bed results', 'One', 'Picked')).toBeCloseTo(19, 9);
    expect(season.number('Bed results', 'One', 'Hours noted')).toBeCloseTo(1.2, 9);
  });

  it('counts pieces at the weight planned for one', () => {
    const heads = opened([{ Planting: 'Leaf', On: '2027-06-25', Count: '40' }]);
    const piece = heads.number('Plantings', 'Leaf', 'Mass of a piece') ?? Number.NaN;
    expect(heads.number('Planting results', 'Leaf', 'Picked')).toBeCloseTo((40 * piece) / 1000, 6);
  });
});

describe('counts', () => {
  const counted = (...records: Rows[string]): Season =>
    opened(records.map((row) => ({ Planting: 'Leaf', On: '2027-06-01', ...row })));
  const of = (season: Season, column: string): number | undefined => season.number('Planting results', 'Leaf', column);

  it('of a part alone say which share stands and came up: a line without Of or without Count moves neither', () => {
    const stood = { What: 'stood', Count: '51', Of: '60' };
    const up = { What: 'came up', Count: '70', Of: '80' };
    const season = counted(stood, { What: 'stood', Count: '240' }, { What: 'stood', Of: '40' }, up, {
      What: 'came up',
      Count: '300',
    });
    expect(of(season, 'Field survival')).toBeCloseTo(85, 9);
    expect(of(season, 'Plants counted')).toBe(60);
    expect(of(season, 'Germination')).toBeCloseTo(87.5, 9);
    expect(of(season, 'Seeds counted')).toBe(80);
  });

  it('without Of are of the whole planting, beside its places, and the last one holds', () => {
    const season = counted({ What: 'stood', Count: '90' }, { What: 'stood', Count: '45', On: '2027-06-20' });
    const places = season.number('Plantings', 'Leaf', 'Stations') ?? Number.NaN;
    expect(of(season, 'Field survival')).toBeUndefined();
    expect(of(season, 'Places standing')).toBe(45);
    expect(of(season, 'Places left')).toBeCloseTo((100 * 45) / places, 9);
    const said = counted({ What: 'stood', Count: String(places + 1) }).book.attention();
    expect(said.filter(({ table }) => table === 'Records').map(({ says }) => says)).toEqual([
      expect.stringMatching(/More than there were/),
    ]);
  });

  it.each(['2 trays', '2 crates', '50%', '1/2', '24.5', '3 bags', '2 beds'])('%s says not how many', (entry) => {
    const season = counted({ What: 'stood', Count: '51', Of: '60' });
    const at = (column: string) => () => {
      const [row = -1] = season.book.rows('Records');
      const done = season.book.edit([{ edit: 'cell', table: 'Records', row, column, entry }]);
      if (done.refused) throw new Error(done.why);
    };
    expect(at('Count')).toThrow(/doesn't say how many: write a whole number/);
    expect(at('Of')).toThrow(/doesn't say how many: write a whole number/);
  });

  it('are taken with the word for what is counted, and a weight of crates is asked for as a weight', () => {
    const season = counted({});
    const [row = -1] = season.book.rows('Records');
    const type = (column: string, entry: string) =>
      season.book.edit([{ edit: 'cell', table: 'Records', row, column, entry }]);
    for (const [entry, count] of [
      ['24 plants', 24],
      ['3 dozen', 36],
      ['40 bunches', 40],
    ] as const) {
      expect(type('Count', entry).refused).toBe(false);
      expect(season.book.value('Records', row, 'Count')).toBe(count);
    }
    expect(type('Amount', '60 heads').refused).toBe(false);
    expect(season.book.value('Records', row, 'Count')).toBe(60);
    for (const entry of ['2 crates', '50%', '2 trays']) {
      const done = type('Amount', entry);
      expect(done.refused ? done.why : '').toMatch(/is a (count|share); this column wants a mass, such as 8 kg/);
    }
    expect(season.book.value('Records', row, 'Count')).toBe(60);
  });
});

describe('slips of the pen', () => {
  const says = (row: Readonly<Record<string, string>>): string =>
    opened([{ Planting: 'Leaf', ...row }])
      .book.attention()
      .filter(({ table }) => table === 'Records')
      .map((one) => one.says)
      .join(' ');

  it('are told in a sentence that says what to do', () => {
    expect(says({ On: '2027-05-01', Amount: '3 kg' })).toMatch(
      /before the planting goes into the bed \(6 May 2027\): look at the day, the planting, or its dates/,
    );
    expect(says({ On: '2027-03-20', What: 'came up', Count: '4', Of: '5' })).toMatch(
      /before it is sown \(1 Apr 2027\)/,
    );
    expect(says({ On: '2027-11-20', Amount: '3 kg' })).toMatch(/still to come/);
    expect(says({ On: '2027-04-20', What: 'came up', Count: '9', Of: '5' })).toMatch(/More than there were/);
    expect(says({ On: '2027-06-20' })).toMatch(/Enter the weight, or how many pieces/);
  });
});

describe('a line in which an error is found', () => {
  const learned = (records: Rows[string], figure: string): number | undefined =>
    opened(records).number('Learned of varieties', 'Leaf', `${figure} observations`);

  it('teaches nothing: a picking before the planting, more plants up than there were seeds', () => {
    const early = [{ Planting: 'Leaf', On: '2027-01-10', Amount: '5 kg', Hours: '0.5' }, ...RECORDS];
    const season = opened(early);
    // Neither when it was ripe nor what it gave is known until the day is put right.
    expect(season.number('Learned of varieties', 'Leaf', 'Warmth to harvest observations')).toBe(0);
    expect(season.number('Learned of crops', 'Lettuce, head', 'Yield observations')).toBe(0);
    expect(season.number('Planting results', 'Leaf', 'Picking rate')).toBeCloseTo(15 / 1.2, 9);
    expect(season.number('Planting results', 'Leaf', 'Picked')).toBeCloseTo(19, 9);
    const many = { Planting: 'Leaf', On: '2027-04-12', What: 'came up', Count: '120', Of: '100' };
    expect(learned([many], 'Germination') ?? 0).toBe(0);
    expect(learned([{ ...many, Count: '100' }], 'Germination')).toBe(1);
    const levels = opened([many])
      .book.attention()
      .filter(({ table }) => table === 'Records');
    expect(levels.map(({ level }) => level)).toEqual(['error']);
  });

  it('counts again as soon as it is put right', () => {
    const season = opened([{ Planting: 'Leaf', On: '2027-01-10', Amount: '5 kg' }]);
    expect(season.value('Learned of varieties', 'Leaf', 'Warmth to harvest noted')).toBeNull();
    season.type('Records', '', 'On', '2027-06-25');
    expect(season.number('Learned of varieties', 'Leaf', 'Warmth to harvest observations')).toBe(1);
  });
});

describe('a sowing or setting out that was noted', () => {
  const { Sown: _, 'Planted out': __, ...untyped } = ROWS.Plantings?.[0] ?? {};
  const begun = (records: Rows[string]): Season =>
    seasonOf({ ...ROWS, Plantings: [untyped], Records: records }, {}, { today: civilDay(2027, 3, 20), units: 'si' });
  const NOTED = [
    { Planting: 'Leaf', On: '2027-02-14', What: 'sown' },
    { Planting: 'Leaf', On: '2027-03-18', What: 'set out' },
  ];
  const day = (season: Season, column: string): string => isoDate(Number(season.value('Plantings', 'Leaf', column)));

  it('stands where no date is typed, whatever is proposed', () => {
    const season = begun(NOTED);
    season.type('Farm', '', 'Season starts', '2027-06-15');
    expect([day(season, 'Sown'), day(season, 'Planted out')]).toEqual(['2027-02-14', '2027-03-18']);
    expect(season.book.attention().filter(({ level }) => level === 'error')).toEqual([]);
    expect(season.value('Plantings', 'Leaf', 'Dates from')).toBe('set out, as noted');
  });

  it('says when it goes into the bed: so long after the sowing as it is raised', () => {
    const season = begun(NOTED.slice(0, 1));
    const raised = season.number('Plantings', 'Leaf', 'Time raised') ?? Number.NaN;
    expect(day(season, 'Planted out')).toBe(isoDate(civilDay(2027, 2, 14) + Math.round(raised * 7)));
    expect(season.value('Plantings', 'Leaf', 'Dates from')).toBe('sown, as noted');
  });

  it('leaves a date that is typed', () => {
    const season = begun(NOTED);
    season.type('Plantings', 'Leaf', 'Planted out', '2027-05-06');
    expect(day(season, 'Planted out')).toBe('2027-05-06');
    expect(day(season, 'Sown')).toBe('2027-02-14');
  });
});

describe('learned figures', () => {
  it('weigh the library and the farm by how sure each is, and change nothing unasked', () => {
    const season = opened(RECORDS);
    const of = (column: string): number => season.number('Learned of varieties', 'Leaf', column) ?? Number.NaN;
    expect(of('Germination observations')).toBe(1);
    expect(of('Germination noted')).toBeCloseTo(87.5, 9);
    const [library, learned] = [of('Germination in the library'), of('Germination learned')];
    expect(learned).toBeGreaterThan(Math.min(library, 87.5) - 1e-9);
    expect(learned).toBeLessThan(Math.max(library, 87.5) + 1e-9);
    expect(of('Germination learned low')).toBeLessThan(learned);
    expect(of('Germination learned high')).toBeGreaterThan(learned);
    expect(season.number('Varieties', 'Leaf', 'Germination')).toBeCloseTo(library, 9);
  });

  it('find the truth of simulated seasons, the surer the more there are', () => {
    // A farm whose lettuce gives 3.1 kg/m2, germinates at 78 % and is picked at 22 kg an hour, with a tenth of scatter.
    const truth = { yield: 3.1, germination: 78, rate: 22 };
    let state = Number(process.env.SEED ?? 20_270_315) % 2147483647 || 1;
    const next = (): number => {
      state = (state * 48271) % 2147483647;
      return state / 2147483647;
    };
    const about = (mean: number): number => mean * (1 + 0.1 * (next() + next() + next() + next() - 2) * Math.sqrt(3));
    const seasons = (count: number): Rows[string] =>
      Array.from({ length: count }, (_, at) => ({
        Season: String(2026 - at),
        Variety: 'Leaf',
        Yield: `${about(truth.yield).toFixed(3)} kg/m2`,
        Germination: `${Math.min(100, about(truth.germination)).toFixed(1)}%`,
        'Picking rate': `${about(truth.rate).toFixed(2)} kg/h`,
      }));
    const few = opened([], { 'Past results': seasons(2) });
    const many = opened([], { 'Past results': seasons(40) });
    const crop = (of: Season, column: string): number =>
      of.number('Learned of crops', 'Lettuce, head', column) ?? Number.NaN;
    const variety = (of: Season, column: string): number =>
      of.number('Learned of varieties', 'Leaf', column) ?? Number.NaN;
    expect(crop(many, 'Yield learned') / truth.yield).toBeCloseTo(1, 1);
    expect(crop(many, 'Picking rate learned') / truth.rate).toBeCloseTo(1, 1);
    expect(variety(many, 'Germination learned') / truth.germination).toBeCloseTo(1, 1);
    for (const figure of ['Yield', 'Picking rate']) {
      expect(crop(many, `${figure} weight`)).toBeGreaterThan(crop(few, `${figure} weight`));
      const width = (of: Season): number => crop(of, `${figure} learned high`) - crop(of, `${figure} learned low`);
      expect(width(many)).toBeLessThan(width(few));
    }
    expect(crop(many, 'Yield observations')).toBe(40);
  });

  it('learn the warmth to harvest from the days that were picked', () => {
    const day = Number(opened([]).value('Plantings', 'Leaf', 'Harvest')) + 8;
    const late = opened([{ Planting: 'Leaf', On: isoDate(day), Amount: '5 kg' }]);
    const of = (column: string): number => late.number('Learned of varieties', 'Leaf', column) ?? Number.NaN;
    expect(of('Warmth to harvest noted')).toBeGreaterThan(of('Warmth to harvest in the library'));
    expect(of('Warmth to harvest observations')).toBe(1);
  });
});

describe('rates of work from the hours noted in Tasks', () => {
  const season = opened([]);
  const { book } = season;

  /** Notes hours on every job of a kind. */
  function note(job: string, hours: string): void {
    for (const row of [...book.rows('Tasks')].filter((one) => book.value('Tasks', one, 'Job') === job)) {
      const done = book.edit([{ edit: 'cell', table: 'Tasks', row, column: 'Hours taken', entry: hours }]);
      if (done.refused) throw new Error(done.why);
    }
  }

  it('are learned for sowing, setting out, weeding, washing; and taken over one by one', () => {
    expect(book.rows('Planting results').length).toBe(0);
    const planned = season.number('Plantings', 'Leaf', 'Packing hours') ?? Number.NaN;
    note('Sow', '0.5');
    note('Set out', '0.25');
    const weedings = [...book.rows('Tasks')].filter((one) => book.value('Tasks', one, 'Job') === 'Weed').length;
    note('Weed', '0.2');
    const washings = [...book.rows('Tasks')].filter(
      (one) => book.value('Tasks', one, 'Job') === 'Wash and pack',
    ).length;
    note('Wash and pack', String((2 * planned) / washings));
    const of = (column: string): number => season.number('Planting results', 'Leaf', column) ?? Number.NaN;
    const plan = (column: string): number => season.number('Plantings', 'Leaf', column) ?? Number.NaN;
    expect(of('Blocks sown')).toBeCloseTo(plan('Blocks to start') / 0.5, 6);
    expect(of('Plants set out')).toBeCloseTo(plan('Stations') / 0.25, 6);
    // All weedings timed: the area's own minutes, of 7.5 m2.
    expect(of('Weeding time')).toBeCloseTo((weedings * 0.2 * 60) / 7.5, 6);
    // Twice as long as planned is half the rate.
    expect(of('Packing rate')).toBeCloseTo((season.number('Crops', 'Lettuce, head', 'Packing rate') ?? 0) / 2, 6);
    const offers = learnedOffers(book.workbook);
    const blocks = offers.find(({ name }) => name === 'Farm, blocks made and sown');
    expect(blocks?.says).toMatch(/^600 1\/h in the library, \d+ 1\/h by 1 of your own; weighted \d+ 1\/h/);
    for (const name of ['Farm, plants set out', 'Lettuce, head, packing rate', 'Lettuce, head, weeding time']) {
      const offer = offers.find((one) => one.name === name);
      if (offer === undefined) throw new Error(`Nothing is offered of ${name}`);
      const act = takeOver(book.workbook, offer.sheet, offer.row, offer.column);
      if (!act.ok) throw new Error(act.why);
      expect(book.workbook.do(act.commands, act.message).refused).toBe(false);
    }
    const rate = season.number('Farm', '', 'Plants set out') ?? Number.NaN;
    expect(rate).toBeGreaterThan(Math.min(500, of('Plants set out')));
    expect(rate).toBeLessThan(Math.max(500, of('Plants set out')));
    // What was observed stays what it was: hours and amounts, whatever rate is planned with now.
    expect(of('Packing rate')).toBeCloseTo(
      (season.number('Crops', 'Lettuce, head', 'Packing rate by the library') ?? 0) / 2,
      6,
    );
    expect(errorsOf(book)).toEqual([]);
  });
});
