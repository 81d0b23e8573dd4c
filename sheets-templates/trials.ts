// The sheets of own spacing trials: Trials, a row a weighed plot, and Trial fits, a row a variety with the yield-density
// curve fitted to its plots. The fit is offered to the variety, never put there by itself.

import type { SheetDeclaration } from '../engine/index.ts';
import {
  AREA,
  computed,
  DENSITY,
  entered,
  figures,
  group,
  link,
  MASS,
  made,
  PLAIN,
  PLANT_MASS,
  quantity,
  SHARE,
  TEXT,
  withDefault,
  YIELD,
} from './authoring.ts';

const PLOTS = 'Trials[Density]; Trials[Mean mass]; Trials[Variety]; [Variety]';
const PER_MASS = quantity('1/oz', '1/g');
const AREA_PER_MASS = quantity('ft2/oz', 'm2/g');

export const trialsSheet: SheetDeclaration = {
  id: 'trials',
  name: 'Trials',
  question: 'Records',
  about:
    'Plots of one variety at several spacings, counted and weighed at harvest. Three plots or more at two densities or more give the variety a curve of its own in Trial fits.',
  rows: { from: 'entry' },
  key: 'plot',
  columns: [
    ...group(
      'Plot',
      entered('plot', 'Plot', TEXT, { required: true }),
      entered('variety', 'Variety', link('varieties'), { required: true }),
      entered('grown-in', 'Grown in', PLAIN, { note: 'Year.', decimals: 0, least: 1900, most: 2200 }),
      entered('plants', 'Plants', PLAIN, { note: 'Counted at harvest, clumps plant by plant.', decimals: 0, least: 0 }),
      entered('area', 'Area', AREA, { note: 'Of bed that they stood on.', decimals: 1, least: 0 }),
      entered('weight', 'Weight', MASS, { note: 'Of all of them.', decimals: 1, least: 0 }),
      withDefault('density', 'Density', DENSITY, 'IF([Area] > 0 m2; [Plants] / [Area])', {
        note: 'Or type it where you know it.',
        decimals: 2,
        least: 0,
      }),
      withDefault('mean-mass', 'Mean mass', PLANT_MASS, 'IF([Plants] > 0; [Weight] / [Plants])', {
        note: 'Or type it where you know it.',
        decimals: 2,
        least: 0,
      }),
      entered('notes', 'Notes', TEXT),
    ),
    ...group(
      'Curve',
      computed('by-the-curve', 'By the curve', figures('mass-by-curve'), `FITAT([Density]; ${PLOTS})`, {
        note: 'Through all plots of the variety.',
      }),
      computed('mass-by-the-curve', 'Mass by the curve', PLANT_MASS, '[By the curve].[Mass]', { decimals: 2 }),
      computed('mass-low', 'Mass low', PLANT_MASS, '[By the curve].[Low]', {
        note: 'The curve lies above this 19 times in 20.',
        decimals: 2,
      }),
      computed('mass-high', 'Mass high', PLANT_MASS, '[By the curve].[High]', {
        note: 'The curve lies below this 19 times in 20.',
        decimals: 2,
      }),
      computed('yield-by-the-curve', 'Yield by the curve', YIELD, '[Density] * [Mass by the curve]', { decimals: 2 }),
      computed('off-the-curve', 'Off the curve', SHARE, '[Mean mass] / [Mass by the curve] - 1', {
        note: 'Above zero: heavier than the curve says.',
        decimals: 0,
      }),
    ),
  ],
  checks: [
    {
      id: 'far-off-the-curve',
      name: 'Far off the curve',
      level: 'note',
      column: 'off-the-curve',
      says: 'IF(ABS([Off the curve]) > 40%; "This plot lies far off the curve of the others: look at its count and its weight.")',
    },
  ],
  cautions: ['Weigh and lift full crates between two people.'],
};

