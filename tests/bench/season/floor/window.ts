// The floor, window: between which dates each planting can go in, by frost, the warmth of the bed, the heat, the cold and the warmth still
// to come. Plain loops over what dates.ts and harvest.ts worked out; the columns stand in planting-window.ts of the templates.

import { shortDayFrom } from '../../../../engine/agronomy/day-length-dates.ts';
import { DAYS_PER_DEGREE } from '../../../../engine/agronomy/frost-season.ts';
import { BED_LAG, COOL_SUMMER_MARGIN, startTemperature } from '../../../../engine/agronomy/planting-season.ts';
import { tolerantRound } from '../../../../engine/values/tolerance.ts';
import { edate } from './calendar.ts';
import type { FarmYear } from './dates.ts';
import { type Columns, columnIn, columnOf, DIRECT, type Inputs, isBlank, least, most, or } from './inputs.ts';
import { FREEZING, type Year } from './year.ts';

export function windowOf(
  inputs: Inputs,
  columns: Columns,
  start: Int8Array,
  year: Year,
  farm: FarmYear,
): (from: number, to: number) => void {
  const { count, varietyOf } = inputs;
  const was = (id: string): Float64Array => columnOf(columns, id);
  const crop = {
    sow: inputs.crop('sow-outdoors-from-last-frost'),
    plant: inputs.crop('plant-out-from-last-frost'),
    tender: inputs.cropSays('hardiness', 'tender'),
    maximum: inputs.crop('growth-maximum'),
    bestTo: inputs.crop('growth-best-to'),
    head: inputs.cropSays('harvest-unit', 'head'),
    notOver: inputs.cropSays('overwinters', 'no'),
    autumn: inputs.cropSays('overwinters', 'autumn planted'),
    soil: inputs.crop('autumn-soil-maximum'),
    emergenceBase: inputs.crop('emergence-base'),
    emergenceWarmth: inputs.crop('emergence-thermal-time'),
    weeks: inputs.crop('weeks-in-propagation'),
  };
  const variety = {
    bulb: inputs.variety('bulb-crop'),
    days: inputs.variety('days-to-maturity'),
    longDay: inputs.variety('day-length-reached'),
  };
  const latitude = inputs.farm('latitude');
  const season = inputs.farm('season-starts');
  const lastFrost = inputs.farm('last-frost');
  const halfTheYears = inputs.farm('last-frost-of-half-the-years');
  const column = (id: string): Float64Array => columnIn(columns, id, count);
  const out = {
    weeks: column('weeks-from-last-frost'),
    warmEnough: column('warm-enough-at'),
    follows: column('bed-follows-by'),
    warm: column('warm-from'),
    frost: column('frost-lets-in-from'),
    hot: column('too-hot-from'),
    hotUntil: column('too-hot-until'),
    sets: column('fruit-sets-before'),
    ripeBefore: column('ripe-before-the-heat'),
    cool: column('cool-again-from'),
    ripeAgain: column('ripe-again-from'),
    ends: column('growth-ends'),
    ripeBy: column('ripe-by-at-latest'),
    upBefore: column('up-before-the-heat'),
    before: column('before-the-heat'),
    upAfter: column('up-after-the-heat'),
    ripeAfter: column('ripe-after-the-heat'),
    after: column('after-the-heat'),
    upCold: column('up-before-the-cold'),
    forCold: column('for-the-cold'),
    cold: column('before-the-cold'),
    spring: column('spring-start'),
    opens: column('autumn-opens'),
    closes: column('autumn-closes'),
    earliest: column('earliest-in-the-bed'),
    latest: column('latest-in-the-bed'),
    mean: column('mean-when-it-goes-in'),
    low: column('low-when-it-goes-in'),
    sowFrom: column('sow-from'),
    sowUntil: column('sow-until'),
  };

  function inTheBedFor(up: number, row: number, v: number, gain: number): number {
    if (start[row] !== DIRECT) return up;
    const wanted = crop.emergenceWarmth[v] as number;
    if (isBlank(wanted)) return up - 14;
    return year.warmthStart(up, wanted, (crop.emergenceBase[v] as number) - gain, FREEZING + 25);
  }

  return (from, to) => {
    const [summers, gains, nightGains, planted] = [
      was('summer'),
      was('cover-gain'),
      was('cover-gain-at-night'),
      was('planted-out'),
    ];
    const [cutOnce, windows, springKills, killing] = [
      was('cut-once'),
      was('window'),
      was('spring-kills-until'),
      was('killing-night'),
    ];
    const [wanted, bases, ceilings] = [was('warmth-wanted'), was('growth-base'), was('growth-ceiling')];
    const mild = farm.coldest > FREEZING + 9;
    for (let row = from; row < to; row++) {
      const v = varietyOf[row] as number;
      const [summer, gain, night] = [summers[row] as number, gains[row] as number, nightGains[row] as number];
      const inPlace = start[row] === DIRECT || isBlank(variety.days[v] as number);
      const upFor = (by: number): number =>
        year.warmthStart(by, wanted[row] as number, bases[row] as number, ceilings[row] as number);
      const plantWeeks = crop.plant[v] as number;
      const weeks = start[row] === DIRECT || isBlank(plantWeeks) ? (crop.sow[v] as number) : plantWeeks;
      const enough = least(startTemperature(weeks / 7) + FREEZING, farm.warmest - COOL_SUMMER_MARGIN) - gain;
      const follows = Math.max(0, least(1, weeks / (BED_LAG.weeks * 7)) * BED_LAG.days);
      const warm = year.warmFrom(summer, enough) + tolerantRound(follows);
      const later = tolerantRound(night * DAYS_PER_DEGREE);
      const tender = crop.tender[v] === 1;
      const frostOf = most(halfTheYears + weeks - later, tender && !inPlace ? lastFrost - later : Number.NaN);
      const frost = most(frostOf, inPlace ? Number.NaN : (springKills[row] as number));
      const maximum = crop.maximum[v] as number;
      const bestTo = crop.bestTo[v] as number;
      const once = cutOnce[row] === 1;
      const head = crop.head[v] === 1;
      const hot = year.warmFrom(summer, maximum);
      const hotUntil = year.warmUntil(summer, maximum);
      const sets = tender && !once ? 21 : 0;
      const cool = !tender && (head || !once) ? year.warmUntil(summer, maximum - (maximum - bestTo) / 2) : Number.NaN;
      const ripeAgain = most(hotUntil + sets + (head ? 14 : 0), cool);
      const shortDays = crop.notOver[v] === 1 && !mild ? shortDayFrom(latitude, 10, summer) : Number.NaN;
      const ends = least(killing[row] as number, shortDays);
      const ripeBy = ends - Math.min(14, tolerantRound((windows[row] as number) / 2));
      const upBefore = upFor(hot + sets);
      const before = inTheBedFor(upBefore, row, v, gain);
      const upAfter = upFor(ripeAgain);
      const ripeAfter = inTheBedFor(upAfter, row, v, gain);
      const after = isBlank(ripeAfter) ? Number.NaN : most(ripeAfter, year.warmUntil(summer, maximum + 3));
      const upCold = upFor(ripeBy);
      const forCold = inTheBedFor(upCold, row, v, gain);
      const cold = forCold > summer - 200 ? forCold : Number.NaN;
      const bulb = variety.bulb[v] === 1;
      const anyWinter = isBlank(warm) && isBlank(frost);
      const spring = anyWinter ? edate(bulb ? year.warmUntil(summer, bestTo) : after, -12) : most(warm, frost);
      const autumnCrop =
        !bulb && !isBlank(after) && (planted[row] as number) > most(before + (after - before) / 2, spring + 45);
      const opens =
        crop.autumn[v] === 1
          ? year.warmUntil(summer, most((crop.soil[v] as number) + 2, farm.coldest + 3))
          : Number.NaN;
      const closes = isBlank(opens) ? Number.NaN : or(year.warmUntil(summer, FREEZING), summer + 155);
      let earliest = or(spring, season);
      if (!isBlank(opens)) earliest = opens;
      else if (autumnCrop) earliest = after;
      let latest = most(before, spring + 21);
      if (!isBlank(closes)) latest = closes;
      else if (bulb) latest = (variety.longDay[v] as number) + 14;
      else if (isBlank(before)) latest = cold;
      else if (autumnCrop) latest = isBlank(ends) ? edate(before, 12) : cold;
      const raised = (start[row] as number) < DIRECT ? (crop.weeks[v] as number) : 0;
      out.weeks[row] = weeks;
      out.warmEnough[row] = enough;
      out.follows[row] = follows;
      out.warm[row] = warm;
      out.frost[row] = frost;
      out.hot[row] = hot;
      out.hotUntil[row] = hotUntil;
      out.sets[row] = sets;
      out.ripeBefore[row] = hot + sets;
      out.cool[row] = cool;
      out.ripeAgain[row] = ripeAgain;
      out.ends[row] = ends;
      out.ripeBy[row] = ripeBy;
      out.upBefore[row] = upBefore;
      out.before[row] = before;
      out.upAfter[row] = upAfter;
      out.ripeAfter[row] = ripeAfter;
      out.after[row] = after;
      out.upCold[row] = upCold;
      out.forCold[row] = forCold;
      out.cold[row] = cold;
      out.spring[row] = spring;
      out.opens[row] = opens;
      out.closes[row] = closes;
      out.earliest[row] = earliest;
      out.latest[row] = latest;
      out.mean[row] = year.meanAround(planted[row] as number) + gain;
      out.low[row] = year.lowAround(planted[row] as number) + night;
      out.sowFrom[row] = earliest - raised;
      out.sowUntil[row] = latest - raised;
    }
  };
}
