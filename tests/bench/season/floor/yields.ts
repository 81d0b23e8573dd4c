// The floor, yield: how close plants stand, what they weigh, what sells, in which sizes. Plain loops; the columns stand in
// planting-space.ts of the templates.

import { bulbYieldFactor, LEFT_WHEN_LATE, LOST_A_WEEK_LATE } from '../../../../engine/agronomy/bulb-light.ts';
import { gradeMassShare, gradeShare, meanDiameterOfMass } from '../../../../engine/agronomy/grades.ts';
import { LEAF_GROWTH_BASE, LEAF_GROWTH_UPPER, WINTER_LEAF_LEAST } from '../../../../engine/agronomy/leaf-growth.ts';
import { rectangularity } from '../../../../engine/agronomy/spacing.ts';
import { plantMass, squarenessFactor } from '../../../../engine/agronomy/yield-density.ts';
import { type Columns, columnIn, columnOf, DIRECT, type Inputs, isBlank, most, or } from './inputs.ts';
import { FREEZING, type Year } from './year.ts';

const [LEAF_BASE, LEAF_UPPER] = [LEAF_GROWTH_BASE + FREEZING, LEAF_GROWTH_UPPER + FREEZING];
const GRADES = ['small', 'medium', 'large', 'extra-large'] as const;

