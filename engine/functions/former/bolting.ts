// BOLTRISK and BOLTWHY, which the first template asked; today's asks the crop library's own figures.

import type { Parameter } from '../../language/signature.ts';
import type { FunctionDefinition } from '../definition.ts';
import { type Argument, columnOfDates, columnOfTemperatures, date, degreeDays, text, warmth } from '../trade/build.ts';
import { KELVIN, numberOf, numbersOf, overDays, placeOf, yearOf } from '../trade/over-days.ts';
import { type BoltingCrop, boltingCrop } from './bolting-crops.ts';
import { type BoltingRisk, boltingRisk, gateDay } from './bolting-model.ts';

/**
 * The crop as its plants come from the propagation house: so many degree-days of the size gate already grown. A gate whose
 * time is not published counts as passed from the start, and the reason says so.
 */
function withHeadStart(crop: BoltingCrop, grown: number): BoltingCrop {
  if (crop.gate === undefined) return crop;
  const time = crop.gate.thermalTime;
  if (time === undefined) {
    const words = `${crop.gate.words}, taken as reached when planted out`;
    return {
      ...crop,
      gate: { ...crop.gate, words, thermalTime: { sum: 0, base: 0, upper: Number.POSITIVE_INFINITY } },
    };
  }
  if (!(grown > 0)) return crop;
  return { ...crop, gate: { ...crop.gate, thermalTime: { ...time, sum: Math.max(0, time.sum - grown) } } };
}

/** 'Onion, bulb' is judged as Onion, 'Carrot' as itself. */
function boltingOf(args: readonly Argument[]): BoltingRisk | undefined {
  const [name, from, to, headStart, cover, days, lows, highs] = args;
  if (typeof name !== 'string') return undefined;
  const crop = boltingCrop(name) ?? boltingCrop(name.split(',')[0] ?? name);
  const dates = numbersOf(days);
  const year = yearOf(dates);
  const start = numberOf(from);
  const end = numberOf(to);
  if (crop === undefined || year === undefined || !(end > start) || end - start > 2 * year.length) return undefined;
  const low = numbersOf(lows);
  const high = numbersOf(highs);
  const places = Array.from({ length: end - start }, (_, index) => placeOf(year, start + index));
  const celsius = (values: Float64Array): number[] => places.map((place) => (values[place] ?? Number.NaN) - KELVIN);
  const [lowest, highest] = [celsius(low), celsius(high)];
  if (lowest.every(Number.isNaN)) return undefined;
  const means = lowest.map((value, index) => (value + (highest[index] ?? Number.NaN)) / 2);
  const gain = numberOf(cover);
  return boltingRisk(crop, {
    lows: lowest,
    highs: highest,
    from: gateDay(withHeadStart(crop, numberOf(headStart)), means, 0),
    to: places.length,
    coverGain: Number.isNaN(gain) ? 0 : gain,
  });
}

const BOLTING_PARAMETERS: readonly Parameter[] = [
  text('crop'),
  date('from'),
  date('to'),
  degreeDays('head_start'),
  warmth('cover_gain'),
  columnOfDates('days'),
  columnOfTemperatures('lows'),
  columnOfTemperatures('highs'),
];
const BOLTING_SOURCE =
  'Holdsworth & Heath 1950, Annals of Botany; Wurr et al. 1999; Atherton et al. 1990; each crop as its bolting figures say';

export const FORMER_BOLTING: readonly FunctionDefinition[] = [
  overDays(
    'BOLTRISK',
    'Low, raised or high: how far the cold after the size gate goes towards sending a stand to seed.',
    BOLTING_SOURCE,
    BOLTING_PARAMETERS,
    { is: 'text' },
    (args) => boltingOf(args)?.level ?? Number.NaN,
  ),
  overDays(
    'BOLTWHY',
    'The reason behind BOLTRISK, in a sentence.',
    BOLTING_SOURCE,
    BOLTING_PARAMETERS,
    { is: 'text' },
    (args) => boltingOf(args)?.reason ?? Number.NaN,
  ),
];
