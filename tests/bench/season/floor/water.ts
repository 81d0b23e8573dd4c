// The floor, water: what each planting takes in each week (FAO-56), what is to be given, and all beds together by week. The columns
// stand in water.ts of the templates. Every month has its rain and evapotranspiration.

import { calendarIndex } from '../../../../engine/agronomy/climate.ts';
import { dailyFromMonthlyMeans } from '../../../../engine/agronomy/monthly-means.ts';
import { coefficientDays, cropCoefficient, scaledStages } from '../../../../engine/agronomy/water.ts';
import { civilDay, yearMonthDay } from '../../../../engine/values/civil.ts';
import { type ByWeek, WeeksOfRows } from './by-week.ts';
import { type Columns, columnOf, type Inputs, isBlank } from './inputs.ts';
import { type Part, type Weeks, weeksOf } from './part.ts';

export interface Water extends Part {
  /** Of each planting in each week. */
  readonly columns: ReadonlyMap<string, ByWeek>;
  readonly byWeek: Columns;
}

export function waterOf(inputs: Inputs, columns: Columns, weeks: Weeks): Water {
  const { count, varietyOf } = inputs;
  const months = {
    takes: dailyFromMonthlyMeans(Array.from(inputs.of('monthly-climate', 'reference-evapotranspiration'))),
    rain: inputs.of('monthly-climate', 'rain'),
  };
  const reference = new Float64Array(weeks.count);
  const rain = new Float64Array(weeks.count);
  for (let week = 0; week < weeks.count; week++) {
    const day = weeks.first + week * 7 + 3;
    const { year, month } = yearMonthDay(day);
    const next = month === 12 ? civilDay(year + 1, 1, 1) : civilDay(year, month + 1, 1);
    reference[week] = months.takes[calendarIndex(day)] as number;
    rain[week] = ((months.rain[month - 1] as number) * 7) / (next - civilDay(year, month, 1));
  }
  const crop = {
    initial: inputs.crop('initial-stage'),
    development: inputs.crop('development-stage'),
    middle: inputs.crop('mid-season-stage'),
    late: inputs.crop('late-stage'),
    kcInitial: inputs.crop('crop-coefficient-initial'),
    kcMid: inputs.crop('crop-coefficient-mid'),
    kcEnd: inputs.crop('crop-coefficient-end'),
  };
  const serves = inputs.farm('rain-that-serves');
  const arrives = inputs.farm('water-that-arrives');
  const made = (): ByWeek => new Float64Array(count * weeks.count).fill(Number.NaN);
  const out = { coefficient: made(), takes: made(), rain: made(), give: made(), water: made() };
  const filled = new WeeksOfRows(Object.values(out), weeks);
  const all = new Float64Array(weeks.count);
  const was = (id: string): Float64Array => columnOf(columns, id);

  function spanOf(row: number): readonly [number, number] {
    const free = was('bed-free')[row] as number;
    if (isBlank(crop.kcMid[varietyOf[row] as number] as number)) return [0, -1];
    return weeksOf(weeks, was('planted-out')[row] as number, free - 1);
  }

  return {
    columns: new Map([
      ['crop-coefficient', out.coefficient],
      ['crop-takes', out.takes],
      ['rain-that-serves', out.rain],
      ['to-give', out.give],
      ['water', out.water],
    ]),
    byWeek: new Map([['water-for-all-beds', all]]),
    take(row) {
      const at = row * weeks.count;
      for (let week = 0; week < weeks.count; week++) {
        const water = out.water[at + week] as number;
        if (!isBlank(water)) all[week] = (all[week] as number) - water;
      }
      filled.blank(row);
    },
    put(row) {
      const v = varietyOf[row] as number;
      const planted = was('planted-out')[row] as number;
      const season = (was('bed-free')[row] as number) - planted;
      const area = was('bed-area')[row] as number;
      const [first, last] = spanOf(row);
      filled.fills(row, first, last);
      if (last < first) return;
      const stages = scaledStages(
        {
          initial: crop.initial[v] as number,
          development: crop.development[v] as number,
          middle: crop.middle[v] as number,
          late: crop.late[v] as number,
        },
        season,
      );
      const coefficients = {
        initial: crop.kcInitial[v] as number,
        middle: crop.kcMid[v] as number,
        end: crop.kcEnd[v] as number,
      };
      for (let week = first; week <= last; week++) {
        const start = weeks.first + week * 7;
        const from = Math.max(0, start - planted);
        const to = Math.min(season, start + 7 - planted);
        const takes = coefficientDays(from, to, stages, coefficients) * (reference[week] as number);
        const falls = (((rain[week] as number) * (to - from)) / 7) * serves;
        const give = Math.max(0, takes - falls) / arrives;
        const at = row * weeks.count + week;
        out.coefficient[at] = cropCoefficient((from + to) / 2, stages, coefficients);
        out.takes[at] = takes;
        out.rain[at] = falls;
        out.give[at] = give;
        out.water[at] = give * area;
        all[week] = (all[week] as number) + give * area;
      }
    },
    finish() {},
    clear() {
      all.fill(0);
      filled.blankAll();
    },
  };
}