export function yieldsOf(
  inputs: Inputs,
  columns: Columns,
  start: Int8Array,
  year: Year,
): (from: number, to: number) => void {
  const { count, varietyOf } = inputs;
  const was = (id: string): Float64Array => columnOf(columns, id);
  const crop = {
    bedsAcross: inputs.crop('beds-across'),
    least: inputs.crop('density-least'),
    most: inputs.crop('density-most'),
    usual: inputs.crop('usual-density'),
    loss: inputs.crop('squareness-loss'),
    marketable: inputs.crop('marketable-share'),
    yield: inputs.crop('yield'),
    yieldLow: inputs.crop('yield-low'),
    yieldHigh: inputs.crop('yield-high'),
    perUnit: inputs.crop('plants-per-harvest-unit'),
    unitMass: inputs.crop('unit-mass'),
    byWeight: inputs.cropSays('harvest-unit', 'weight'),
    byBunch: inputs.cropSays('harvest-unit', 'bunch'),
    spread: inputs.crop('diameter-spread'),
    curingDays: inputs.crop('curing-days'),
    curingLoss: inputs.crop('curing-loss'),
    life: inputs.crop('storage-life'),
  };
  const variety = {
    bulb: inputs.variety('bulb-crop'),
    isolated: inputs.variety('isolated-plant-mass'),
    ceiling: inputs.variety('ceiling-yield'),
    shape: inputs.variety('shape-factor'),
  };
  const priceEach = inputs.typed('price-each');
  const from4 = inputs.of('size-grades', 'from');
  const to4 = inputs.of('size-grades', 'to');
  const smallest = from4[0] as number;
  const column = (id: string): Float64Array => columnIn(columns, id, count);
  const out = {
    standing: column('plants-standing'),
    ground: column('ground-area'),
    density: column('plant-density'),
    leastKnown: column('least-known-density'),
    mostKnown: column('most-known-density'),
    shape: column('rectangularity'),
    loss: column('squareness-loss'),
    season: column('season-factor'),
    mass: column('mean-plant-mass'),
    total: column('total-yield'),
    share: column('marketable-share'),
    saleable: column('share-of-saleable-size'),
    ifAll: column('marketable-if-all-is-picked'),
    marketable: column('marketable-yield'),
    low: column('marketable-yield-low'),
    high: column('marketable-yield-high'),
    pieces: column('pieces'),
    pieceMass: column('mass-of-a-piece'),
    perArea: column('yield-per-bed-area'),
    spread: column('diameter-spread'),
    diameter: column('mean-diameter'),
    under: column('share-under-size'),
    shares: GRADES.map((grade) => column(`share-${grade}`)),
    masses: GRADES.map((grade) => column(`mass-${grade}`)),
    cured: column('cured-yield'),
    stored: column('goes-into-store'),
    bySpacing: column('density-by-spacing'),
    massBySpacing: column('plant-mass-by-spacing'),
    soldShare: column('sold-share'),
  };

  return (from, to) => {
    const [stations, plants, field, empty, bedArea] = [
      was('stations'),
      was('plants-per-station'),
      was('field-survival'),
      was('empty-stations'),
      was('bed-area'),
    ];
    const [rowSpacing, spacing] = [was('row-spacing'), was('in-row-spacing')];
    const [leaf, atWinter] = [was('leaf-growth-at-bulbing'), was('leaf-growth-at-winter')];
    const [planted, longDays] = [was('planted-out'), was('long-days-begin')];
    const [isUp, longEnough, starts] = [was('up'), was('days-long-enough'), was('bulbing-starts')];
    const [finishes, lost, ends] = [was('finishes'), was('window-lost'), was('harvest-ends')];
    for (let row = from; row < to; row++) {
      const v = varietyOf[row] as number;
      const up = start[row] === DIRECT ? 1 - (empty[row] as number) : 1;
      const stand = (plants[row] as number) * (field[row] as number) * up;
      const standing = (stations[row] as number) * (plants[row] as number) * (field[row] as number) * up;
      const across = most(1, crop.bedsAcross[v] as number);
      const ground = (bedArea[row] as number) * across;
      const density = standing / ground;
      const shape = rectangularity(rowSpacing[row] as number, spacing[row] as number);
      const loss = or(crop.loss[v] as number, 0);
      const [growth, winter] = [leaf[row] as number, atWinter[row] as number];
      const late = year.warmth(
        most(isUp[row] as number, longEnough[row] as number),
        starts[row] as number,
        LEAF_BASE,
        LEAF_UPPER,
      );
      const throughWinter = winter < WINTER_LEAF_LEAST ? Math.max(0, winter / WINTER_LEAF_LEAST) : 1;
      const weeksLate = Math.max(0, (planted[row] as number) - (longDays[row] as number)) / 7;
      const lateness = isBlank(weeksLate) ? 1 : Math.max(LEFT_WHEN_LATE, 1 - LOST_A_WEEK_LATE * weeksLate);
      const season =
        variety.bulb[v] === 1 && !isBlank(growth) ? bulbYieldFactor(growth - late / 2) * throughWinter * lateness : 1;
      const factor = squarenessFactor(shape, loss) * season;
      const [isolated, ceiling] = [variety.isolated[v] as number, variety.ceiling[v] as number];
      const mass = plantMass(density, isolated, ceiling) * factor;
      const ripens = finishes[row] as number;
      const total = ripens > 0 ? standing * mass : Number.NaN;
      const share = crop.marketable[v] as number;
      const spread = crop.spread[v] as number;
      const diameter = ripens > 0 ? meanDiameterOfMass(mass, spread, variety.shape[v] as number) : Number.NaN;
      const saleable =
        isBlank(diameter) || isBlank(smallest)
          ? 1
          : 1 - gradeMassShare(diameter, spread, Number.NEGATIVE_INFINITY, smallest);
      const ifAll = total * share * saleable;
      const kept = 1 - (lost[row] as number);
      const marketable = ripens > 0 ? ifAll * ripens * kept : Number.NaN;
      const under = isBlank(smallest) ? 0 : gradeShare(diameter, spread, Number.NEGATIVE_INFINITY, smallest);
      out.standing[row] = standing;
      out.ground[row] = ground;
      out.density[row] = density;
      out.leastKnown[row] = or(crop.least[v] as number, (crop.usual[v] as number) * 0.5);
      out.mostKnown[row] = or(crop.most[v] as number, (crop.usual[v] as number) * 2);
      out.shape[row] = shape;
      out.loss[row] = loss;
      out.season[row] = season;
      out.mass[row] = mass;
      out.total[row] = total;
      out.share[row] = share;
      out.saleable[row] = saleable;
      out.ifAll[row] = ifAll;
      out.marketable[row] = marketable;
      out.low[row] = ((marketable * (crop.yieldLow[v] as number)) / (crop.yield[v] as number)) * Math.min(ripens, 1);
      out.high[row] = (marketable * (crop.yieldHigh[v] as number)) / (crop.yield[v] as number);
      out.spread[row] = spread;
      out.diameter[row] = diameter;
      out.under[row] = under;
      const perUnit = crop.perUnit[v] as number;
      let pieces = Number.NaN;
      if (isBlank(perUnit)) {
        if (crop.byWeight[v] !== 1 || !isBlank(priceEach[row] as number))
          pieces = marketable / (crop.unitMass[v] as number);
      } else if (ripens > 0) {
        const sold = standing * share * (1 - most(0, under)) * ripens * kept;
        pieces = sold / (crop.byBunch[v] === 1 ? perUnit : Math.max(1, perUnit));
      }
      out.pieces[row] = pieces;
      out.pieceMass[row] = marketable / pieces;
      out.perArea[row] = total / ground;
      for (let grade = 0; grade < GRADES.length; grade++) {
        const low = from4[grade] as number;
        const high = or(to4[grade] as number, Number.POSITIVE_INFINITY);
        const byMass = gradeMassShare(diameter, spread, low, high);
        (out.shares[grade] as Float64Array)[row] = gradeShare(diameter, spread, low, high);
        (out.masses[grade] as Float64Array)[row] = saleable > 0 ? (marketable * byMass) / saleable : Number.NaN;
      }
      const cures = !isBlank(crop.curingDays[v] as number);
      out.cured[row] = cures ? marketable * (1 - (crop.curingLoss[v] as number)) : Number.NaN;
      const keeps = (crop.life[v] as number) >= 30;
      out.stored[row] = !isBlank(marketable) && !isBlank(ends[row] as number) && keeps ? 1 : 0;
      const dense = stand / ((rowSpacing[row] as number) * (spacing[row] as number) * across);
      out.bySpacing[row] = dense;
      out.massBySpacing[row] = plantMass(dense, isolated, ceiling) * factor;
      out.soldShare[row] = ripens > 0 ? share * ripens * kept : Number.NaN;
    }
  };
}
