// Day length against published tables and against two astronomy libraries run beside it.
import { Body, MakeTime, Observer, SearchRiseSet } from 'astronomy-engine';
import { getSpa } from 'nrel-spa';
import { dayLength, dayLengthWithCivilTwilight, hoursOfSunWithin, sunrise } from '../../engine/agronomy/day-length.ts';
import { firstDateReaching, longestDay } from '../../engine/agronomy/day-length-dates.ts';
import { civilDay, dayOfYear, isoDate } from '../../engine/values/civil.ts';
import type { Check } from './check.ts';

const MILLISECONDS_PER_DAY = 86_400_000;

/** Hours from sunrise to sunset around noon at longitude 0, by astronomy-engine. */
export function hoursByAstronomyEngine(latitude: number, civil: number): number {
  const place = new Observer(latitude, 0, 0);
  const noon = MakeTime(new Date((civil + 0.5) * MILLISECONDS_PER_DAY));
  const rise = SearchRiseSet(Body.Sun, place, 1, noon, -1);
  const set = SearchRiseSet(Body.Sun, place, -1, noon, 1);
  return rise === null || set === null ? Number.NaN : (set.ut - rise.ut) * 24;
}

/** Hours from sunrise to sunset at longitude 0, by the Solar Position Algorithm of NREL. */
export function hoursBySolarPositionAlgorithm(latitude: number, civil: number): number {
  const { sunrise: rise, sunset: set } = getSpa(new Date((civil + 0.5) * MILLISECONDS_PER_DAY), latitude, 0, 0);
  return set - rise;
}

// The day of a place west of Greenwich falls later: part of the way from this day's length to the next.
function atLongitude(length: (civil: number) => number, civil: number, longitude: number): number {
  return length(civil) + (length(civil + 1) - length(civil)) * (-longitude / 360);
}

const clock = (hours: number, minutes: number): number => hours + minutes / 60;

// Latitude and minutes after midnight, local mean time.
const SUNRISES_OF_1_JANUARY_2002: readonly (readonly [number, number])[] = [
  [-64, 103],
  [-62, 138],
  [-60, 163],
  [-58, 182],
  [-56, 199],
  [-54, 212],
  [-52, 224],
  [-50, 235],
  [-48, 245],
  [-46, 253],
  [-44, 261],
  [-42, 268],
  [-40, 275],
  [-38, 281],
  [-36, 287],
  [-34, 292],
  [-32, 297],
  [-30, 302],
  [-28, 307],
  [-26, 311],
  [-24, 316],
  [-22, 320],
  [-20, 324],
  [-18, 328],
  [-16, 332],
  [-14, 335],
  [-12, 339],
  [-10, 343],
  [-8, 346],
  [-6, 350],
  [-4, 353],
  [-2, 356],
  [0, 360],
  [2, 363],
  [4, 367],
  [6, 370],
  [8, 373],
  [10, 377],
  [12, 380],
  [14, 384],
  [16, 388],
  [18, 391],
  [20, 395],
  [22, 399],
  [24, 403],
  [26, 407],
  [28, 411],
  [30, 416],
  [32, 421],
  [34, 425],
  [36, 431],
  [38, 436],
  [40, 442],
  [42, 448],
  [44, 455],
  [46, 462],
  [48, 470],
  [50, 479],
];

const sunrises = SUNRISES_OF_1_JANUARY_2002.map(
  ([latitude, minutes]): Check => ({
    source: 'Strous, Astronomy Answers, The Position of the Sun: Tables, Table 1',
    what: `sunrise on 1 January 2002 at latitude ${latitude}, local mean time`,
    unit: 'min',
    published: minutes,
    computed: () => sunrise(latitude, civilDay(2002, 1, 1)) * 60,
    tolerance: 1, // printed to the minute
    standing: 'published',
  }),
);

