// What the workbook says beside what trials, calendars and records measured, where it is off too: the table in the README.
// readme.test.ts compares them.

import { cropYield } from '../../engine/agronomy/yield-density.ts';
import { isoDate } from '../../engine/index.ts';
import { seasonOf } from '../sheets/season.ts';
import { CALENDARS } from './calendar-publications.ts';
import { autumn, earliest, harvests, latest, median, shareWithin } from './calendars.ts';
import { facts as harvestFacts } from './harvest.checks.ts';
import { onionLevels } from './yields.checks.ts';

interface Line {
  readonly what: string;
  readonly measured: string;
  readonly workbook: string;
  readonly off: string;
  readonly source: string;
}

const TONNES_A_HECTARE = 10;

const library = seasonOf({}, { Latitude: '' }, { units: 'si' });

/** Yield (kg/m2) of a stand by the library's curve of the crop. */
function curveYield(crop: string, density: number): number {
  const figure = (column: string): number => library.number('Crops', crop, column) ?? Number.NaN;
  return cropYield(density, figure('Isolated plant mass') / 1000, figure('Ceiling yield'));
}

function percent(computed: number, measured: number): string {
  const off = Math.round((100 * (computed - measured)) / measured);
  return `${off > 0 ? '+' : ''}${off} %`;
}

interface Trial {
  readonly crop: string;
  readonly what: string;
  readonly density: number;
  readonly yield: number;
  readonly source: string;
}

const CHUNG = 'Chung 1985, Tasmania';

/** Evenly spaced, without beds and paths between. */
const TRIALS: readonly Trial[] = [
  { crop: 'Broccoli', what: 'broccoli, 2.8 plants/m2', density: 2.8, yield: 1.2, source: CHUNG },
  { crop: 'Broccoli', what: 'broccoli, 8.3 plants/m2', density: 8.3, yield: 2.3, source: CHUNG },
];

/** Trials weighed as fields: the workbook's beds are reckoned with their paths, and what sells beside what was sold. */
function onions(): readonly Line[] {
  return onionLevels.flatMap(({ fact, source, points }) =>
    points.map(({ what, given, computed: compute }) => {
      const computed = compute();
      return {
        what: `${fact}, ${what}`,
        measured: `${(given / TONNES_A_HECTARE).toFixed(1)} kg/m2`,
        workbook: `${(computed / TONNES_A_HECTARE).toFixed(1)} kg/m2`,
        off: percent(computed, given),
        source: `${source.author} ${source.year}`,
      };
    }),
  );
}

function yields(): readonly Line[] {
  return TRIALS.map(({ crop, what, density, yield: measured, source }) => {
    const computed = curveYield(crop, density);
    return {
      what: `yield of ${what}`,
      measured: `${measured.toFixed(1)} kg/m2`,
      workbook: `${computed.toFixed(1)} kg/m2`,
      off: percent(computed, measured),
      source,
    };
  });
}

function dates(): readonly Line[] {
  const spring = earliest();
  const rows = [
    ['earliest date in the bed', spring],
    ['latest date in the bed', latest()],
    ['start of the autumn crop, 30 to 36 N', autumn()],
  ] as const;
  const worst = spring.reduce((most, row) => (Math.abs(row.late) > Math.abs(most.late) ? row : most));
  const cuts = harvests();
  const outside = cuts.map((cut) => cut.outside);
  const never = outside.filter(Number.isNaN).length;
  return [
    ...rows.map(([what, told]) => {
      const lates = told.map(({ late }) => late);
      return {
        what: `${what}, ${told.length} crops and places`,
        measured: 'printed calendars',
        workbook: `${Math.round(100 * shareWithin(lates, 21))} % within three weeks`,
        off: `${Math.round(median(lates.map(Math.abs)))} days (median)`,
        source: 'extension services and growers, ten places from 30 N to 65 N and 43 S',
      };
    }),
    {
      what: `worst of them: ${worst.crop.toLowerCase()}, ${worst.place}`,
      measured: isoDate(worst.published).slice(5),
      workbook: isoDate(worst.computed).slice(5),
      off: `${Math.round(worst.late)} days`,
      source: CALENDARS[worst.source]?.source.title ?? 'a page without a name',
    },
    {
      what: `first harvest, ${cuts.length} plantings`,
      measured: 'printed windows',
      workbook: `${Math.round(100 * shareWithin(outside, 14))} % within 14 days of the window`,
      off: `${Math.round(Math.max(...outside.filter((days) => !Number.isNaN(days))))} days (worst); ${never} get no harvest`,
      source: 'the same',
    },
  ];
}

function hours(): readonly Line[] {
  return harvestFacts
    .filter(({ unit }) => unit === 'h/ha')
    .flatMap(({ fact, points }) =>
      points.map(({ given, computed: compute }) => {
        const computed = compute();
        return {
          what: fact,
          measured: `${Math.round(given)} h/ha`,
          workbook: `${Math.round(computed / 10) * 10} h/ha`,
          off: percent(computed, given),
          source: 'J. Agric. Univ. Puerto Rico 6832, bare soil, no supports; yields not printed',
        };
      }),
    );
}

/** The table as the README prints it. */
export function comparisonTable(): string {
  const lines = [...dates(), ...onions(), ...yields(), ...hours()];
  return [
    '| what | measured or printed | workbook | off by | source |',
    '| --- | --- | --- | --- | --- |',
    ...lines.map(
      ({ what, measured, workbook, off, source }) => `| ${what} | ${measured} | ${workbook} | ${off} | ${source} |`,
    ),
  ].join('\n');
}
