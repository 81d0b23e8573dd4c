// The floor, money: the hours each planting takes, what it costs and brings. Plain loops; the columns stand in planting-work.ts and
// planting-money.ts of the templates. Nothing is sold by outlets here.

import { tolerantCeil } from '../../../../engine/values/tolerance.ts';
import {
  type Columns,
  columnIn,
  columnOf,
  DEEP_TRAY,
  DIRECT,
  type Inputs,
  isBlank,
  most,
  NURSERY_BED,
  or,
  plus,
  SETS,
} from './inputs.ts';

const GRADES = ['small', 'medium', 'large', 'extra-large'] as const;

export function moneyOf(inputs: Inputs, columns: Columns, start: Int8Array): (from: number, to: number) => void {
  const { count, varietyOf } = inputs;
  const was = (id: string): Float64Array => columnOf(columns, id);
  const typed = {
    price: inputs.typed('price'),
    each: inputs.typed('price-each'),
    fresh: inputs.typed('fresh-price'),
    set: inputs.typed('price-of-a-set-or-plant'),
    lot: inputs.typed('seed-lot'),
    cover: inputs.choice('cover', ['none', 'row cover', 'tunnel']),
  };
  const crop = {
    weeding: inputs.crop('weeding-time'),
    thinning: inputs.crop('thinning-time'),
    trellising: inputs.crop('trellising-time'),
    covering: inputs.crop('cover-time'),
    between: inputs.crop('days-between-pickings'),
    pickings: inputs.crop('pickings'),
    picking: inputs.crop('picking-rate'),
    packing: inputs.crop('packing-rate'),
    cleaning: inputs.crop('cleaning-rate'),
    curingLoss: inputs.crop('curing-loss'),
  };
  const variety = {
    bulb: inputs.variety('bulb-crop'),
    seeds: inputs.variety('price-per-1-000-seeds'),
    sets: inputs.variety('price-of-sets'),
    plants: inputs.variety('price-of-plants'),
  };
  const priceShares = inputs.of('size-grades', 'price-share');
  const farm = {
    bed: inputs.farm('bed-making'),
    blocks: inputs.farm('blocks-made-and-sown'),
    loose: inputs.farm('seeds-sown-loose'),
    row: inputs.farm('row-sown'),
    out: inputs.farm('plants-set-out'),
    parted: inputs.farm('plants-lifted-and-parted'),
    tending: inputs.farm('tending-a-week'),
    walking: inputs.farm('walking-a-bed-over'),
    wage: inputs.farm('wage'),
    mix: inputs.farm('mix-price'),
    season: inputs.farm('season-starts'),
    weeksUntil: inputs.farm('weeks-until'),
  };
  const column = (id: string): Float64Array => columnIn(columns, id, count);
  const out = {
    bed: column('bed-hours'),
    start: column('start-hours'),
    planting: column('planting-hours'),
    tending: column('tending-hours'),
    tendingADay: column('tending-a-day'),
    notYet: column('tending-not-yet'),
    noMore: column('tending-no-more'),
    weeding: column('weeding-hours'),
    thinning: column('thinning-hours'),
    trellising: column('trellising-hours'),
    cover: column('cover-hours'),
    times: column('times-picked'),
    picking: column('picking-hours'),
    packing: column('packing-hours'),
    cleaning: column('cleaning-hours'),
    hours: column('hours'),
    sold: column('sold-weight'),
    grades: GRADES.map((grade) => column(`revenue-${grade}`)),
    thinnings: column('revenue-thinnings'),
    revenue: column('revenue'),
    seedCost: column('seed-cost'),
    mixCost: column('mix-cost'),
    labour: column('labour-cost'),
    costs: column('costs'),
    margin: column('margin'),
    perArea: column('margin-per-bed-area'),
    perLength: column('margin-per-bed-length'),
    perWeek: column('margin-per-week-of-bed'),
    anHour: column('an-hour-brings'),
  };
  const byRate = (mass: number, rate: number): number => (isBlank(rate) ? 0 : mass / rate);

  return (from, to) => {
    const [ground, bedArea, length, rows] = [was('ground-area'), was('bed-area'), was('bed-length-used'), was('rows')];
    const [stations, seeds, needed, blocks] = [
      was('stations'),
      was('seeds-per-station'),
      was('seeds-needed'),
      was('blocks-to-start'),
    ];
    const [bedFree, planted, picked, cutOnce] = [
      was('bed-free'),
      was('planted-out'),
      was('days-picked'),
      was('cut-once'),
    ];
    const [marketable, cured, pieces, finishes] = [
      was('marketable-yield'),
      was('cured-yield'),
      was('pieces'),
      was('finishes'),
    ];
    const [fresh, bought, mixVolume] = [was('fresh-thinnings'), was('sets-or-plants-to-buy'), was('mix-volume')];
    const masses = GRADES.map((grade) => was(`mass-${grade}`));
    for (let row = from; row < to; row++) {
      const v = varietyOf[row] as number;
      const begun = start[row] as number;
      const loose = begun === DEEP_TRAY || begun === NURSERY_BED;
      const area = ground[row] as number;
      const direct = begun === DIRECT;
      const raised = begun < DIRECT;
      const setOut = (stations[row] as number) / farm.out;
      const parting = loose ? ((stations[row] as number) * (seeds[row] as number)) / farm.parted : 0;
      const startHours = loose ? (needed[row] as number) / farm.loose : (blocks[row] as number) / farm.blocks;
      const stands = (bedFree[row] as number) - (planted[row] as number);
      const tendingADay = isBlank(stands) ? 0 : (area * farm.tending) / 7;
      const weeding = area * or(crop.weeding[v] as number, 0);
      const thinning = area * or(crop.thinning[v] as number, 0);
      const trellising = area * or(crop.trellising[v] as number, 0);
      const cover = (typed.cover[row] as number) > 0 ? area * or(crop.covering[v] as number, 0) : 0;
      const between = crop.between[v] as number;
      const usual = most(1, crop.pickings[v] as number);
      const done = (finishes[row] as number) > 0;
      const pickings = isBlank(between) ? tolerantCeil(usual) : tolerantCeil((picked[row] as number) / between);
      const times = done ? (cutOnce[row] === 1 ? 1 : pickings) : Number.NaN;
      const yields = marketable[row] as number;
      const cures = cured[row] as number;
      const walking = times * (bedArea[row] as number) * farm.walking;
      const picking = done ? most(byRate(yields, crop.picking[v] as number), walking) : Number.NaN;
      const packing = byRate(yields, crop.packing[v] as number);
      const cleaning = byRate(cures, crop.cleaning[v] as number);
      const bedHours = area * farm.bed;
      const started = raised ? startHours : Number.NaN;
      const planting = direct ? ((rows[row] as number) * (length[row] as number)) / farm.row : setOut + parting;
      const tended = Math.max(0, Math.min(bedFree[row] as number, farm.weeksUntil) - (planted[row] as number));
      const tending = isBlank(stands) ? 0 : (area * farm.tending * tended) / 7;
      const before = plus(plus(plus(bedHours, started), planting), tending);
      const care = weeding + thinning + trellising + cover;
      const hours = plus(plus(plus(plus(before, care), picking), packing), cleaning);
      out.bed[row] = bedHours;
      out.start[row] = started;
      out.planting[row] = planting;
      out.tending[row] = tending;
      out.tendingADay[row] = tendingADay;
      out.notYet[row] = tendingADay * ((planted[row] as number) - farm.season);
      out.noMore[row] = tendingADay * ((bedFree[row] as number) - farm.season);
      out.weeding[row] = weeding;
      out.thinning[row] = thinning;
      out.trellising[row] = trellising;
      out.cover[row] = cover;
      out.times[row] = times;
      out.picking[row] = picking;
      out.packing[row] = packing;
      out.cleaning[row] = cleaning;
      out.hours[row] = hours;
      const kept = isBlank(cures) ? 1 : 1 - (crop.curingLoss[v] as number);
      const price = typed.price[row] as number;
      let byGrade = 0;
      for (let grade = 0; grade < GRADES.length; grade++) {
        const mass = (masses[grade] as Float64Array)[row] as number;
        const money = mass * kept * price * (priceShares[grade] as number);
        (out.grades[grade] as Float64Array)[row] = money;
        byGrade += money;
      }
      const sold = or(cures, yields);
      const thinnings = (fresh[row] as number) * (typed.fresh[row] as number);
      const each = typed.each[row] as number;
      const main = !isBlank(each) ? (pieces[row] as number) * each : variety.bulb[v] === 1 ? byGrade : sold * price;
      const priced = !(isBlank(price) && isBlank(each) && isBlank(typed.fresh[row] as number));
      const revenue = !isBlank(yields) && priced ? plus(thinnings, main) : Number.NaN;
      const setPrice = or(typed.set[row] as number, (begun === SETS ? variety.sets : variety.plants)[v] as number);
      const newSeed = isBlank(typed.lot[row] as number);
      const seedPrice = ((needed[row] as number) * (variety.seeds[v] as number)) / 1000;
      const seedCost = raised || direct ? (newSeed ? seedPrice : 0) : (bought[row] as number) * setPrice;
      const mixCost = (mixVolume[row] as number) * farm.mix;
      const labour = hours * farm.wage;
      const costs = plus(plus(seedCost, mixCost), labour);
      const margin = revenue - costs;
      out.sold[row] = sold;
      out.thinnings[row] = thinnings;
      out.revenue[row] = revenue;
      out.seedCost[row] = seedCost;
      out.mixCost[row] = mixCost;
      out.labour[row] = labour;
      out.costs[row] = costs;
      out.margin[row] = margin;
      out.perArea[row] = margin / area;
      out.perLength[row] = margin / (length[row] as number);
      out.perWeek[row] = margin / stands;
      out.anHour[row] = (margin + or(labour, 0)) / hours;
    }
  };
}
