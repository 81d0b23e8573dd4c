// Own trials, own bulbing dates and the best spacing as the sheets have them: published trials refitted, the offer to the
// variety, and the best spacing against the plantings sheet itself.

import { describe, expect, it } from 'vitest';
import { numberOf, readTable, textOf } from '../reference/table.ts';
import { errorsOf, type Rows, seasonOf } from './season.ts';

const TRIALS = readTable('onion-density-trials');
const FITS = readTable('density-fits').filter((row) => textOf(row, 'form') === 'reciprocal');
const NAMES = FITS.map((row) => textOf(row, 'trial'));

const PLOTS = TRIALS.filter((row) => NAMES.includes(textOf(row, 'trial'))).map((row, index) => ({
  Plot: `plot ${index + 1}`,
  Variety: textOf(row, 'trial'),
  Density: `${numberOf(row, 'density')} ${textOf(row, 'density_unit')}`,
  'Mean mass': `${numberOf(row, 'mass_g')} g`,
}));

const ROWS: Rows = {
  Varieties: [...NAMES, 'Untried'].map((name) => ({
    Variety: name,
    Crop: 'Onion, bulb',
    'Day-length type': 'intermediate',
  })),
  Trials: PLOTS,
};
const season = seasonOf(ROWS, { Latitude: '38' }, { units: 'si' });

describe('trial fits', () => {
  it('has a row for every variety with plots, and no cell in error', () => {
    expect([...season.book.rows('Trial fits')].map((row) => season.book.rowName('Trial fits', row))).toEqual(NAMES);
    expect(errorsOf(season.book)).toEqual([]);
  });

  // Ratkowsky 1983 p. 58 and Mead 1970, fitted by an independent least-squares program on ln(mass).
  for (const row of FITS) {
    const name = textOf(row, 'trial');
    it(`refits ${name}`, () => {
      const figure = (column: string): number => season.number('Trial fits', name, column) ?? Number.NaN;
      expect(figure('a') / numberOf(row, 'a')).toBeCloseTo(1, 5);
      expect(figure('b') / numberOf(row, 'b')).toBeCloseTo(1, 5);
      expect(figure('Isolated plant mass')).toBeCloseTo(1 / numberOf(row, 'a'), 2);
      expect(figure('Ceiling yield')).toBeCloseTo(0.001 / numberOf(row, 'b'), 4);
      expect(figure('Scatter')).toBeCloseTo(100 * numberOf(row, 'residual_sd'), 1);
      expect(figure('Plots')).toBe(PLOTS.filter((plot) => plot.Variety === name).length);
      expect(figure('Isolated mass error') / figure('Isolated plant mass')).toBeCloseTo(
        figure('a error') / figure('a'),
        9,
      );
      expect(figure('Ceiling yield error') / figure('Ceiling yield')).toBeCloseTo(figure('b error') / figure('b'), 9);
      expect(Math.abs(figure('Theta') - 1)).toBeLessThan(3 * figure('Theta error'));
    });
  }

  it('draws the curve at every plot, which the plots lie about evenly', () => {
    const logs = [...season.book.rows('Trials')].map((row) => {
      const off = season.book.cell('Trials', row, 'Off the curve').number ?? Number.NaN;
      return Math.log(1 + off / 100);
    });
    // Least squares on the logarithm leaves residuals near zero on average.
    expect(Math.abs(logs.reduce((sum, value) => sum + value, 0) / logs.length)).toBeLessThan(0.01);
  });

  it('offers the fit, and is content once it is entered', () => {
    const name = NAMES.find((one) => one.startsWith('Mead')) ?? '';
    expect(season.says('Trial fits', name).join()).toMatch(/another curve than the one in use/);
    season.type('Varieties', name, 'Isolated plant mass', season.shown('Trial fits', name, 'Isolated plant mass'));
    season.type('Varieties', name, 'Ceiling yield', season.shown('Trial fits', name, 'Ceiling yield'));
    expect(season.says('Trial fits', name)).toEqual([]);
    season.book.undo();
    season.book.undo();
  });

  it('counts a weighed plot by its plants and area, and asks for more plots', () => {
    const own = seasonOf(
      {
        ...ROWS,
        Trials: [
          { Plot: 'one', Variety: 'Untried', Plants: '80', Area: '2 m2', Weight: '12 kg' },
          { Plot: 'two', Variety: 'Untried', Plants: '40', Area: '2 m2', Weight: '8 kg' },
        ],
      },
      {},
      { units: 'si' },
    );
    expect(own.number('Trials', 'one', 'Density')).toBeCloseTo(40, 12);
    expect(own.number('Trials', 'one', 'Mean mass')).toBeCloseTo(150, 12);
    expect(own.says('Trial fits', 'Untried').join()).toMatch(/at least three weighed plots/);
  });
});

