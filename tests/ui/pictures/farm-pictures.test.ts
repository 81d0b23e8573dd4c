// The pictures of the farm as models: every figure they draw is the workbook's, and a workbook without their sheets has none of them.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { civilDay, message, mondayOf } from '../../../engine/index.ts';
import {
  byFieldCommands,
  firstPlaces,
  groundOf,
  placeCommands,
  turnCommands,
} from '../../../ui/browser/pictures/bed-map/bed-ground.ts';
import { type BedMap, bedMap, standsWords } from '../../../ui/browser/pictures/bed-map/bed-map.ts';
import { plantsPerBlock, sownPlantings } from '../../../ui/browser/pictures/blocks/blocks.ts';
import { climateOfYear, cropsOf } from '../../../ui/browser/pictures/climate/climate.ts';
import { frostChances } from '../../../ui/browser/pictures/frost/frost.ts';
import { guessesOf, intervalsOf } from '../../../ui/browser/pictures/intervals/intervals.ts';
import { legendOf, overLimit, roundAxis, said, topOf, totalOf } from '../../../ui/browser/pictures/kit/model.ts';
import { dayOfWeek, mostInWeek, weekAt, weeksOf } from '../../../ui/browser/pictures/kit/weeks.ts';
import { PICTURES, picturesOf } from '../../../ui/browser/pictures/list.ts';
import { moneyByMonth } from '../../../ui/browser/pictures/money/money.ts';
import { benchByWeek, hoursByWeek, racksByWeek, roomPictures } from '../../../ui/browser/pictures/room/room.ts';
import { seasonCalendar } from '../../../ui/browser/pictures/season-calendar/season-calendar.ts';
import { moneyAgainstSpacing } from '../../../ui/browser/pictures/spacing/money.ts';
import { productsOf, supplyAgainstDemand } from '../../../ui/browser/pictures/supply/supply.ts';
import { ageingLots, seedViability } from '../../../ui/browser/pictures/viability/viability.ts';
import { opened } from '../../book.ts';
import { demoBook } from '../../browser/workbook-page.ts';
import { seasonOf } from '../../sheets/season.ts';

const demo = demoBook();
const { workbook } = demo;

const sum = (sheet: string, column: string, where: (row: number) => boolean = () => true): number =>
  [...demo.rows(sheet)].filter(where).reduce((all, row) => all + (demo.cell(sheet, row, column).number ?? 0), 0);

test('the demo has every picture, a workbook of other sheets none', () => {
  expect(picturesOf(workbook).map(({ id }) => id)).toEqual(PICTURES.map(({ id }) => id));
  const other = opened({ title: 'Other', units: 'si', currency: 'EUR', today: 0, rows: {}, sheets: [] });
  expect(picturesOf(other.workbook)).toEqual([]);
});

describe('weeks', () => {
  test('cover the season from Monday to Sunday', () => {
    const weeks = weeksOf({ first: civilDay(2027, 1, 1), last: civilDay(2027, 1, 20) });
    expect(weeks.map(({ from }) => from)).toEqual([0, 7, 14, 21].map((days) => civilDay(2026, 12, 28) + days));
  });

  test('a week is looked at on its Thursday, or on the day of the season that is nearest', () => {
    // A season from Friday, 15 October, to Thursday, 14 October.
    const season = { first: civilDay(2027, 10, 15), last: civilDay(2028, 10, 14) };
    const weeks = weeksOf(season);
    const [opening, next] = weeks;
    if (opening === undefined || next === undefined) throw new Error('There are no weeks.');
    expect(dayOfWeek(opening, season)).toBe(season.first);
    expect(dayOfWeek(next, season)).toBe(civilDay(2027, 10, 21));
    // Long before the season its first week is looked at, after it its last.
    expect(weekAt(weeks, civilDay(2027, 3, 1))).toBe(0);
    expect(weekAt(weeks, civilDay(2027, 10, 20))).toBe(1);
    expect(weekAt(weeks, civilDay(2029, 3, 1))).toBe(weeks.length - 1);
  });

  test('the fullest day of a week counts, and a last day does not', () => {
    const week = { from: 700, until: 707 };
    const spans = [
      { from: 690, until: 702, amount: 3 },
      { from: 701, until: 710, amount: 4 },
      { from: 702, until: 703, amount: 2 },
    ];
    expect(mostInWeek(spans, week)).toBe(7);
    expect(mostInWeek(spans, { from: 710, until: 717 })).toBe(0);
  });
});

