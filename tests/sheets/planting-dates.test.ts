// Dates from what is wanted: every crop of the library in an empty season at 36, 43 and 52 north and, the climate turned round
// by half a year, at 36 south. One date is typed, or none, and the others follow.

import { describe, expect, it } from 'vitest';
import { isoDate, yearMonthDay } from '../../engine/index.ts';
import { libraryRows } from '../../sheets-templates/library/library.ts';
import { latitudeOf, monthsOf } from '../reference/calendars.ts';
import { errorsOf, type Season, seasonOf } from './season.ts';

const CROPS = libraryRows().map((row) => row.Crop ?? '');
type Row = Readonly<Record<string, string>>;

/** The months of a place as they would be half a year on, on the other side of the equator. */
function turnedRound(months: readonly Row[]): readonly Row[] {
  return months.map((row, i) => ({ ...row, Month: months[(i + 6) % 12]?.Month ?? '' }));
}

interface Place {
  readonly name: string;
  readonly latitude: number;
  readonly months: readonly Row[];
}

function placeOf(name: string): Place {
  return { name, latitude: latitudeOf(name), months: monthsOf(name) };
}

const RALEIGH = placeOf('Raleigh NC');
const SOUTH: Place = { name: 'Raleigh turned round', latitude: -RALEIGH.latitude, months: turnedRound(RALEIGH.months) };
const PLACES = [RALEIGH, placeOf('Madison WI'), placeOf('Oxford UK'), SOUTH];

/** No frost and no winter, but months too hot for most crops: as on a coast of the inner tropics. */
const TROPICS: Place = {
  name: 'a hot coast',
  latitude: 10,
  months: RALEIGH.months.map((row, month) => ({
    ...row,
    Low: '23 degC',
    High: `${[31, 32, 33, 33, 32][month] ?? 30} degC`,
  })),
};

function seasonAt({ latitude, months }: Place, plantings: readonly Row[], farm: Row = {}): Season {
  const varieties = CROPS.map((crop) => ({
    Variety: crop,
    Crop: crop,
    ...(crop === 'Onion, bulb' ? { 'Day-length type': Math.abs(latitude) < 38 ? 'intermediate' : 'long' } : {}),
  }));
  const rows = { 'Monthly climate': months, Varieties: varieties, Plantings: plantings };
  return seasonOf(rows, { Latitude: String(latitude), ...farm }, { units: 'si' });
}

/** Each crop once, with no date. */
const EACH = CROPS.map((crop) => ({ Planting: crop, Variety: crop }));

const dateOf = (season: Season, planting: string, column: string): number | undefined => {
  const value = season.value('Plantings', planting, column);
  return typeof value === 'number' ? value : undefined;
};

const alone = new Map(PLACES.map((place) => [place.name, seasonAt(place, EACH)]));

describe.each([placeOf('Gainesville FL'), TROPICS])('where winters are mild, at $name', (place) => {
  const season = seasonAt(place, EACH);

  it('what is proposed goes into the bed in the season planned, though its time had begun the year before', () => {
    const [first, last] = [season.value('Farm', '', 'Season starts'), season.value('Farm', '', 'Season ends')];
    for (const crop of CROPS) {
      const out = dateOf(season, crop, 'Planted out') ?? Number.NaN;
      expect(out, crop).toBeGreaterThanOrEqual(Number(first));
      expect(out, crop).toBeLessThanOrEqual(Number(last));
    }
    expect(CROPS.some((crop) => (dateOf(season, crop, 'Earliest in the bed') ?? Number.NaN) < Number(first))).toBe(
      true,
    );
  });

  it('what had its time only before the season waits for the next', () => {
    const waiting = CROPS.filter((crop) => season.value('Plantings', crop, 'Autumn crop') === true);
    expect(waiting.length).toBeGreaterThan(0);
    for (const crop of waiting) {
      const [out, latest] = [dateOf(season, crop, 'Planted out'), dateOf(season, crop, 'Latest in the bed')];
      expect(out, crop).toBeLessThanOrEqual(latest ?? Number.NaN);
    }
  });
});

describe('a season begun in the middle of the year', () => {
  const BEGUN = '2027-06-29';
  const season = seasonAt(placeOf('Madison WI'), EACH, { 'Nothing sown before': BEGUN });

  it('proposes nothing to be sown on a day gone by', () => {
    for (const crop of CROPS) {
      const sown = dateOf(season, crop, 'Sown') ?? dateOf(season, crop, 'Planted out') ?? Number.NaN;
      expect(isoDate(Math.floor(sown)) >= BEGUN, crop).toBe(true);
    }
  });

  it('takes the autumn for what spring is over for, and says which crops are too late', () => {
    const early = alone.get('Madison WI') ?? season;
    const later = CROPS.filter((crop) => season.value('Plantings', crop, 'Autumn crop') === true);
    expect(later.filter((crop) => early.value('Plantings', crop, 'Autumn crop') !== true).length).toBeGreaterThan(0);
    expect(season.says('Plantings', 'Tomato').join(' ')).toContain('cold');
  });

  it('leaves what a person typed', () => {
    const typed = seasonAt(
      placeOf('Madison WI'),
      [{ Planting: 'Tomato', Variety: 'Tomato', 'Planted out': '2027-05-30' }],
      { 'Nothing sown before': BEGUN },
    );
    expect(typed.shown('Plantings', 'Tomato', 'Planted out')).toBe('30 May 2027');
  });
});