// Minutes from sunrise to sunset on 1 to 30 September, from times rounded to the minute.
const DECORAH_DAY = [
  789, 787, 784, 781, 778, 776, 773, 769, 766, 763, 761, 758, 755, 752, 749, 747, 744, 740, 737, 734, 731, 729, 726,
  723, 720, 717, 714, 711, 708, 705,
];
const DECORAH_WITH_TWILIGHT = [
  849, 845, 842, 839, 836, 834, 831, 827, 824, 821, 818, 816, 813, 810, 806, 803, 800, 797, 795, 792, 789, 786, 782,
  779, 777, 774, 771, 768, 765, 762,
];
const DECORAH = { latitude: 43.3, longitude: -91.79 };
const DECORAH_SOURCE = 'Luther College, Decorah (Iowa) sunrise and sunset, September of a leap year';

const decorah = DECORAH_DAY.map(
  (minutes, i): Check => ({
    source: DECORAH_SOURCE,
    what: `day length on ${i + 1} September 2008 at 43.30 N, 91.79 W`,
    unit: 'min',
    published: minutes,
    computed: () =>
      atLongitude((day) => dayLength(DECORAH.latitude, day), civilDay(2008, 9, i + 1), DECORAH.longitude) * 60,
    tolerance: 1.5, // two times, each rounded to the minute; the year is inferred
    standing: 'published',
  }),
);

const decorahTwilight = DECORAH_WITH_TWILIGHT.map(
  (minutes, i): Check => ({
    source: DECORAH_SOURCE,
    what: `day length with civil twilight on ${i + 1} September 2008 at 43.30 N, 91.79 W`,
    unit: 'min',
    published: minutes,
    computed: () =>
      atLongitude(
        (day) => dayLengthWithCivilTwilight(DECORAH.latitude, day),
        civilDay(2008, 9, i + 1),
        DECORAH.longitude,
      ) * 60,
    tolerance: 1.5,
    standing: 'published',
  }),
).filter((_, i) => i % 5 === 0);

interface PublishedDay {
  readonly source: string;
  readonly latitude: number;
  readonly longitude: number;
  readonly date: readonly [number, number, number];
  readonly hours: number;
}

const SAN_FRANCISCO = {
  source: 'U.S. Naval Observatory, Duration of Daylight, San Francisco 2007',
  latitude: 37.77,
  longitude: -122.42,
};
const WASHINGTON = { source: 'U.S. Naval Observatory sky note, Washington 2025', latitude: 38.9, longitude: -77.04 };

const PUBLISHED_DAYS: readonly PublishedDay[] = [
  { ...SAN_FRANCISCO, date: [2007, 3, 5], hours: clock(11, 31) },
  { ...SAN_FRANCISCO, date: [2007, 5, 27], hours: clock(14, 30) },
  { ...SAN_FRANCISCO, date: [2007, 6, 18], hours: clock(14, 47) },
  { ...SAN_FRANCISCO, date: [2007, 12, 18], hours: clock(9, 33) },
  { ...SAN_FRANCISCO, date: [2007, 12, 25], hours: clock(9, 33) },
  { ...WASHINGTON, date: [2025, 1, 13], hours: clock(9, 42) },
  { ...WASHINGTON, date: [2025, 2, 12], hours: clock(10, 40) },
];

const publishedDays = PUBLISHED_DAYS.map(({ source, latitude, longitude, date, hours }): Check => {
  const day = civilDay(...date);
  return {
    source,
    what: `day length on ${isoDate(day)} at ${latitude} N, ${-longitude} W`,
    unit: 'min',
    published: hours * 60,
    computed: () => atLongitude((civil) => dayLength(latitude, civil), day, longitude) * 60,
    tolerance: 1.1, // difference of two times rounded to the minute, and of the place taken for the city
    standing: 'published',
  };
});