describe('room and hands', () => {
  test('the bench is as full as on the fullest day of each week, and on Thursday as its sheet says', () => {
    const bench = benchByWeek(workbook);
    const between = (day: number, from: string, until: string) => (row: number) =>
      demo.value('Raising', row, from) !== null &&
      Number(demo.value('Raising', row, from)) <= day &&
      day < Number(demo.value('Raising', row, until));
    const on = (day: number): number =>
      sum('Raising', 'Area', between(day, 'On bench from', 'First trays until')) +
      sum('Raising', 'Area potted on', between(day, 'Pot on', 'On bench until'));
    const drawn = new Map(bench?.columns.map((column) => [column.from, totalOf(column)]));
    const weeks = [...demo.rows('Propagation')].map((row) => ({
      monday: Number(demo.value('Propagation', row, 'Week starts')),
      used: demo.cell('Propagation', row, 'Bench used').number ?? 0,
    }));
    expect(weeks.filter(({ used }) => used > 0).length).toBeGreaterThan(10);
    for (const { monday, used } of weeks) {
      expect(on(monday + 3)).toBeCloseTo(used, 6);
      expect(drawn.get(monday)).toBeCloseTo(Math.max(...[0, 1, 2, 3, 4, 5, 6].map((day) => on(monday + day))), 6);
    }
    expect(bench?.says).toMatch(/as full as its fullest day, where Propagation has what stands on the Thursday\.$/);
  });

  test('bench and racks stand beside the room there is', () => {
    const bench = benchByWeek(workbook);
    expect(bench?.columns.every(({ limit }) => limit === 160)).toBe(true);
    expect(racksByWeek(workbook)?.unit).toBe('ft²');
  });

  test('hours are those of the sheet, whatever part they are drawn in', () => {
    const hours = hoursByWeek(workbook);
    const drawn = (hours?.columns ?? []).reduce((all, column) => all + totalOf(column), 0);
    const first = hours?.columns[0]?.from ?? 0;
    const last = hours?.columns.at(-1)?.from ?? 0;
    const inPicture = (row: number): boolean => {
      const monday = Number(demo.value('Labour', row, 'Monday'));
      return monday >= first && monday <= last;
    };
    expect(drawn).toBeCloseTo(sum('Labour', 'Hours', inPicture), 6);
    expect(hours?.limitName).toBe('the hours there are');
    const alone = demoBook();
    for (const row of alone.rows('Hands')) {
      const edit = { edit: 'cell', table: 'Hands', row, column: 'Hours a week', entry: '' } as const;
      expect(alone.edit([edit]).refused).toBe(false);
    }
    expect(hoursByWeek(alone.workbook)?.limitName).toBeUndefined();
    expect(hoursByWeek(alone.workbook)?.says).toContain('How much there is has not been entered.');
  });

  test('a week past its limit is counted and said', () => {
    const book = demoBook();
    expect(book.edit([{ edit: 'cell', table: 'Farm', row: 0, column: 'Bench area', entry: '60 ft2' }]).refused).toBe(
      false,
    );
    const bench = benchByWeek(book.workbook);
    const over = bench === undefined ? [] : overLimit(bench);
    expect(over.length).toBeGreaterThan(0);
    expect(bench?.says).toContain(`More than there is in ${over.length} weeks`);
  });

  test('each picture reads place by place and as a table, one row a week', () => {
    for (const { title, columns, readings, table } of roomPictures(workbook)) {
      expect(readings.length, title).toBe(columns.length);
      expect(table.rows.length, title).toBe(columns.length);
      expect(
        table.rows.every((row) => row.length === table.head.length),
        title,
      ).toBe(true);
    }
  });
});