describe.each(PLACES)('with no date typed at $name', (place) => {
  const season = alone.get(place.name) ?? seasonAt(place, []);
  const harvested = CROPS.filter((crop) => dateOf(season, crop, 'Harvest') !== undefined);

  it('the earliest sensible date stands in for every crop, in the season planned', () => {
    expect(errorsOf(season.book)).toEqual([]);
    const [first, last] = [season.value('Farm', '', 'Season starts'), season.value('Farm', '', 'Season ends')];
    for (const crop of CROPS) {
      const out = dateOf(season, crop, 'Planted out') ?? Number.NaN;
      expect(out, crop).toBeGreaterThanOrEqual(Number(first));
      expect(out, crop).toBeLessThanOrEqual(Number(last));
      expect(season.value('Plantings', crop, 'Dates from'), crop).toBe('earliest that makes sense');
      expect(season.says('Plantings', crop).join(' '), crop).not.toMatch(/Earlier than this crop|after the date/);
    }
    expect(harvested.length).toBeGreaterThan(0.85 * CROPS.length);
  });

  it('seed is sown as long before as plants are raised', () => {
    for (const crop of CROPS) {
      const [sown, out] = [dateOf(season, crop, 'Sown'), dateOf(season, crop, 'Planted out')];
      const seeded = season.value('Plantings', crop, 'From seed') === true;
      expect(sown === undefined, crop).toBe(!seeded);
      if (sown === undefined || out === undefined) continue;
      const weeks =
        season.value('Plantings', crop, 'Raised') === true ? season.number('Crops', crop, 'Weeks in propagation') : 0;
      expect(out - sown, crop).toBe(Math.round((weeks ?? 6) * 7));
    }
  });

  it('any one of the dates typed gives the others back', () => {
    const typed = (column: string): Season =>
      seasonAt(
        place,
        CROPS.flatMap((crop) => {
          const day = dateOf(season, crop, column);
          return day === undefined ? [] : [{ Planting: crop, Variety: crop, [column]: isoDate(day) }];
        }),
      );
    for (const column of ['Sown', 'Planted out']) {
      const again = typed(column);
      for (const crop of CROPS) {
        if (dateOf(season, crop, column) === undefined) continue;
        for (const other of ['Sown', 'Planted out', 'Harvest', 'Earliest in the bed']) {
          expect(dateOf(again, crop, other), `${crop}: ${other} from ${column}`).toBe(dateOf(season, crop, other));
        }
      }
    }
  });

  it('a harvest date wanted gives the latest planting that meets it', () => {
    const wanted = harvested.filter((crop) => season.value('Plantings', crop, 'Ripens by its own date') === false);
    const later = (crop: string): number => (dateOf(season, crop, 'Harvest') ?? 0) + 10;
    const again = seasonAt(
      place,
      wanted.map((crop) => {
        const cured = season.number('Crops', crop, 'Curing days') ?? 0;
        return { Planting: crop, Variety: crop, 'Wanted from': isoDate(later(crop) + cured) };
      }),
    );
    let met = 0;
    for (const crop of wanted) {
      const harvest = dateOf(again, crop, 'Harvest');
      if (harvest === undefined || dateOf(again, crop, 'Cold ends it') === harvest + 1) continue;
      const from = again.value('Plantings', crop, 'Dates from');
      if (from !== 'date wanted') continue;
      met += 1;
      expect(harvest, crop).toBeLessThanOrEqual(later(crop));
      const day = isoDate((dateOf(again, crop, 'Planted out') ?? 0) + 1);
      again.type('Plantings', crop, 'Planted out', day);
      const after = dateOf(again, crop, 'Harvest') ?? Number.POSITIVE_INFINITY;
      // A day later in the bed is too late, but for the days that coming up rounds away.
      expect(after, `${crop} planted ${day}`).toBeGreaterThan(later(crop) - 3);
      again.book.undo();
    }
    expect(met).toBeGreaterThan(0.6 * wanted.length);
  });
});

describe('on the other side of the equator', () => {
  it('every date lies half a year on', () => {
    const [north, south] = [alone.get(RALEIGH.name), alone.get(SOUTH.name)];
    for (const crop of CROPS) {
      const [there, here] = [
        dateOf(north as Season, crop, 'Planted out') ?? 0,
        dateOf(south as Season, crop, 'Planted out') ?? 0,
      ];
      expect(Math.abs(here - there - 182.5), `${crop} ${isoDate(there)} ${isoDate(here)}`).toBeLessThan(6);
    }
  });
});

describe('dates a grower would nod at, none typed', () => {
  const month = (place: Place, crop: string, column: string): string => {
    const day = dateOf(alone.get(place.name) as Season, crop, column);
    if (day === undefined) return 'never';
    const { month: at, day: of } = yearMonthDay(day);
    return `${at}.${of <= 10 ? 'early' : of <= 20 ? 'mid' : 'late'}`;
  };
  const [raleigh, madison, oxford] = PLACES as [Place, Place, Place];

  it('sets tomatoes out after the last frost and digs garlic in summer', () => {
    expect(month(raleigh, 'Tomato', 'Planted out')).toBe('4.mid');
    expect(month(madison, 'Tomato', 'Planted out')).toBe('5.late');
    expect(month(madison, 'Garlic', 'Planted out')).toBe('10.early');
    expect(month(oxford, 'Garlic', 'Planted out')).toBe('10.mid');
  });

  it('leaves crops that hate heat for the autumn in the south, and sows them in spring in the north', () => {
    expect(month(raleigh, 'Rutabaga', 'Planted out')).toBe('6.mid');
    expect(month(raleigh, 'Brussels sprouts', 'Planted out')).toBe('6.early');
    expect(month(oxford, 'Brussels sprouts', 'Planted out')).toBe('3.mid');
    expect(month(raleigh, 'Potato', 'Planted out')).toBe('3.early');
  });
});