describe('own bulbing dates', () => {
  it('refit the thermal time to tops down, and offer it', () => {
    const months = 'January February March April May June July August September October November December'.split(' ');
    const own = seasonOf(
      {
        Varieties: [{ Variety: 'Mine', Crop: 'Onion, bulb', 'Day-length type': 'intermediate' }],
        // A year that stays at 18 degC: 13 degree-days above 5 a day.
        'Monthly climate': months.map((Month) => ({ Month, Low: '14 degC', High: '22 degC' })),
        'Bulbing records': [
          { Variety: 'Mine', 'Bulbs started': '2027-05-01', 'Tops down': '2027-07-09' },
          { Variety: 'Mine', 'Bulbs started': '2026-05-03', 'Tops down': '2026-07-15' },
        ],
      },
      {},
      { units: 'si' },
    );
    const [first] = own.book.rows('Bulbing records');
    const number = (column: string): number =>
      own.book.cell('Bulbing records', first ?? 0, column).number ?? Number.NaN;
    expect(number('Thermal time')).toBeCloseTo(70 * 13, 6);
    expect(number('Mean thermal time')).toBeCloseTo(((70 + 74) / 2) * 13, 6);
    expect(number('Mean days')).toBeCloseTo(71, 9);
    expect(number('Seasons')).toBe(2);
    expect(own.book.attention().some((one) => one.says.includes('Thermal time to tops down'))).toBe(true);
    own.type('Varieties', 'Mine', 'Thermal time to tops down', '936 degC day');
    expect(own.book.attention().some((one) => one.says.includes('Thermal time to tops down'))).toBe(false);
  });
});

describe('best spacing', () => {
  const planted = seasonOf(
    {
      Varieties: [{ Variety: 'Bulb', Crop: 'Onion, bulb', 'Day-length type': 'intermediate' }],
      Plantings: [
        {
          Planting: 'Bulb',
          Variety: 'Bulb',
          Start: 'blocks',
          Rows: '4',
          'In-row spacing': '20 cm',
          'Seeds per station': '3',
          Sown: '2027-01-05',
          'Planted out': '2027-03-15',
          Price: '3',
        },
      ],
    },
    { Latitude: '38' },
    { units: 'si' },
  );
  planted.type('Best spacing', 'Bulb', 'Closest', '4 cm');
  planted.type('Best spacing', 'Bulb', 'Widest', '40 cm');
  planted.type('Best spacing', 'Bulb', 'Step', '2 cm');
  const best = (column: string): number => planted.number('Best spacing', 'Bulb', column) ?? Number.NaN;
  const spacings = Array.from({ length: 19 }, (_, index) => 4 + 2 * index);

  /** What Plantings itself says of each spacing tried. */
  const tried = spacings.map((spacing) => {
    planted.type('Plantings', 'Bulb', 'In-row spacing', `${spacing} cm`);
    const of = (column: string): number => planted.number('Plantings', 'Bulb', column) ?? Number.NaN;
    const found = {
      spacing,
      mass: of('Mass small') + of('Mass medium') + of('Mass large') + of('Mass extra large'),
      revenue: of('Revenue small') + of('Revenue medium') + of('Revenue large') + of('Revenue extra large'),
      medium: of('Plants standing') * of('Share medium'),
      large: of('Plants standing') * of('Share large'),
      plant: of('Mean plant mass'),
    };
    planted.book.undo();
    return found;
  });
  const most = (of: 'mass' | 'revenue' | 'medium' | 'large') =>
    tried.reduce((champion, next) => (next[of] > champion[of] ? next : champion));

  it('finds the spacing with the most mass that the plantings sheet finds', () => {
    expect(best('For most mass')).toBeCloseTo(most('mass').spacing, 9);
    expect(best('Mass there')).toBeCloseTo(most('mass').mass, 6);
    expect(best('Plant there')).toBeCloseTo(most('mass').plant, 6);
  });

  it('finds the one with the most money, and wider than that with the most mass', () => {
    expect(best('For most money')).toBeCloseTo(most('revenue').spacing, 9);
    expect(best('Money there')).toBeCloseTo(most('revenue').revenue, 6);
    expect(best('For most money')).toBeGreaterThanOrEqual(best('For most mass'));
  });

  it('finds the one with the most bulbs of a size', () => {
    expect(best('For most medium')).toBeCloseTo(most('medium').spacing, 9);
    expect(best('For most large')).toBeCloseTo(most('large').spacing, 9);
    expect(best('For most large')).toBeGreaterThan(best('For most medium'));
  });

  it('leaves the planting as it was', () => {
    expect(planted.number('Plantings', 'Bulb', 'In-row spacing')).toBeCloseTo(20, 9);
    expect(errorsOf(planted.book)).toEqual([]);
  });
});