describe('stores far larger than what lies in them', () => {
  test('are named in words, and what has no line has no mark in the legend', () => {
    const stores = roomPictures(workbook).filter((model) => model.limitName === 'what it holds');
    const far = stores.filter((model) => (model.columns[0]?.limit ?? 0) > topOf(model));
    expect(far.length).toBeGreaterThan(0);
    for (const model of far) {
      expect(legendOf(model)).toEqual([]);
      const room = said(model.columns[0]?.limit ?? 0);
      expect(model.says).toContain(`There is room for ${room} ${model.unit}: no week wants more than there is.`);
    }
  });

  test('a line in sight has its mark, and what goes past it has one where something does', () => {
    const column = (part: number, limit: number) => ({ from: 0, until: 7, parts: [part], limit });
    const legend = (...columns: ReturnType<typeof column>[]) =>
      legendOf({ columns, parts: [], limitName: 'the room', limitIs: 'room' }).map(({ words }) => words);
    expect(legend(column(5, 10))).toEqual(['the room']);
    expect(legend(column(5, 4), column(1, 4))).toEqual(['the room', 'more than that']);
    expect(legend(column(5, 1000))).toEqual([]);
  });
});

describe('supply against demand', () => {
  test('a product’s weeks are those of its sheet', () => {
    const [product] = productsOf(workbook);
    if (product === undefined) throw new Error('The demo has no product.');
    const model = supplyAgainstDemand(workbook, product);
    const drawn = (model?.columns ?? []).reduce((all, column) => all + totalOf(column), 0);
    const rows = (row: number): boolean => demo.value('Supply against demand', row, 'Product') === product.slot;
    expect(drawn).toBeCloseTo(sum('Supply against demand', 'Supply', rows), 6);
    expect(model?.limitIs).toBe('wish');
  });
});

describe('money', () => {
  test('what comes in and goes out is what the months hold, and the sentence names the emptiest till', () => {
    const model = moneyByMonth(workbook);
    const total = (name: string): number =>
      model?.lines.find((line) => line.name === name)?.points.reduce((all, { y }) => all + y, 0) ?? 0;
    expect(total('comes in')).toBeCloseTo(sum('Months', 'Sales'), 4);
    expect(total('goes out')).toBeCloseTo(sum('Months', 'Costs'), 4);
    const tills = [...demo.rows('Months')].map((row) => demo.cell('Months', row, 'In the till').number ?? 0);
    const drawn = model?.lines[0]?.points.map(({ y }) => y) ?? [];
    expect(Math.min(...drawn)).toBeCloseTo(Math.min(...tills), 4);
    expect(model?.says).toContain('The till is emptiest');
  });

  test('the axis has marks at both ends and at 0, and room above what comes in', () => {
    const { from = 0, to = 0, marks = [] } = moneyByMonth(workbook)?.y ?? {};
    const figures = marks.map(({ figure }) => figure);
    const drawn = moneyByMonth(workbook)?.lines.flatMap(({ points }) => points.map(({ y }) => y)) ?? [];
    expect([figures[0], figures.at(-1)]).toEqual([from, to]);
    expect(figures).toContain(0);
    expect(figures.filter((figure) => figure > 0).length).toBeGreaterThan(0);
    expect(from).toBeLessThanOrEqual(Math.min(...drawn));
    expect(to).toBeGreaterThanOrEqual(Math.max(...drawn));
  });

  test('what the harvest is worth beyond what outlets take is told with the figure of the takings', () => {
    const worth = Number(
      /all of the harvest sold, ([\d,]+) USD/.exec(moneyByMonth(workbook)?.says ?? '')?.[1]?.replace(',', ''),
    );
    expect(worth).toBeCloseTo(sum('Plantings', 'Revenue this season'), -1);
    expect(worth).toBeGreaterThan(sum('Months', 'Sales'));
  });
});

