// The floor, bulbs: when an onion is large enough, when it bulbs, when its tops go down, and the leaf it has by then; blank for
// other crops. dates.ts calls it for each planting; the columns stand in planting-harvest.ts of the templates.

import { BULBING_BASE, BULBING_THERMAL_TIME, BULBING_UPPER } from '../../../../engine/agronomy/bulbing.ts';
import {
  LEAF_GROWTH_BASE,
  LEAF_GROWTH_LIMITS,
  LEAF_GROWTH_UPPER,
  onionLeafArea,
} from '../../../../engine/agronomy/leaf-growth.ts';
import { OVERWINTERED_SHARE } from '../../../../engine/agronomy/tops-down.ts';
import { tolerantCeil } from '../../../../engine/values/tolerance.ts';
import { type Columns, columnIn, type Inputs, isBlank, least, most, or } from './inputs.ts';
import { FREEZING, type Year } from './year.ts';

const [BASE, UPPER] = [BULBING_BASE + FREEZING, BULBING_UPPER + FREEZING];
const [LEAF_BASE, LEAF_UPPER] = [LEAF_GROWTH_BASE + FREEZING, LEAF_GROWTH_UPPER + FREEZING];
const CM2 = 1e-4;

/** What is known of a planting before it bulbs. */
export interface Begun {
  readonly sown: number;
  readonly planted: number;
  readonly summer: number;
  readonly emergence: number;
  readonly up: number;
  readonly raising: number;
  readonly raised: boolean;
  readonly fromSeed: boolean;
}

export interface Bulbing {
  readonly largeEnough: Float64Array;
  readonly starts: Float64Array;
  readonly topsDown: Float64Array;
  readonly toFall: Float64Array;
  readonly leafGrowth: Float64Array;
  work(row: number, begun: Begun): void;
}

export function bulbingOf(inputs: Inputs, columns: Columns, year: Year): Bulbing {
  const { count, varietyOf } = inputs;
  const variety = {
    bulb: inputs.variety('bulb-crop'),
    critical: inputs.variety('critical-day-length'),
    toBulbing: inputs.variety('thermal-time-to-bulbing'),
    toTops: inputs.variety('thermal-time-to-tops-down'),
    daysToTops: inputs.variety('days-from-bulbing-to-tops-down'),
  };
  const overwinters = inputs.crop('overwinters');
  const notOver = inputs.cropSays('overwinters', 'no');
  const latitude = inputs.farm('latitude');
  const column = (id: string): Float64Array => columnIn(columns, id, count);
  const out = {
    had: column('thermal-time-at-planting-out'),
    overWinter: column('over-winter'),
    notBefore: column('bulbing-not-before'),
    toCome: column('thermal-time-to-come'),
    largeEnough: column('large-enough'),
    longEnough: column('days-long-enough'),
    longDays: column('long-days-begin'),
    starts: column('bulbing-starts'),
    inTheBed: column('leaf-growth-in-the-bed'),
    leafGrowth: column('leaf-growth-at-bulbing'),
    leafArea: column('leaf-area-at-bulbing'),
    toFall: column('thermal-time-to-fall'),
    topsDown: column('tops-down'),
    wintersIn: column('winter-sets-in'),
    atWinter: column('leaf-growth-at-winter'),
  };

  return {
    largeEnough: out.largeEnough,
    starts: out.starts,
    topsDown: out.topsDown,
    toFall: out.toFall,
    leafGrowth: out.leafGrowth,
    work(row, { planted, summer, emergence, up, raising, raised, fromSeed }) {
      const v = varietyOf[row] as number;
      const bulb = variety.bulb[v] === 1;
      const inHouse = Math.max(0, planted - emergence);
      const had = raised ? inHouse * (raising - BASE) : fromSeed ? 0 : BULBING_THERMAL_TIME;
      const over = !isBlank(overwinters[v] as number) && notOver[v] !== 1 && planted > summer - 10;
      const notBefore = over ? summer + 155 : planted;
      const toCome = most(0, (variety.toBulbing[v] as number) - had);
      const critical = (variety.critical[v] as number) * 24;
      const large = bulb
        ? or(year.warmthDate(planted, toCome, BASE, UPPER), planted + tolerantCeil(toCome / 10))
        : Number.NaN;
      const starts = bulb ? year.longDayFrom(latitude, critical, most(large, notBefore)) : Number.NaN;
      const midwinter = summer - 213;
      const firstLong = year.longDayFrom(latitude, critical, midwinter);
      const longDays = bulb && !over && firstLong > midwinter ? firstLong : Number.NaN;
      const inTheBed = year.warmth(planted, starts, LEAF_BASE, LEAF_UPPER);
      const headStart = raised ? Math.min(300, 0.5 * inHouse * (Math.min(raising, LEAF_UPPER) - LEAF_BASE)) : 0;
      const leaf =
        bulb && fromSeed
          ? raised
            ? headStart + inTheBed
            : year.warmth(emergence, starts, LEAF_BASE, LEAF_UPPER)
          : Number.NaN;
      const toFall = (variety.toTops[v] as number) * (over ? OVERWINTERED_SHARE : 1);
      const byDays = starts + (variety.daysToTops[v] as number) * (over ? OVERWINTERED_SHARE : 1);
      const setsIn = over ? least(year.warmUntil(summer, LEAF_BASE), summer + 130) : Number.NaN;
      out.had[row] = had;
      out.overWinter[row] = over ? 1 : 0;
      out.notBefore[row] = notBefore;
      out.toCome[row] = toCome;
      out.largeEnough[row] = large;
      out.longEnough[row] = year.longDayFrom(latitude, critical, notBefore);
      out.longDays[row] = longDays;
      out.starts[row] = starts;
      out.inTheBed[row] = inTheBed;
      out.leafGrowth[row] = leaf;
      out.leafArea[row] = leaf <= LEAF_GROWTH_LIMITS.degreeDays.max ? onionLeafArea(leaf) * CM2 : Number.NaN;
      out.toFall[row] = toFall;
      out.topsDown[row] = bulb ? or(year.warmthDate(starts, toFall, BASE, UPPER), byDays) : Number.NaN;
      out.wintersIn[row] = setsIn;
      out.atWinter[row] = bulb && fromSeed ? headStart + year.warmth(up, setsIn, LEAF_BASE, LEAF_UPPER) : Number.NaN;
    },
  };
}