export const trialFitsSheet: SheetDeclaration = {
  id: 'trial-fits',
  name: 'Trial fits',
  question: 'Records',
  about:
    'The curve 1/mass = a + b x density through the plots of each variety, by least squares on the logarithm of mass, with standard errors and 90% intervals. To plan by it, enter its two masses in Varieties.',
  rows: {
    from: 'each',
    sheet: 'varieties',
    as: made('variety', 'Variety'),
    where: 'COUNTIFS(Trials[Variety]; [Variety]) > 0',
  },
  columns: [
    ...group(
      'Fit',
      computed('curve', 'Curve', figures('yield-curve'), `FIT(${PLOTS})`, { note: 'Read figure by figure below.' }),
      computed('general-curve', 'General curve', figures('general-curve'), `FITGENERAL(${PLOTS})`),
      computed('plots', 'Plots', PLAIN, '[Curve].[Plots]', { note: 'With a density and a mass.', decimals: 0 }),
      computed('isolated-plant-mass', 'Isolated plant mass', PLANT_MASS, '[Curve].[Isolated mass]', {
        note: '1/a: a plant on its own.',
        decimals: 1,
      }),
      computed('isolated-mass-error', 'Isolated mass error', PLANT_MASS, '[Curve].[Isolated mass error]', {
        note: 'Standard error.',
        decimals: 1,
      }),
      computed('isolated-mass-low', 'Isolated mass low', PLANT_MASS, '[Curve].[Isolated mass low]', {
        note: 'It lies above this 19 times in 20.',
        decimals: 1,
      }),
      computed('isolated-mass-high', 'Isolated mass high', PLANT_MASS, '[Curve].[Isolated mass high]', {
        note: 'It lies below this 19 times in 20; blank where the plots set no end.',
        decimals: 1,
      }),
      computed('ceiling-yield', 'Ceiling yield', YIELD, '[Curve].[Ceiling yield]', {
        note: '1/b: what crowding cannot pass.',
        decimals: 2,
      }),
      computed('ceiling-yield-error', 'Ceiling yield error', YIELD, '[Curve].[Ceiling yield error]', {
        note: 'Standard error.',
        decimals: 2,
      }),
      computed('ceiling-low', 'Ceiling low', YIELD, '[Curve].[Ceiling yield low]', {
        note: 'It lies above this 19 times in 20.',
        decimals: 2,
      }),
      computed('ceiling-high', 'Ceiling high', YIELD, '[Curve].[Ceiling yield high]', {
        note: 'It lies below this 19 times in 20; blank where the plots set no end.',
        decimals: 2,
      }),
      computed('scatter', 'Scatter', SHARE, '[Curve].[Scatter]', { note: 'Of plots about the curve.', decimals: 1 }),
      computed('widest', 'Widest', DENSITY, 'MINIFS(Trials[Density]; Trials[Variety]; [Variety])', {
        note: 'Of the plots: the curve holds from here on.',
        decimals: 2,
      }),
      computed('closest', 'Closest', DENSITY, 'MAXIFS(Trials[Density]; Trials[Variety]; [Variety])', {
        note: 'Of the plots: the curve holds up to here.',
        decimals: 2,
      }),
      computed('no-curve', 'No curve', TEXT, '[Curve].[No curve because]'),
    ),
    ...group(
      'In numbers',
      computed('a', 'a', PER_MASS, '[Curve].[a]', { decimals: 6 }),
      computed('a-error', 'a error', PER_MASS, '[Curve].[a error]', { note: 'Standard error.', decimals: 6 }),
      computed('b', 'b', AREA_PER_MASS, '[Curve].[b]', { decimals: 7 }),
      computed('b-error', 'b error', AREA_PER_MASS, '[Curve].[b error]', { note: 'Standard error.', decimals: 7 }),
      computed('theta', 'Theta', PLAIN, '[General curve].[Theta]', {
        note: 'Of the general form; within two errors of 1 the two-number curve serves.',
        decimals: 2,
      }),
      computed('theta-error', 'Theta error', PLAIN, '[General curve].[Theta error]', {
        note: 'Standard error.',
        decimals: 2,
      }),
    ),
    ...group(
      'Variety',
      computed('isolated-mass-in-use', 'Isolated mass in use', PLANT_MASS, '[Variety].[Isolated plant mass]', {
        decimals: 1,
      }),
      computed('ceiling-in-use', 'Ceiling in use', YIELD, '[Variety].[Ceiling yield]', { decimals: 2 }),
      computed(
        'offer',
        'Offer',
        TEXT,
        `IF(OR(ABS([Isolated plant mass] / [Isolated mass in use] - 1) > 1%; ABS([Ceiling yield] / [Ceiling in use] - 1) > 1%);
          "Your plots give another curve than the one in use: to plan by them, enter the two masses of this row in Varieties.")`,
      ),
    ),
  ],
  checks: [
    { id: 'no-curve', name: 'No curve', level: 'note', column: 'no-curve', says: '[No curve]' },
    { id: 'offer', name: 'Offer', level: 'note', column: 'offer', says: '[Offer]' },
    {
      id: 'no-isolated-mass',
      name: 'No isolated mass',
      level: 'note',
      column: 'isolated-plant-mass',
      says: 'IF(AND(NOT(ISBLANK([a])); ISBLANK([Isolated plant mass])); "The curve gives no mass for a plant on its own: add plots at wider spacing.")',
    },
  ],
  cautions: ['A curve holds for the densities of its plots and for seasons like theirs.'],
};