describe('frost and climate', () => {
  test('the least and the most that a crop grows in have lines and marks of their own', () => {
    const marks = (climateOfYear(workbook, cropsOf(workbook)[0])?.lines ?? [])
      .filter(({ name }) => name.includes('grows in'))
      .map(({ mark }) => mark);
    expect(marks).toHaveLength(2);
    expect(new Set(marks).size).toBe(2);
  });

  test('chances fall in spring and rise in autumn, and plantings stand on the line', () => {
    const model = frostChances(workbook);
    const [spring, autumn] = model?.lines ?? [];
    const on = (line: typeof spring, day: number): number => line?.points.find(({ x }) => x === day)?.y ?? 0;
    const falling = spring?.points.map(({ y }) => y) ?? [];
    expect(falling).toEqual(falling.toSorted((a, b) => b - a));
    const rising = autumn?.points.map(({ y }) => y) ?? [];
    expect(rising).toEqual(rising.toSorted((a, b) => a - b));
    for (const { name, x, y } of model?.dots ?? []) {
      expect(Math.max(on(spring, x), on(autumn, x)), name).toBe(y);
    }
    expect(model?.dots.length).toBeGreaterThan(20);
  });

  test('a crop’s warmth is the library’s, and the days it likes are counted from the sheet', () => {
    const crop = cropsOf(workbook).find(({ name }) => name === 'Onion, bulb');
    const model = climateOfYear(workbook, crop);
    const best = model?.bands[1]?.points[0];
    expect([best?.low, best?.high].map((figure) => Math.round(figure ?? 0))).toEqual([55, 75]);
    const means = [...demo.rows('Climate')].map((row) => demo.cell('Climate', row, 'Mean').number ?? 0);
    const fit = means.filter((mean) => mean >= (best?.low ?? 0) && mean <= (best?.high ?? 0)).length;
    expect(model?.says).toContain(`best: ${fit} days`);
    expect(cropsOf(workbook)[0]?.name).toBe(demo.cell('Crops', cropsOf(workbook)[0]?.slot ?? -1, 'Crop').text);
  });
});

describe('how sure', () => {
  test('largest first, each between its own ends', () => {
    const [guess] = guessesOf(workbook);
    if (guess === undefined) throw new Error('Nothing has ends.');
    const model = intervalsOf(workbook, guess);
    const likely = model?.lines.map((line) => line.likely) ?? [];
    expect(likely.length).toBeGreaterThan(20);
    expect(likely).toEqual(likely.toSorted((a, b) => b - a));
    expect(model?.lines.every((line) => line.low <= line.likely && line.likely <= line.high)).toBe(true);
  });
});

