// Day length against published tables and against two astronomy libraries run beside it.
import { Body, MakeTime, Observer, SearchRiseSet } from 'astronomy-engine';
import { getSpa } from 'nrel-spa';
import { dayLength, dayLengthWithCivilTwilight, hoursOfSunWithin, sunrise } from '../../engine/agronomy/day-length.ts';
import { firstDateReaching, longestDay } from '../../engine/agronomy/day-length-dates.ts';
import { civilDay, dayOfYear, isoDate } from '../../engine/values/civil.ts';
import type { Fact, Point, Publication } from './check.ts';
import { FAO24, FAO56 } from './publications.ts';

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

const STROUS: Publication = {
  author: 'Strous, L.',
  year: 'undated, as it stands on the site',
  title: 'Astronomy Answers: The Position of the Sun: Tables',
  publisher: 'aa.quae.nl',
  url: 'https://aa.quae.nl/en/antwoorden/zonpositie-tabel.html',
};
const LUTHER: Publication = {
  author: 'Bernatz, R.',
  year: 'undated, a leap year by its figures',
  title: 'Decorah Weather: sunrise and sunset in September at 43.30 N, 91.79 W',
  publisher: 'Luther College, Decorah, Iowa',
  url: 'https://faculty.luther.edu/bernatzr/DecWx/Month09/Data/srssData_09.htm',
};
const NAVAL_TABLE: Publication = {
  author: 'U.S. Naval Observatory, Astronomical Applications Department',
  year: 2007,
  title: 'Duration of Daylight for 2007, San Francisco, California',
  publisher: 'U.S. Naval Observatory, Washington',
  url: 'https://aa.usno.navy.mil/data/Dur_OneYear',
};
const NAVAL_NOTE: Publication = {
  author: 'U.S. Naval Observatory',
  year: 2025,
  title: 'Sky note for Washington, D.C.',
  publisher: 'U.S. Naval Observatory, reprinted by Skyline News',
  url: 'https://skylinenews.world/?p=15519',
};
const ALMANAC: Publication = {
  author: 'U.S. Naval Observatory, Nautical Almanac Office',
  year: 1990,
  title: 'Almanac for Computers 1990',
  publisher: 'U.S. Naval Observatory, Washington',
};

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

function atDecorah(minutes: readonly number[], length: (latitude: number, civil: number) => number): readonly Point[] {
  return minutes.map((given, i) => ({
    what: `${i + 1} September 2008`,
    given,
    computed: () =>
      atLongitude((day) => length(DECORAH.latitude, day), civilDay(2008, 9, i + 1), DECORAH.longitude) * 60,
    tolerance: 1.5, // two times, each rounded to the minute; the year is inferred
  }));
}

interface City {
  readonly latitude: number;
  readonly longitude: number;
}

const SAN_FRANCISCO: City = { latitude: 37.77, longitude: -122.42 };
const WASHINGTON: City = { latitude: 38.9, longitude: -77.04 };

type Dated = readonly [date: readonly [number, number, number], hours: number];

function inCity({ latitude, longitude }: City, days: readonly Dated[]): readonly Point[] {
  return days.map(([date, hours]) => {
    const day = civilDay(...date);
    return {
      what: isoDate(day),
      given: hours * 60,
      computed: () => atLongitude((civil) => dayLength(latitude, civil), day, longitude) * 60,
      tolerance: 1.1, // difference of two times rounded to the minute, and of the place taken for the city
    };
  });
}

/** Hours by month, January first, 50 N to the equator. */
const MAXIMUM_SUNSHINE: readonly (readonly [latitude: number, hours: readonly number[]])[] = [
  [50, [8.5, 10.1, 11.8, 13.8, 15.4, 16.3, 15.9, 14.5, 12.7, 10.8, 9.1, 8.1]],
  [40, [9.6, 10.7, 11.9, 13.3, 14.4, 15.0, 14.7, 13.7, 12.5, 11.2, 10.0, 9.3]],
  [30, [10.4, 11.1, 12.0, 12.9, 13.6, 14.0, 13.9, 13.2, 12.4, 11.5, 10.6, 10.2]],
  [20, [11.0, 11.5, 12.0, 12.6, 13.1, 13.3, 13.2, 12.8, 12.3, 11.7, 11.2, 10.9]],
  [0, [12.1, 12.1, 12.1, 12.1, 12.1, 12.1, 12.1, 12.1, 12.1, 12.1, 12.1, 12.1]],
];

const monthlyHours = MAXIMUM_SUNSHINE.flatMap(([latitude, hours]) =>
  hours.map(
    (given, month): Point => ({
      what: `${latitude} N, month ${month + 1}`,
      given,
      computed: () => dayLength(latitude, civilDay(1977, month + 1, 15)),
      tolerance: 0.15, // printed to a tenth, for the middle of the month or its mean
    }),
  ),
);

const TEST_DATES: readonly (readonly [number, number, number])[] = [
  [2025, 2, 10],
  [2026, 5, 5],
  [2027, 6, 21],
  [2028, 8, 20],
  [2029, 12, 15],
];

const against = (hours: (latitude: number, civil: number) => number, latitudes: readonly number[]): readonly Point[] =>
  latitudes.flatMap((latitude) =>
    TEST_DATES.map((date): Point => {
      const day = civilDay(...date);
      return {
        what: `${isoDate(day)} at latitude ${latitude}`,
        given: hours(latitude, day) * 60,
        computed: () => dayLength(latitude, day) * 60,
        tolerance: Math.abs(latitude) <= 52 ? 0.25 : 0.6, // what the libraries agree to among themselves, doubled
      };
    }),
  );

