// What made each crop bolt in the first template: figures that the crop library holds today. Kept as they were for workbooks
// that still lie over that template; bolting-model.ts reads them.

/** A figure with where it stands; common practice and memory are a grower's to overwrite. */
export interface SizeGate {
  readonly size: number;
  readonly unit: 'leaves' | 'mm stem';
  /** In a sentence: 'pencil thickness'. */
  readonly words: string;
  /** Thermal time from emergence to the gate where one is known: degree-days between base and upper (C). */
  readonly thermalTime?: { readonly sum: number; readonly base: number; readonly upper: number };
}

export interface BoltingCrop {
  readonly crop: string;
  /** Undefined where the crop feels cold from sowing on. */
  readonly gate: SizeGate | undefined;
  /** C: no effect below; none at it either, unless the optimum begins there. */
  readonly base: number;
  /** C: full effect from `optimumFrom` to `optimumTo`. */
  readonly optimumFrom: number;
  readonly optimumTo: number;
  /** C: no effect above; none at it either, unless the optimum ends there. */
  readonly maximum: number;
  /** Days at the optimum after which some plants bolt, and after which most do. */
  readonly someBolt: number;
  readonly mostBolt: number;
  readonly source: string;
  /** What of the row is not published. */
  readonly unpublished: string;
  readonly standing: 'published' | 'common practice' | 'memory';
}

/** Degree-days a day at the optimum of carrot: 6.5 less -1. Its published sums are 126 and 336 of them. */
export const CARROT_OPTIMUM_DEGREES = 7.5;

/**
 * Thermal time to a number of leaves where a crop's own pace is not published: 70 C days above 0 a leaf, as cauliflower
 * grew its leaves in two seasons (67 and 72; Mead, Curnow & Hasted 2002, Statistical Methods in Agriculture, p. 251).
 */
function atLeafPace(leaves: number): { readonly sum: number; readonly base: number; readonly upper: number } {
  return { sum: leaves * 70, base: 0, upper: 25 };
}

export const BOLTING_CROPS: readonly BoltingCrop[] = [
  {
    crop: 'Onion',
    gate: {
      size: 7,
      unit: 'mm stem',
      words: 'pencil thickness (about five leaves)',
      thermalTime: { sum: 476, base: 6, upper: 20 },
    },
    base: 0,
    optimumFrom: 5,
    optimumTo: 13,
    maximum: 15,
    someBolt: 14,
    mostBolt: 60,
    source:
      'Holdsworth & Heath 1950, Annals of Botany (none above 17 C, begins below about 15 C, size decides); optimum 5 to 13 C: review of Khokhar; five leaves: Zandstra, Michigan State University 1985',
    unpublished:
      'the 14 days; the 60 days rest on a weak source; the thermal time to the gate is a recalled 0.45 g dry weight put through Brewster 2008 eq 4.17b',
    standing: 'common practice',
  },
  {
    crop: 'Leek',
    gate: { size: 4, unit: 'leaves', words: 'four leaves', thermalTime: atLeafPace(4) },
    base: 0,
    optimumFrom: 4,
    optimumTo: 8,
    maximum: 18,
    someBolt: 21,
    mostBolt: 42,
    source:
      'Wiebe 1994 and Wurr et al. 1999, in Brewster 2008: best at 4 to 8 C over 42 days, none at 18 to 20 C, undone from 22 C',
    unpublished: 'the base of 0 C, the 21 days and the time to four leaves, taken from cauliflower',
    standing: 'common practice',
  },
  {
    crop: 'Carrot',
    gate: { size: 8, unit: 'leaves', words: 'eight leaves begun', thermalTime: atLeafPace(8) },
    base: -1,
    optimumFrom: 6.5,
    optimumTo: 6.5,
    maximum: 16,
    someBolt: 126 / CARROT_OPTIMUM_DEGREES,
    mostBolt: 336 / CARROT_OPTIMUM_DEGREES,
    source:
      'Atherton, Craigon & Basher 1990, Journal of Horticultural Science 65:423-429: base -1, optimum 6.5, maximum 16 C; 126 C days for any bolting, 336 for 90 %',
    unpublished: 'the time to eight leaves, taken from cauliflower',
    standing: 'published',
  },
  {
    crop: 'Celery',
    gate: {
      size: 17,
      unit: 'leaves',
      words: '17 leaves, those in the bud counted',
      thermalTime: { sum: 731, base: 3, upper: Number.POSITIVE_INFINITY },
    },
    base: 0,
    optimumFrom: 5,
    optimumTo: 10,
    maximum: 18,
    someBolt: 14,
    mostBolt: 63,
    source:
      'Ramin & Atherton 1991, Journal of Horticultural Science, Manipulation of bolting and flowering in celery II: 17 leaves, 731 C days above 3 C, nine weeks at 5 C; bolts at 10, partly at 14, not at 18 C',
    unpublished: 'the base of 0 C and the 14 days',
    standing: 'common practice',
  },
  {
    crop: 'Celeriac',
    gate: { size: 4, unit: 'leaves', words: 'four leaves begun', thermalTime: atLeafPace(4) },
    base: 0,
    optimumFrom: 5,
    optimumTo: 12,
    maximum: 20,
    someBolt: 14,
    mostBolt: 63,
    source:
      'Booij & Meurs 1993, Scientia Horticulturae 55:227-238: four to five leaves begun, 12 C induces, 20 C does not',
    unpublished: 'the base of 0 C and both doses, taken from celery; the time to four leaves, from cauliflower',
    standing: 'common practice',
  },
  {
    crop: 'Cabbage',
    gate: { size: 6, unit: 'mm stem', words: 'a stem of 6 mm' },
    base: 0,
    optimumFrom: 5,
    optimumTo: 7,
    maximum: 10,
    someBolt: 30,
    mostBolt: 56,
    source:
      'Wien & Wurr, The Physiology of Vegetable Crops, p. 533: stem 6 mm, 0 to 10 C, most at 5 to 7 C, a month or more',
    unpublished: 'the 56 days',
    standing: 'common practice',
  },
  {
    crop: 'Beet',
    gate: undefined,
    base: 0,
    optimumFrom: 0,
    optimumTo: 13,
    maximum: 13,
    someBolt: 40,
    mostBolt: 60,
    source:
      'Milford, Jarvis & Walters 2010, Journal of Agricultural Science: time between 0 and 13 C from sowing to the end of June; 41 such days in 2008 gave 5 to 7 % bolters in resistant sugar beet',
    unpublished: 'their weight for each temperature, all counted alike here, and the 60 days',
    standing: 'common practice',
  },
];

const CROP_BY_NAME = new Map(BOLTING_CROPS.map((crop) => [crop.crop, crop]));

/** The bolting figures of a crop by name; undefined where there are none. */
export function boltingCrop(name: string): BoltingCrop | undefined {
  return CROP_BY_NAME.get(name);
}
