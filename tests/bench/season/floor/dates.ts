// The floor, dates: when each planting is sown, up, ripe, harvested and cleared, by the warmth of the average year. Plain loops;
// the columns stand in planting-dates.ts and planting-ripening.ts of the templates. Every planting has a date typed.

import { emergenceDays } from '../../../../engine/agronomy/emergence.ts';
import { tolerantCeil } from '../../../../engine/values/tolerance.ts';
import { bulbingOf } from './bulbing.ts';
import { edate } from './calendar.ts';
import {
  BLOCKS,
  CELLS,
  type Columns,
  columnIn,
  DEEP_TRAY,
  DIRECT,
  type Inputs,
  isBlank,
  least,
  most,
  NURSERY_BED,
  or,
  SETS,
} from './inputs.ts';
import { FREEZING, type Year } from './year.ts';

/** Farm's figures that follow from the climate. */
export interface FarmYear {
  lowAtFirstFrost: number;
  lowAtLastFrost: number;
  warmest: number;
  coldest: number;
}

export interface Dates {
  work(from: number, to: number): void;
}

/** `sown` is filled beside the column, for the stand. */
export function datesOf(
  inputs: Inputs,
  columns: Columns,
  start: Int8Array,
  year: Year,
  farm: FarmYear,
  plantedTyped: Float64Array,
  sownOut: Float64Array,
): Dates {
  const { count, varietyOf } = inputs;
  const sownTyped = inputs.typed('sown');
  const typedCover = inputs.choice('cover', ['none', 'row cover', 'tunnel']);
  const crop = {
    weeks: inputs.crop('weeks-in-propagation'),
    bestFrom: inputs.crop('germination-best-from'),
    bestTo: inputs.crop('germination-best-to'),
    emergenceBase: inputs.crop('emergence-base'),
    emergenceWarmth: inputs.crop('emergence-thermal-time'),
    published: inputs.crop('warmth-to-harvest'),
    publishedDirect: inputs.crop('warmth-to-harvest-direct'),
    base: inputs.crop('degree-day-base'),
    ceiling: inputs.crop('degree-day-ceiling'),
    growthMinimum: inputs.crop('growth-minimum'),
    growthBestTo: inputs.crop('growth-best-to'),
    years: inputs.crop('years-to-first-harvest'),
    springDays: inputs.cropSays('warmth-counts-from', '12-hour day in spring'),
    overwinters: inputs.cropSays('overwinters', 'autumn planted'),
    frostLimit: inputs.crop('frost-limit'),
    frostLimitYoung: inputs.crop('frost-limit-young'),
    tender: inputs.cropSays('hardiness', 'tender', 'half-hardy'),
    chillDays: inputs.crop('chill-days'),
    chillBelow: inputs.crop('chill-below'),
  };
  const variety = {
    bulb: inputs.variety('bulb-crop'),
    comesAgain: inputs.variety('comes-again-in-spring'),
    days: inputs.variety('days-to-maturity'),
    daysDirect: inputs.variety('days-to-maturity-direct'),
    warmth: inputs.variety('warmth-to-harvest'),
    warmthDirect: inputs.variety('warmth-to-harvest-direct'),
    early: inputs.variety('early-share'),
    earlyDirect: inputs.variety('early-share-direct'),
    late: inputs.variety('late-share'),
    lateDirect: inputs.variety('late-share-direct'),
  };
  const latitude = inputs.farm('latitude');
  const nursery = inputs.farm('nursery-temperature');
  const heatedToGerminate = inputs.farm('heated-to-germinate');
  const nurseryHeated = inputs.farm('nursery-heated');
  const column = (id: string): Float64Array => columnIn(columns, id, count);
  const out = {
    sown: column('sown'),
    planted: column('planted-out'),
    summer: column('summer'),
    gain: column('cover-gain'),
    nightGain: column('cover-gain-at-night'),
    germinationTemperature: column('germination-temperature'),
    raisingTemperature: column('raising-temperature'),
    emergence: column('emergence'),
    base: column('growth-base'),
    ceiling: column('growth-ceiling'),
    wanted: column('warmth-wanted'),
    countsFrom: column('growth-counts-from'),
    byWarmth: column('ripe-by-warmth'),
    byDays: column('ripe-by-days'),
    ripe: column('ripe'),
    killingLow: column('killing-low'),
    killingNight: column('killing-night'),
    springKills: column('spring-kills-until'),
    up: column('up'),
    coldEnds: column('cold-ends-it'),
    early: column('early-ripe-share'),
    late: column('late-ripe-share'),
    warmthShare: column('share-of-warmth'),
    finishes: column('finishes'),
    coldDays: column('cold-days-had'),
  };
  const bulbing = bulbingOf(inputs, columns, year);

  function work(from: number, to: number): void {
    for (let row = from; row < to; row++) {
      const v = varietyOf[row] as number;
      const begun = start[row] as number;
      const direct = begun === DIRECT;
      const raised = begun === BLOCKS || begun === CELLS || begun === DEEP_TRAY || begun === NURSERY_BED;
      const fromSeed = raised || direct;
      const timeRaised = raised ? or(crop.weeks[v] as number, 42) : 0;
      const dateTyped = or(plantedTyped[row] as number, (sownTyped[row] as number) + timeRaised);
      const sown = or(sownTyped[row] as number, fromSeed ? dateTyped - timeRaised : Number.NaN);
      const planted = or(plantedTyped[row] as number, dateTyped);
      const summer = year.summerNear(dateTyped + 30);
      const cover = typedCover[row] as number;
      const gain = cover === 1 ? 2 : cover === 2 ? 3.5 : 0;
      const nightGain = cover > 0 ? 1 : 0;
      const heated = begun !== NURSERY_BED && nurseryHeated === 1;
      const raising = raised
        ? heated
          ? most(nursery, year.meanAround(sown + 21))
          : year.meanAround(sown + 21) + 3.5
        : Number.NaN;
      const bestFrom = crop.bestFrom[v] as number;
      const bestTo = crop.bestTo[v] as number;
      const warmly = begun !== NURSERY_BED && heatedToGerminate === 1 && !isBlank(bestFrom);
      const germinating = raised ? (warmly ? bestFrom + (bestTo - bestFrom) / 2 : raising) : Number.NaN;
      const emergenceBase = crop.emergenceBase[v] as number;
      const emergenceWarmth = crop.emergenceWarmth[v] as number;
      const inTheHouse = least(least(germinating, bestTo), FREEZING + 35) - FREEZING;
      const comesUp = raised
        ? sown + tolerantCeil(emergenceDays(inTheHouse, emergenceBase - FREEZING, emergenceWarmth))
        : year.warmthDate(sown, emergenceWarmth, emergenceBase - gain, FREEZING + 25);
      const emergence = fromSeed ? or(comesUp, sown + (raised ? 10 : 14)) : Number.NaN;
      const inPlace = direct || isBlank(variety.days[v] as number);
      const published = !isBlank((inPlace ? crop.publishedDirect : crop.published)[v] as number);
      const base = (crop.base[v] as number) - gain;
      const highest = crop.ceiling[v] as number;
      const ceiling = (published ? highest : least(highest, crop.growthBestTo[v] as number)) - gain;
      const wanted = (inPlace ? variety.warmthDirect : variety.warmth)[v] as number;
      const comesAgain = variety.comesAgain[v] === 1;
      const up = direct ? emergence : planted;
      let countsFrom = up;
      if (crop.springDays[v] === 1) {
        countsFrom = year.longDayFrom(latitude, 12, planted < summer - 45 ? planted : summer + 155);
      } else if (comesAgain) countsFrom = growsAgain(summer, v);
      const byWarmth = year.warmthDate(countsFrom, wanted, base, ceiling);
      const days = (inPlace ? variety.daysDirect : variety.days)[v] as number;
      const byDays = most(planted + days, emergence + 1);
      const bulb = variety.bulb[v] === 1;
      out.sown[row] = sown;
      sownOut[row] = sown;
      out.planted[row] = planted;
      out.summer[row] = summer;
      out.emergence[row] = emergence;
      out.up[row] = up;
      out.raisingTemperature[row] = raising;
      bulbing.work(row, { sown, planted, summer, emergence, up, raising, raised, fromSeed });
      const ripe = bulb ? (bulbing.topsDown[row] as number) : isBlank(wanted) ? byDays : byWarmth;
      const standsWinter = crop.overwinters[v] === 1 || comesAgain;
      const killingLow = standsWinter
        ? Number.NaN
        : farm.lowAtFirstFrost + ((crop.frostLimit[v] as number) - FREEZING) - nightGain;
      const killingNight = year.lowUntil(summer, killingLow);
      const young = or(crop.frostLimitYoung[v] as number, crop.frostLimit[v] as number);
      const springKills =
        crop.tender[v] === 1 ? year.lowFrom(summer, farm.lowAtLastFrost + (young - FREEZING) - nightGain) : Number.NaN;
      const killed = begun !== SETS && up < summer && up < springKills;
      const coldEnds = killed ? up : isBlank(killingNight) ? Number.NaN : most(killingNight, up);
      const knowable = !isBlank(up) && (bulb ? !isBlank(bulbing.largeEnough[row] as number) : !isBlank(wanted));
      let share = 1;
      if (isBlank(ripe)) share = knowable ? 0 : 1;
      else if (!isBlank(coldEnds) && !(ripe < coldEnds))
        share = bulb
          ? Math.max(0, coldEnds - up) / (ripe - up)
          : year.warmth(countsFrom, coldEnds, base, ceiling) / wanted;
      const early = (inPlace ? variety.earlyDirect : variety.early)[v] as number;
      out.gain[row] = gain;
      out.nightGain[row] = nightGain;
      out.germinationTemperature[row] = germinating;
      out.base[row] = base;
      out.ceiling[row] = ceiling;
      out.wanted[row] = wanted;
      out.countsFrom[row] = countsFrom;
      out.byWarmth[row] = byWarmth;
      out.byDays[row] = byDays;
      out.ripe[row] = ripe;
      out.killingLow[row] = killingLow;
      out.killingNight[row] = killingNight;
      out.springKills[row] = springKills;
      out.coldEnds[row] = coldEnds;
      out.warmthShare[row] = share;
      out.early[row] = early;
      out.late[row] = (inPlace ? variety.lateDirect : variety.late)[v] as number;
      const chill = crop.chillDays[v] as number;
      const below = crop.chillBelow[v] as number;
      const coldUntil = crop.springDays[v] === 1 ? ripe : countsFrom;
      const cold = isBlank(chill)
        ? Number.NaN
        : year.coldFelt(planted, coldUntil, FREEZING - 90, FREEZING - 90, below + 2.5, below + 8.5);
      out.coldDays[row] = cold;
      out.finishes[row] =
        planted < sown || cold < 0.5 * chill
          ? 0
          : share >= 1
            ? 1
            : early >= 1
              ? 0
              : Math.max(0, (share - early) / (1 - early));
    }
  }

  function growsAgain(summer: number, v: number): number {
    const level = crop.growthMinimum[v] as number;
    const first = edate(summer, 12 * (crop.years[v] as number));
    return isBlank(year.warmFrom(summer, level)) ? first - 182 : year.warmFrom(first, level);
  }

  return { work };
}