const ENGINE = { name: 'astronomy-engine', version: '2.1.19 (D. Cross)' } as const;

const YEAR = 2025;
const FIRST_OF_YEAR = civilDay(YEAR, 1, 1);

const springs = [25, 30, 35, 38, 40, 45, 50, 55, 60].map((latitude) => ({
  latitude,
  lengths: Array.from({ length: 173 }, (_, i) => hoursByAstronomyEngine(latitude, FIRST_OF_YEAR + i)),
}));

const firstDates = springs.flatMap(({ latitude, lengths }) =>
  [12, 13, 14, 15, 16].flatMap((hours): readonly Point[] => {
    const index = lengths.findIndex((length) => length >= hours);
    if (index < 0) return [];
    return [
      {
        what: `${hours} h at ${latitude} N`,
        given: index + 1,
        computed: () => dayOfYear(firstDateReaching(latitude, hours, YEAR)),
        tolerance: 1, // a day lengthens by 1 to 6 minutes: agreement to 0.25 minute fixes it to the date or its neighbour
      },
    ];
  }),
);

const longestDays = springs.map(
  ({ latitude, lengths }): Point => ({
    what: `${latitude} N`,
    given: Math.max(...lengths) * 60,
    computed: () => longestDay(latitude, YEAR) * 60,
    tolerance: latitude <= 52 ? 0.25 : 0.6,
  }),
);

export const facts: readonly Fact[] = [
  {
    kind: 'published',
    fact: 'sunrise on 1 January 2002 by latitude, local mean time',
    unit: 'min',
    source: STROUS,
    at: 'Table 1',
    points: SUNRISES_OF_1_JANUARY_2002.map(([latitude, given]) => ({
      what: `latitude ${latitude}`,
      given,
      computed: () => sunrise(latitude, civilDay(2002, 1, 1)) * 60,
      tolerance: 1, // printed to the minute
    })),
  },
  {
    kind: 'published',
    fact: 'day length at Decorah, Iowa',
    unit: 'min',
    source: LUTHER,
    at: 'sunrise and sunset of each day of September',
    points: atDecorah(DECORAH_DAY, dayLength),
  },
  {
    kind: 'published',
    fact: 'day length with civil twilight at Decorah, Iowa',
    unit: 'min',
    source: LUTHER,
    at: 'begin and end of civil twilight of each day of September',
    points: atDecorah(DECORAH_WITH_TWILIGHT, dayLengthWithCivilTwilight),
  },
  {
    kind: 'published',
    fact: 'day length at San Francisco',
    unit: 'min',
    source: NAVAL_TABLE,
    at: 'five days of the table',
    points: inCity(SAN_FRANCISCO, [
      [[2007, 3, 5], clock(11, 31)],
      [[2007, 5, 27], clock(14, 30)],
      [[2007, 6, 18], clock(14, 47)],
      [[2007, 12, 18], clock(9, 33)],
      [[2007, 12, 25], clock(9, 33)],
    ]),
  },
  {
    kind: 'published',
    fact: 'day length at Washington',
    unit: 'min',
    source: NAVAL_NOTE,
    at: 'length of day on 13 January and 12 February 2025',
    points: inCity(WASHINGTON, [
      [[2025, 1, 13], clock(9, 42)],
      [[2025, 2, 12], clock(10, 40)],
    ]),
  },
  {
    kind: 'published',
    fact: 'sunrise on 25 June at Wayne, New Jersey, universal time',
    unit: 'min',
    source: ALMANAC,
    at: 'worked example, pages B5-B7',
    points: [
      {
        what: '40.9 N, 74.3 W',
        given: clock(9, 26) * 60,
        computed: () => (sunrise(40.9, civilDay(1990, 6, 25)) + 74.3 / 15) * 60,
        tolerance: 2, // its own stated accuracy
      },
    ],
  },
  {
    kind: 'published',
    fact: "hours with the sun's centre above the horizon at 20 S",
    unit: 'h',
    source: FAO56,
    at: 'chapter 3, example 9 (equation 34)',
    points: [
      {
        what: '3 September',
        given: 11.7,
        computed: () => hoursOfSunWithin(90, -20, civilDay(2025, 9, 3)),
        tolerance: 0.1, // printed to a tenth, from a plainer formula for the declination
      },
    ],
  },
  {
    kind: 'published',
    fact: 'greatest possible hours of sunshine by month and latitude',
    unit: 'h',
    source: FAO24,
    at: 'table of mean daily maximum hours of sunshine (N), northern latitudes',
    points: monthlyHours,
  },
  {
    kind: 'library',
    fact: 'day length by a planetary theory',
    unit: 'min',
    program: { ...ENGINE, call: 'SearchRiseSet' },
    points: against(hoursByAstronomyEngine, [-65, -60, -45, -33, -15, 0, 15, 25, 33, 38, 45, 52, 60, 65]),
  },
  {
    kind: 'library',
    fact: 'day length by the Solar Position Algorithm',
    unit: 'min',
    program: { name: 'nrel-spa', version: '2.0.2', call: 'getSpa, after Reda & Andreas 2004' },
    points: against(hoursBySolarPositionAlgorithm, [-60, -45, -33, 0, 25, 38, 45, 52, 60, 65]),
  },
  {
    kind: 'library',
    fact: `first day of ${YEAR} with so many hours`,
    unit: 'day of year',
    program: { ...ENGINE, call: 'SearchRiseSet, day after day' },
    points: firstDates,
  },
  {
    kind: 'library',
    fact: `longest day of ${YEAR}`,
    unit: 'min',
    program: { ...ENGINE, call: 'SearchRiseSet, day after day' },
    points: longestDays,
  },
];
