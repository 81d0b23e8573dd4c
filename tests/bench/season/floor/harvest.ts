// The floor, harvest: from when until when each planting is picked, what cold cuts off, when the bed is free, what is thinned.
// Plain loops over what dates.ts worked out; the columns stand in planting-harvest.ts and planting-ripening.ts of the templates.

import { BULBING_BASE, BULBING_UPPER } from '../../../../engine/agronomy/bulbing.ts';
import { cutShare, harvestedShare } from '../../../../engine/agronomy/harvest-curve.ts';
import { plantsPerBlockDistribution, thinToMost } from '../../../../engine/agronomy/stand.ts';
import { type Columns, columnIn, columnOf, type Inputs, isBlank, least, most, or } from './inputs.ts';
import { FREEZING, type Year } from './year.ts';

const [BASE, UPPER] = [BULBING_BASE + FREEZING, BULBING_UPPER + FREEZING];
const THINNING_MASS = 0.014;

/** Ways in which a harvest comes over its window. */
const [CURVE, CUTS, HEAD, EVEN] = [0, 1, 2, 3] as const;

export interface Harvest {
  work(from: number, to: number): void;
  /** Share of a planting picked by a time after its first picking. */
  pickedBy(row: number, time: number): number;
}

export function harvestOf(inputs: Inputs, columns: Columns, year: Year): Harvest {
  const { count, varietyOf } = inputs;
  const was = (id: string): Float64Array => columnOf(columns, id);
  const thinTo = inputs.typed('thin-to');
  const crop = {
    window: inputs.crop('harvest-window'),
    windowLow: inputs.crop('harvest-window-low'),
    windowHigh: inputs.crop('harvest-window-high'),
    between: inputs.crop('days-between-pickings'),
    middle: inputs.crop('harvest-curve-middle'),
    spread: inputs.crop('harvest-curve-spread'),
    second: inputs.crop('second-cut-share'),
    third: inputs.crop('third-cut-share'),
    side: inputs.crop('side-shoot-share'),
    base: inputs.crop('degree-day-base'),
    curingDays: inputs.crop('curing-days'),
  };
  const bulb = inputs.variety('bulb-crop');
  const column = (id: string): Float64Array => columnIn(columns, id, count);
  const out = {
    window: column('window'),
    harvest: column('harvest'),
    low: column('harvest-low'),
    high: column('harvest-high'),
    ends: column('harvest-ends'),
    endsLow: column('harvest-ends-low'),
    endsHigh: column('harvest-ends-high'),
    bedFree: column('bed-free'),
    warmth: column('warmth-to-harvest'),
    picked: column('days-picked'),
    cutOnce: column('cut-once'),
    between: column('days-between-cuts'),
    third: column('third-cut'),
    shoots: column('days-of-shoots'),
    lost: column('window-lost'),
    thinned: column('plants-thinned'),
    thinnedOn: column('thinned-on'),
    fresh: column('fresh-thinnings'),
    curedOn: column('cured-on'),
  };
  const pattern = Int8Array.from(crop.middle, (middle, v) => {
    if (!isBlank(middle)) return CURVE;
    if (!isBlank(crop.second[v] as number)) return CUTS;
    return isBlank(crop.side[v] as number) ? EVEN : HEAD;
  });

  function pickedBy(row: number, time: number): number {
    const v = varietyOf[row] as number;
    const window = out.window[row] as number;
    switch (pattern[v]) {
      case CURVE:
        return harvestedShare(time, window, crop.middle[v] as number, crop.spread[v] as number);
      case CUTS:
        return cutShare(time - 1, out.between[row] as number, crop.second[v] as number, out.third[row] as number);
      case HEAD: {
        const side = crop.side[v] as number;
        const shoots = Math.max(0, Math.min(1, (time - 7) / (out.shoots[row] as number)));
        return (1 - side) * Math.min(1, time / 7) + side * shoots;
      }
      default:
        return Math.min(1, time / (out.picked[row] as number));
    }
  }

  function work(from: number, to: number): void {
    const [ripe, coldEnds, finishes, planted] = [was('ripe'), was('cold-ends-it'), was('finishes'), was('planted-out')];
    const [starts, toFall, countsFrom, wanted] = [
      was('bulbing-starts'),
      was('thermal-time-to-fall'),
      was('growth-counts-from'),
      was('warmth-wanted'),
    ];
    const [base, ceiling, early, late] = [
      was('growth-base'),
      was('growth-ceiling'),
      was('early-ripe-share'),
      was('late-ripe-share'),
    ];
    const [stations, seeds, germination, up] = [
      was('stations'),
      was('seeds-per-station'),
      was('germination'),
      was('up'),
    ];
    const raising = was('raising-temperature');
    for (let row = from; row < to; row++) {
      const v = varietyOf[row] as number;
      const done = (finishes[row] as number) > 0;
      const lastDay = (coldEnds[row] as number) - 1;
      const isBulb = bulb[v] === 1;
      const firstAt = (share: number, bulbShare: number): number => {
        if (!done) return Number.NaN;
        const date = isBulb
          ? year.warmthDate(starts[row] as number, (toFall[row] as number) * bulbShare, BASE, UPPER)
          : year.warmthDate(
              countsFrom[row] as number,
              (wanted[row] as number) * share,
              base[row] as number,
              ceiling[row] as number,
            );
        return least(lastDay, date);
      };
      const window = or(crop.window[v] as number, 1);
      const harvest = done ? least(ripe[row] as number, lastDay) : Number.NaN;
      const low = firstAt(early[row] as number, 0.9);
      const high = firstAt(late[row] as number, 1.1);
      const known = !isBlank(harvest);
      const endsAt = (first: number, days: number): number =>
        known ? least(lastDay, first + or(days, window) - 1) : Number.NaN;
      const ends = known ? least(lastDay, harvest + window - 1) : Number.NaN;
      const picked = !done
        ? Number.NaN
        : isBlank(lastDay)
          ? window
          : Math.min(window, most(1, (coldEnds[row] as number) - harvest));
      out.window[row] = window;
      out.harvest[row] = harvest;
      out.low[row] = low;
      out.high[row] = high;
      out.ends[row] = ends;
      out.endsLow[row] = endsAt(low, crop.windowLow[v] as number);
      out.endsHigh[row] = endsAt(high, crop.windowHigh[v] as number);
      out.bedFree[row] = or(ends + 1, coldEnds[row] as number);
      out.warmth[row] = year.warmth(planted[row] as number, harvest, crop.base[v] as number, FREEZING + 30);
      out.picked[row] = picked;
      const cutOnce = pattern[v] === EVEN;
      out.cutOnce[row] = cutOnce ? 1 : 0;
      out.between[row] = least(crop.between[v] as number, (window - 1) / 2);
      out.third[row] = most(0, crop.third[v] as number);
      out.shoots[row] = Math.max(1, window - 7);
      out.lost[row] = isBlank(picked) || picked >= window || cutOnce ? 0 : 1 - pickedBy(row, picked);
      const keeps = thinTo[row] as number;
      const thins = !isBlank(keeps);
      const shares = thins ? plantsPerBlockDistribution(seeds[row] as number, germination[row] as number) : [];
      const thinned = thins
        ? (stations[row] as number) * thinToMost(shares, Math.floor(keeps)).thinningsPerBlock
        : Number.NaN;
      const after = isBlank(raising[row] as number) ? (up[row] as number) + 21 : (planted[row] as number) + 35;
      out.thinned[row] = thinned;
      out.thinnedOn[row] = thins ? least(harvest - 14, after) : Number.NaN;
      out.fresh[row] = thinned * THINNING_MASS;
      out.curedOn[row] = harvest + (crop.curingDays[v] as number);
    }
  }

  return { work, pickedBy };
}
