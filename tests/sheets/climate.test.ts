// The weather sheets: a station's file made into the average year and its frosts, twelve months made into days, both against
// plain sums over the same data and against a statistics library.

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import { mean, std } from 'mathjs';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { civilDay, isoDate, readStationCsv } from '../../engine/index.ts';
import { splitCsv } from '../../ui/csv-splitter.ts';
import { type Season, seasonOf } from './season.ts';

/** Four years of a NOAA station, 2012 to 2015, as vega-datasets carries them (degC). */
const FILE = readFileSync(
  join(import.meta.dirname, '../../node_modules/vega-datasets/data/seattle-weather.csv'),
  'utf8',
);

interface Reading {
  readonly date: string;
  readonly temp_max: string;
  readonly temp_min: string;
}

const READINGS = Papa.parse<Reading>(FILE, { header: true, skipEmptyLines: true }).data;

/** The same readings as a station's file of its own, each temperature written by `as`. */
function stationFile(header: string, as: (celsius: number) => string, rows = READINGS): string {
  return [header, ...rows.map((row) => `${row.date},${as(Number(row.temp_max))},${as(Number(row.temp_min))}`)].join(
    '\n',
  );
}

function meanOf(pick: 'temp_max' | 'temp_min', ending: string): number {
  const values = READINGS.filter(({ date }) => date.endsWith(ending)).map((row) => Number(row[pick]));
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Days after 1 January of the last or first low at or below `threshold`, year by year; years without one are left out. */
function frostDays(half: 'spring' | 'autumn', threshold: number): readonly number[] {
  return ['2012', '2013', '2014', '2015'].flatMap((year) => {
    const frosts = READINGS.filter(({ date, temp_min }) => {
      const inHalf = half === 'spring' ? date.slice(5) < '08' : date.slice(5) >= '08';
      return date.startsWith(year) && inHalf && Number(temp_min) <= threshold;
    });
    const found = half === 'spring' ? frosts.at(-1) : frosts[0];
    if (found === undefined) return [];
    return [(Date.parse(found.date) - Date.parse(`${year}-01-01`)) / 86_400_000];
  });
}

function spread(days: readonly number[]): { readonly mean: number; readonly deviation: number } {
  const mean = days.reduce((sum, day) => sum + day, 0) / days.length;
  return { mean, deviation: Math.sqrt(days.reduce((sum, day) => sum + (day - mean) ** 2, 0) / (days.length - 1)) };
}

function imported(text: string): { readonly season: Season; readonly notes: readonly string[] } {
  const season = seasonOf({}, { Latitude: '47.5' }, { units: 'si' });
  const done = season.book.importCsv('Climate', text);
  if (!done.ok) throw new Error(done.why);
  return { season, notes: done.notes };
}

describe("a station's daily file", () => {
  const { season, notes } = imported(FILE);

  it('gives each day of the year the mean of its years', () => {
    for (const ending of ['01-01', '03-15', '07-04', '08-11', '12-31']) {
      const row = dayName(`2027-${ending}`);
      expect(season.number('Climate', row, 'Low')).toBeCloseTo(meanOf('temp_min', ending), 2);
      expect(season.number('Climate', row, 'High')).toBeCloseTo(meanOf('temp_max', ending), 2);
    }
    expect(notes[0]).toBe('The mean of 1461 days, 2012 to 2015.');
  });

  it('puts the frosts of every year into Frost years', () => {
    expect([...season.book.rows('Frost years')].length).toBe(4);
    for (const [column, half, threshold] of [
      ['Last frost', 'spring', 0],
      ['First frost', 'autumn', 0],
      ['Last hard frost', 'spring', -2],
      ['First hard frost', 'autumn', -2],
    ] as const) {
      const dates = [...season.book.rows('Frost years')].flatMap((row) => {
        const day = season.book.value('Frost years', row, column);
        const year = Number(season.book.rowName('Frost years', row));
        return typeof day === 'number' ? [day - civilDay(year, 1, 1)] : [];
      });
      expect(dates, column).toEqual(frostDays(half, threshold));
    }
  });

  it('gives the chance of frost by date as the normal distribution of a statistics library', () => {
    const spring = spread(frostDays('spring', 0));
    const autumn = spread(frostDays('autumn', 0));
    for (const [date, day] of [
      ['2027-02-15', 45],
      ['2027-03-01', 59],
      ['2027-03-20', 78],
    ] as const) {
      const chance = season.number('Climate', dayName(date), 'Spring frost to come') ?? Number.NaN;
      expect(chance / 100).toBeCloseTo(1 - normalCdf(day, spring.mean, spring.deviation), 9);
    }
    const come = season.number('Climate', dayName('2027-11-15'), 'Autumn frost come') ?? Number.NaN;
    expect(come / 100).toBeCloseTo(normalCdf(318, autumn.mean, autumn.deviation), 9);
  });

  it('counts a year without a hard frost as one', () => {
    const hard = frostDays('autumn', -2);
    expect(hard.length).toBe(3);
    const { mean, deviation } = spread(hard);
    const come = season.number('Climate', dayName('2027-12-01'), 'Hard autumn frost come') ?? Number.NaN;
    expect(come / 100).toBeCloseTo(0.75 * normalCdf(334, mean, deviation), 9);
  });

  it("sets the farm's frost dates at the risk accepted, until a person types them", () => {
    const { mean, deviation } = spread(frostDays('spring', 0));
    const day = civilDay(2027, 1, 1) + Math.ceil(mean + normalQuantile(0.9, 0, deviation));
    expect(season.value('Farm', '', 'Last frost')).toBe(day);
    season.type('Farm', '', 'Frost risk accepted', '50%');
    expect(season.value('Farm', '', 'Last frost')).toBe(civilDay(2027, 1, 1) + Math.ceil(mean));
    season.type('Farm', '', 'Last frost', '2027-04-20');
    expect(season.value('Farm', '', 'Last frost')).toBe(civilDay(2027, 4, 20));
  });

  it('tells by how much each month differed, by year and between years', () => {
    // Monthly means and their sample deviation from the readings themselves, by mathjs.
    const means = ['2012', '2013', '2014', '2015'].map((year) =>
      Number(
        mean(
          READINGS.filter(({ date }) => date.startsWith(`${year}-05`)).map(
            (row) => (Number(row.temp_max) + Number(row.temp_min)) / 2,
          ),
        ),
      ),
    );
    expect(season.number('Monthly climate', 'May', 'Year to year')).toBeCloseTo(Number(std(means)), 3);
    expect(season.number('Frost years', '2015', 'May warmer')).toBeCloseTo(
      (means[3] ?? Number.NaN) - Number(mean(means)),
      3,
    );
  });

  it('is one step of undo', () => {
    const fresh = imported(FILE).season;
    fresh.book.undo();
    expect([...fresh.book.rows('Frost years')].length).toBe(0);
    expect(fresh.value('Climate', dayName('2027-07-04'), 'High')).toBeNull();
  });
});

describe('units of a station', () => {
  const highest = (text: string): readonly [string, number] => {
    const read = readStationCsv(text, splitCsv);
    if (!read.ok) throw new Error(read.why);
    return [read.unit, Math.max(...read.year.highs)];
  };
  const celsius = highest(FILE)[1];

  it('reads degF, degC and tenths of degC alike, from the header or from a year of readings', () => {
    const fahrenheit = (value: number): string => ((value * 9) / 5 + 32).toFixed(4);
    const tenths = (value: number): string => (value * 10).toFixed(0);
    for (const [header, as, unit] of [
      ['DATE,TMAX (degF),TMIN (degF)', fahrenheit, 'degF'],
      ['DATE,TMAX,TMIN', fahrenheit, 'degF'],
      ['DATE,TMAX_F,TMIN_F', fahrenheit, 'degF'],
      ['DATE,TMAX (tenths of degC),TMIN', tenths, 'tenths of degC'],
      ['DATE,TMAX,TMIN', tenths, 'tenths of degC'],
      ['DATE,TMAX (°C),TMIN (°C)', String, 'degC'],
    ] as const) {
      const [found, high] = highest(stationFile(header, as));
      expect(found, header).toBe(unit);
      expect(high).toBeCloseTo(celsius, 3);
    }
  });

  it('asks for the unit where a few days cannot tell it', () => {
    const read = readStationCsv(stationFile('DATE,TMAX,TMIN', String, READINGS.slice(0, 40)), splitCsv);
    expect(read.ok).toBe(false);
    expect(read.ok ? '' : read.why).toMatch(/TMAX \(degC\), TMAX \(degF\)/);
    expect(readStationCsv(stationFile('DATE,TMAX (degC),TMIN', String, READINGS.slice(0, 40)), splitCsv).ok).toBe(true);
  });
});

describe('a station south of the equator', () => {
  it('is known by its warm January, and has its last frost in the second half of the year', () => {
    const half = 184;
    const shifted = READINGS.map((row) => ({
      ...row,
      date: new Date(Date.parse(row.date) + half * 86_400_000).toISOString().slice(0, 10),
    }));
    const read = readStationCsv(stationFile('DATE,TMAX (degC),TMIN (degC)', String, shifted), splitCsv);
    if (!read.ok) throw new Error(read.why);
    expect(read.southern).toBe(true);
    const [year] = read.frosts.filter((frost) => frost.year === 2013);
    const north = READINGS.filter(
      ({ date, temp_min }) => date < '2013-08-01' && date > '2013-01-01' && Number(temp_min) <= 0,
    );
    expect(year?.lastSpring).toBe(Date.parse(north.at(-1)?.date ?? '') / 86_400_000 + half);
  });
});

describe('gaps and faults of a station', () => {
  const without = (from: number, to: number): string =>
    stationFile(
      'DATE,TMAX (degC),TMIN (degC)',
      String,
      READINGS.map((row, index) =>
        index >= from && index < to ? { ...row, temp_max: '-9999', temp_min: '-9999' } : row,
      ),
    );

  it('fills three days by a straight line, names them, and leaves twenty open', () => {
    const three = imported(without(200, 203)).notes.join(' ');
    expect(three).toContain('Gaps filled by a straight line between their neighbours: 19 Jul 2012 to 21 Jul 2012.');
    const twenty = imported(without(200, 220)).notes.join(' ');
    expect(twenty).toContain('Gaps left open, too long to fill: 19 Jul 2012 to 7 Aug 2012.');
  });

  it('takes no frost date from a half-year with more than a tenth of its days missing', () => {
    const { season } = imported(without(20, 60));
    const row = season.book.rowOf('Frost years', '2012') ?? -1;
    expect(season.book.value('Frost years', row, 'Last frost')).toBeNull();
    expect(season.book.value('Frost years', row, 'Spring known')).toBe(false);
    expect(season.book.value('Frost years', row, 'Autumn known')).toBe(true);
  });

  it('refuses with line and reason, and writes nothing', () => {
    const season = seasonOf({});
    const refused = (text: string): string => {
      const done = season.book.importCsv('Climate', text);
      return done.ok ? 'taken' : done.why;
    };
    const header = 'DATE,TMAX (degC),TMIN (degC)\n2015-01-01,5,1\n';
    expect(refused(`${header}soon,5,1`)).toMatch(/^Line 3: “soon” is no date/);
    expect(refused(`${header}2015-01-02,warm,1`)).toMatch(/^Line 3: “warm” is no temperature/);
    expect(refused(`${header}2015-01-01,6,2`)).toMatch(/^Line 3: this day stands in line 2 already/);
    expect(refused('STATION,DATE,TMAX (degC),TMIN\nA,2015-01-01,5,1\nB,2015-01-02,5,1')).toMatch(/second station/);
    expect([...season.book.rows('Frost years')].length).toBe(0);
  });

  it('leaves out a day whose low stands above its high, and says which line', () => {
    const rows = READINGS.map((row, index) => (index === 9 ? { ...row, temp_max: '-1', temp_min: '4' } : row));
    expect(imported(stationFile('DATE,TMAX (degC),TMIN (degC)', String, rows)).notes.join(' ')).toMatch(
      /above the high: 11/,
    );
  });
});

describe('twelve months', () => {
  it('become days that keep each mean, for temperatures and for water', () => {
    const months = READINGS.reduce<number[][]>((all, row) => {
      const month = Number(row.date.slice(5, 7)) - 1;
      all[month] = [...(all[month] ?? []), Number(row.temp_max)];
      return all;
    }, []).map((values) => values.reduce((sum, value) => sum + value, 0) / values.length);
    const names = 'January February March April May June July August September October November December'.split(' ');
    const season = seasonOf(
      {
        'Monthly climate': names.map((Month, index) => ({
          Month,
          Low: '0 degC',
          High: `${months[index]} degC`,
          'Reference evapotranspiration': `${1 + index / 4} mm/day`,
          Rain: '62 mm',
        })),
      },
      {},
      { units: 'si' },
    );
    for (const [index, mean] of months.entries()) {
      const days = [...season.book.rows('Climate')].filter((row) => {
        const day = season.book.value('Climate', row, 'Day');
        return typeof day === 'number' && Number(isoDate(day).slice(5, 7)) === index + 1;
      });
      const sum = days.reduce(
        (total, row) => total + (season.book.cell('Climate', row, 'High').number ?? Number.NaN),
        0,
      );
      expect(sum / days.length).toBeCloseTo(mean, 6);
    }
    expect(season.number('Weather by week', '1 Jan 2027', 'Rain')).toBeCloseTo((62 * 7) / 31, 9);
  });

  it('typed in the other scale are noticed', () => {
    const summers = [12, 13, 16, 19, 23, 27, 29, 29, 26, 21, 16, 12];
    const names = 'January February March April May June July August September October November December'.split(' ');
    const said = (units: 'us' | 'si', high: (celsius: number) => string): readonly string[] => {
      const months = names.map((Month, index) => ({ Month, High: high(summers[index] ?? 0) }));
      const season = seasonOf({ 'Monthly climate': months }, {}, { units });
      return names.flatMap((name) => season.says('Monthly climate', name));
    };
    expect(said('us', String)).toEqual([
      expect.stringMatching(/^Even the warmest month is too cold .* typed in Celsius\?/),
      expect.stringMatching(/^Even the warmest month is too cold .* typed in Celsius\?/),
    ]);
    expect(said('si', (celsius) => String(celsius * 1.8 + 32))[0]).toMatch(/^Hotter than any month .* in Fahrenheit\?/);
    expect(said('us', (celsius) => `${celsius} °C`)).toEqual([]);
    expect(said('si', String)).toEqual([]);
  });
});

/** '15 Mar 2027', as rows of days are named. */
function dayName(iso: string): string {
  const [year, month, day] = iso.split('-').map(Number);
  const names = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');
  return `${day} ${names[(month ?? 1) - 1]} ${year}`;
}