describe('the map of beds', () => {
  const calendar = seasonCalendar(workbook, demo.today);
  if (calendar === undefined) throw new Error('There is no calendar.');
  const day = mondayOf(civilDay(2027, 6, 14)) + 3;
  const map = bedMap(workbook, calendar, day);
  const beds = map.fields.flatMap((field) => field.beds);

  test('every bed stands in its field, and what is free and taken makes its length', () => {
    expect(map.fields.map(({ name }) => name)).toEqual(['Barn', 'Creek', 'Orchard', 'Ridge']);
    expect(beds.length).toBe(demo.rows('Beds').length);
    for (const { name, length, pieces, free, over } of beds) {
      const taken = pieces.reduce((all, piece) => all + piece.length, 0);
      expect(taken + free - over, name).toBeCloseTo(length, 9);
    }
  });

  test('beds that are placed lie where they were put, the others south of them, and none is placed before', () => {
    expect(groundOf(map)).toBeUndefined();
    const { workbook: own } = demoBook();
    const mapNow = (): BedMap => {
      const now = seasonCalendar(own, demo.today);
      if (now === undefined) throw new Error('There is no calendar.');
      return bedMap(own, now, day);
    };
    const first = firstPlaces(own, mapNow());
    expect(first.map(({ bed }) => bed.name)).toEqual(beds.map(({ name }) => name));
    const [one] = first;
    if (one === undefined) throw new Error('There is no bed.');
    const put = { bed: one.bed, place: { east: 6.2, north: -3 } };
    expect(own.do(placeCommands(own, put), message('place bed', { row: one.bed.name })).refused).toBe(false);
    const ground = groundOf(mapNow());
    // On the step of two feet that is nearest.
    expect(ground?.beds[0]?.place.east).toBeCloseTo(20 * 0.3048, 6);
    expect(ground?.beds[0]?.place.north).toBeCloseTo(-10 * 0.3048, 6);
    expect(ground?.beds.length).toBe(beds.length);
    expect(ground?.beds.slice(1).every(({ place }) => place.north < -3.1)).toBe(true);
    // Turned, it runs to the south from there, and what has no place lies south of its end.
    own.do(turnCommands(one.bed), message('turn bed', { row: one.bed.name }));
    const turned = groundOf(mapNow());
    const southEnd = (ground?.beds[0]?.place.north ?? 0) - one.bed.length;
    expect(turned?.beds[0]?.bed.turned).toBe(true);
    expect(turned?.beds.slice(1).every(({ place }) => place.north < southEnd)).toBe(true);
    expect(turned?.tall).toBeCloseTo((ground?.tall ?? 0) + one.bed.length, 6);
    const again = mapNow().fields.flatMap((field) => field.beds)[0];
    if (again === undefined) throw new Error('There is no bed.');
    own.do(turnCommands(again), message('turn bed', { row: one.bed.name }));
    expect(groundOf(mapNow())?.tall).toBeCloseTo(ground?.tall ?? 0, 9);
    own.do(byFieldCommands(mapNow()), message('beds by field', {}));
    expect(groundOf(mapNow())).toBeUndefined();
  });

  test('on the Thursday of a week it shows what the bed calendar’s sheet says', () => {
    const stands = (bed: string): string => {
      const row = [...demo.rows('Bed calendar')].find(
        (each) =>
          demo.cell('Bed calendar', each, 'Bed').text === bed && demo.value('Bed calendar', each, 'Middle') === day,
      );
      return row === undefined ? '' : demo.cell('Bed calendar', row, 'Stands').text;
    };
    for (const { name, pieces } of beds) {
      const names = pieces.map((piece) => piece.name);
      const sheet = stands(name);
      expect(
        names.filter((each) => !sheet.includes(each)),
        name,
      ).toEqual([]);
      expect(names.join(', ').length, name).toBe(sheet.length);
    }
    const [first] = beds;
    expect(first === undefined ? '' : standsWords(workbook, first)).toBe('Keeper clumps (50 ft)');
  });
});

test('what stands on a bed is told apart into names and lengths, and those are as one lays a tape', () => {
  const { book } = seasonOf({
    Beds: [{ Bed: 'Bed 1', Length: '50 ft' }],
    Varieties: [{ Variety: 'Root', Crop: 'Carrot' }],
    Plantings: ['5.188 ft', '15 ft', '0.02 ft', '40 ft'].map((length, index) => ({
      Planting: `Salad ${index + 1}`,
      Variety: 'Root',
      Bed: 'Bed 1',
      Sown: '1 May 2027',
      'Planted out': '1 May 2027',
      'Bed length used': length,
    })),
  });
  const now = seasonCalendar(book.workbook, book.today);
  const [bed] = now === undefined ? [] : (bedMap(book.workbook, now, civilDay(2027, 5, 20)).fields[0]?.beds ?? []);
  if (bed === undefined) throw new Error('There is no bed.');
  expect(standsWords(book.workbook, bed).split(/, |; /).toSorted()).toEqual([
    '10.2 ft too much',
    'Salad 1 (5.2 ft)',
    'Salad 2 (15 ft)',
    'Salad 3 (0.02 ft)',
    'Salad 4 (40 ft)',
  ]);
});