const examples: readonly Check[] = [
  {
    source: 'U.S. Naval Observatory, Almanac for Computers 1990, pages B5-B7, worked example',
    what: 'sunrise on 25 June at 40.9 N, 74.3 W, universal time',
    unit: 'min',
    published: clock(9, 26) * 60,
    computed: () => (sunrise(40.9, civilDay(1990, 6, 25)) + 74.3 / 15) * 60,
    tolerance: 2, // its own stated accuracy
    standing: 'published',
  },
  {
    source: 'Allen, Pereira, Raes & Smith 1998, FAO Irrigation and Drainage Paper 56, example of equation 34',
    what: "hours with the sun's centre above the horizon, 3 September, 20 S",
    unit: 'h',
    published: 11.7,
    computed: () => hoursOfSunWithin(90, -20, civilDay(2025, 9, 3)),
    tolerance: 0.1, // printed to a tenth, from a plainer formula for the declination
    standing: 'published',
  },
];

const TEST_DATES: readonly (readonly [number, number, number])[] = [
  [2025, 2, 10],
  [2026, 5, 5],
  [2027, 6, 21],
  [2028, 8, 20],
  [2029, 12, 15],
];

const against = (
  source: string,
  hours: (latitude: number, civil: number) => number,
  latitudes: readonly number[],
): readonly Check[] =>
  latitudes.flatMap((latitude) =>
    TEST_DATES.map((date): Check => {
      const day = civilDay(...date);
      return {
        source,
        what: `day length on ${isoDate(day)} at latitude ${latitude}`,
        unit: 'min',
        published: hours(latitude, day) * 60,
        computed: () => dayLength(latitude, day) * 60,
        tolerance: Math.abs(latitude) <= 52 ? 0.25 : 0.6, // what the libraries agree to among themselves, doubled
        standing: 'library',
      };
    }),
  );

const ENGINE_SOURCE = 'astronomy-engine 2.1.19 (D. Cross), SearchRiseSet';

const libraries = [
  ...against(ENGINE_SOURCE, hoursByAstronomyEngine, [-65, -60, -45, -33, -15, 0, 15, 25, 33, 38, 45, 52, 60, 65]),
  ...against(
    'nrel-spa 2.0.2, Solar Position Algorithm of Reda & Andreas 2004',
    hoursBySolarPositionAlgorithm,
    [-60, -45, -33, 0, 25, 38, 45, 52, 60, 65],
  ),
];

const YEAR = 2025;

const firstDates = [25, 30, 35, 38, 40, 45, 50, 55, 60].flatMap((latitude): readonly Check[] => {
  const firstOfYear = civilDay(YEAR, 1, 1);
  const spring = Array.from({ length: 173 }, (_, i) => hoursByAstronomyEngine(latitude, firstOfYear + i));
  const dates = [12, 13, 14, 15, 16].flatMap((hours): readonly Check[] => {
    const index = spring.findIndex((length) => length >= hours);
    if (index < 0) return [];
    return [
      {
        source: ENGINE_SOURCE,
        what: `first day of ${YEAR} with ${hours} h at ${latitude} N`,
        unit: 'day of year',
        published: index + 1,
        computed: () => dayOfYear(firstDateReaching(latitude, hours, YEAR)),
        tolerance: 1, // a day lengthens by 1 to 6 minutes: agreement to 0.25 minute fixes it to the date or its neighbour
        standing: 'library',
      },
    ];
  });
  return [
    ...dates,
    {
      source: ENGINE_SOURCE,
      what: `longest day of ${YEAR} at ${latitude} N`,
      unit: 'min',
      published: Math.max(...spring) * 60,
      computed: () => longestDay(latitude, YEAR) * 60,
      tolerance: latitude <= 52 ? 0.25 : 0.6,
      standing: 'library',
    },
  ];
});

export const checks: readonly Check[] = [
  ...sunrises,
  ...decorah,
  ...decorahTwilight,
  ...publishedDays,
  ...examples,
  ...libraries,
  ...firstDates,
];