describe('what pictures are made of', () => {
  test('an axis below and above 0 has a mark at each end, whatever the figures', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -50_000, max: 50_000 }), { minLength: 1 }), (figures) => {
        const { from, to, marks } = roundAxis(figures, 7);
        expect(marks[0]?.figure).toBeCloseTo(from, 6);
        expect(marks.at(-1)?.figure).toBeCloseTo(to, 6);
        expect(from).toBeLessThanOrEqual(Math.min(0, ...figures));
        expect(to).toBeGreaterThanOrEqual(Math.max(0, ...figures));
        expect(marks.length).toBeLessThanOrEqual(10);
      }),
    );
  });

  test('an axis ends on a round figure, and a limit far above everything does not flatten it', () => {
    const column = (part: number, limit?: number) => ({ from: 0, until: 7, parts: [part], limit });
    expect(topOf({ columns: [column(37)] })).toBe(40);
    expect(topOf({ columns: [column(37, 90)] })).toBe(100);
    expect(topOf({ columns: [column(37, 3000)] })).toBe(40);
    expect(overLimit({ columns: [column(5, 5), column(6, 5), column(6)] }).length).toBe(1);
  });

  test('figures are said with three digits at most, grouped as in cells', () => {
    expect([0, 12_345.6, 12.345, 0.012345, -2.71949].map((figure) => said(figure))).toEqual([
      '0',
      '12,346',
      '12.3',
      '0.0123',
      '-2.72',
    ]);
  });

  test('money against spacing names the best spacing', () => {
    const points = [2, 4, 6, 8].map((x) => ({ x, y: 100 - (x - 6) ** 2 * 30 }));
    const today = { x: 4, y: -20 };
    const model = moneyAgainstSpacing({ points, today, spacingUnit: 'in', money: 'USD' });
    expect(model?.says).toBe('Most is left over at 6 in: 100 USD. Now, 4 in: -20 USD.');
    expect(model?.dots).toEqual([{ name: '4 in: -20 USD', x: 4, y: -20 }]);
    expect(model?.y.from).toBeLessThanOrEqual(-380);
    expect(moneyAgainstSpacing({ points: points.slice(0, 1), today, spacingUnit: 'in', money: 'USD' })).toBeUndefined();
  });
});

test('plants in a block: the shares of all numbers make the whole, and the sentence has the figures of the row', () => {
  const [first] = sownPlantings(workbook);
  if (first === undefined) throw new Error('nothing is sown by the place');
  const { bars, says, table } = plantsPerBlock(workbook, first);
  expect(bars.reduce((all, { percent }) => all + percent, 0)).toBeCloseTo(100, 6);
  const seeds = demo.cell('Plantings', first.slot, 'Seeds per station').text;
  expect(says).toContain(`${first.name}, ${seeds} seeds a block`);
  expect(says).toContain(`${demo.cell('Plantings', first.slot, 'Plants per station').text} plants on average`);
  expect(table.rows).toHaveLength(6);
});

test('seed with age: a lot never gains, and stands where its row says on the day it is sown', () => {
  const lots = ageingLots(workbook);
  const lot = lots[1];
  if (lot === undefined) throw new Error('the demo has no lots');
  const model = seedViability(workbook, lot.id);
  const [line] = model?.lines ?? [];
  expect(line?.name).toBe(lot.name);
  const figures = line?.points.map(({ y }) => y) ?? [];
  expect(figures.length).toBeGreaterThan(10);
  expect(figures.every((y, at) => at === 0 || y <= (figures[at - 1] ?? 0))).toBe(true);
  const [sown] = model?.dots ?? [];
  expect(sown?.y).toBeCloseTo(demo.cell('Seed lots', lot.slot, 'Germination at sowing').number ?? 0, 6);
  expect(model?.table.rows).toHaveLength(Math.min(lots.length, 9));
  expect(model?.says).toMatch(/^.+ germinated \d+% when last known/);
});
