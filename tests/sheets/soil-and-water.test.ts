// Bed water, nutrients and rotation as the sheets have them, against the worked example of FAO-56 and published removals.

import { describe, expect, it } from 'vitest';
import { civilDay } from '../../engine/index.ts';
import { errorsOf, type Rows, seasonOf } from './season.ts';

const MONTHS = 'January February March April May June July August September October November December'.split(' ');

/** The dry bean of FAO-56 example 28: stages of 25, 25, 30 and 20 days, coefficients 0.15, 1.19 and 0.35. */
const BEAN = {
  Crop: 'Bean of the example',
  Family: 'Fabaceae',
  'Usual start': 'direct seed',
  'Days to maturity direct': '100 days',
  'Harvest window': '1 day',
  'In-row spacing': '10 cm',
  'Rows per bed': '2',
  'Germination standard': '70%',
  'Isolated plant mass': '50 g',
  'Ceiling yield': '1 kg/m2',
  'Marketable share': '100%',
  'Initial stage': '25 days',
  'Development stage': '25 days',
  'Mid-season stage': '30 days',
  'Late stage': '20 days',
  'Crop coefficient initial': '0.15',
  'Crop coefficient mid': '1.19',
  'Crop coefficient end': '0.35',
  'Rotation years': '3',
};

const ROWS: Rows = {
  Crops: [BEAN],
  'Monthly climate': MONTHS.map((Month) => ({
    Month,
    Low: '10 degC',
    High: '20 degC',
    'Reference evapotranspiration': '5 mm/day',
    Rain: '31 mm',
  })),
  Beds: [
    {
      Bed: 'One',
      Length: '20 m',
      Width: '75 cm',
      'Family last year': 'Apiaceae',
      'Family two years ago': 'Fabaceae',
    },
  ],
  Varieties: [
    { Variety: 'Bean', Crop: 'Bean of the example' },
    { Variety: 'Bulb', Crop: 'Onion, bulb', 'Day-length type': 'intermediate' },
  ],
  Plantings: [
    // 101 days in the bed: the season ends with the day of harvest.
    { Planting: 'Bean', Variety: 'Bean', Bed: 'One', Sown: '2027-04-02' },
    {
      Planting: 'Bulb',
      Variety: 'Bulb',
      Start: 'blocks',
      Rows: '4',
      'In-row spacing': '20 cm',
      Sown: '2027-01-05',
      'Planted out': '2027-03-15',
    },
  ],
};

const season = seasonOf(ROWS, { Latitude: '38', 'Last frost': '2027-04-01' }, { units: 'si' });

interface Week {
  readonly from: number;
  readonly to: number;
  readonly number: (column: string) => number;
}

function weeksOf(planting: string): readonly Week[] {
  return [...season.book.rows('Bed water')].flatMap((row) => {
    if (!season.book.rowName('Bed water', row).startsWith(planting)) return [];
    const number = (column: string): number => season.book.cell('Bed water', row, column).number ?? Number.NaN;
    return [{ from: number('From'), to: number('To'), number }];
  });
}

/** The curve of example 28 stretched to 101 days. */
function coefficient(day: number): number {
  const at = (day * 100) / 101;
  if (at <= 25) return 0.15;
  if (at <= 50) return 0.15 + ((at - 25) / 25) * (1.19 - 0.15);
  if (at <= 80) return 1.19;
  return 1.19 + ((at - 80) / 20) * (0.35 - 1.19);
}

describe('bed water', () => {
  it('leaves no cell in error and runs from planting to the end of the season', () => {
    expect(errorsOf(season.book)).toEqual([]);
    const weeks = weeksOf('Bean');
    expect(weeks[0]?.from).toBe(0);
    expect(weeks.at(-1)?.to).toBe(101);
    for (const [index, week] of weeks.entries()) if (index > 0) expect(week.from).toBe(weeks[index - 1]?.to);
  });

  it('takes the coefficients of FAO-56 example 28 times reference evapotranspiration', () => {
    for (const week of weeksOf('Bean')) {
      expect(week.number('Crop coefficient')).toBeCloseTo(coefficient((week.from + week.to) / 2), 9);
      const steps = 2000;
      let sum = 0;
      for (let step = 0; step < steps; step += 1) {
        sum += coefficient(week.from + ((step + 0.5) * (week.to - week.from)) / steps);
      }
      expect(week.number('Crop takes')).toBeCloseTo((5 * sum * (week.to - week.from)) / steps, 3);
    }
  });

  it('gives what rain leaves open, on the area of the bed', () => {
    const july = weeksOf('Bean').find((week) => week.from > 45 && week.to - week.from === 7);
    const takes = july?.number('Crop takes') ?? Number.NaN;
    // May has 31 mm in 31 days; four fifths serve, nine tenths of the water given arrive.
    expect(july?.number('Rain that serves')).toBeCloseTo(7 * 0.8, 9);
    expect(july?.number('To give')).toBeCloseTo((takes - 5.6) / 0.9, 9);
    expect(july?.number('Water')).toBeCloseTo(((takes - 5.6) / 0.9) * 20 * 0.75, 6);
  });

  it('adds the beds up by week, and stays empty without evapotranspiration', () => {
    const all = [...season.book.rows('Weather by week')].reduce(
      (sum, row) => sum + (season.book.cell('Weather by week', row, 'Water for all beds').number ?? 0),
      0,
    );
    const beds = [...season.book.rows('Bed water')].reduce(
      (sum, row) => sum + (season.book.cell('Bed water', row, 'Water').number ?? 0),
      0,
    );
    expect(all).toBeCloseTo(beds, 6);
    const dry = seasonOf({ ...ROWS, 'Monthly climate': [] }, { Latitude: '38' });
    expect([...dry.book.rows('Bed water')]).toEqual([]);
  });

  it('lies within the 225 to 1040 mm a season that onion takes (Perez-Ortola & Knox, review)', () => {
    const taken = weeksOf('Bulb').reduce((sum, week) => sum + week.number('Crop takes'), 0);
    expect(taken).toBeGreaterThan(225);
    expect(taken).toBeLessThan(1040);
  });
});

describe('nutrients and rotation', () => {
  it('removes what Khokhar 2019 gives for onion: 1.8, 0.35 and 2.0 kg a tonne', () => {
    const tonnes = (season.number('Plantings', 'Bulb', 'Marketable yield') ?? Number.NaN) / 1000;
    const removed = (column: string) => season.number('Nutrients and rotation', 'Bulb', column) ?? Number.NaN;
    expect(removed('Nitrogen')).toBeCloseTo(1.8 * tonnes, 9);
    expect(removed('Phosphorus')).toBeCloseTo(0.35 * tonnes, 9);
    expect(removed('Potassium')).toBeCloseTo(2 * tonnes, 9);
    // Oxide factors of fertiliser labels: 2.29 and 1.20.
    expect(removed('P2O5') / removed('Phosphorus')).toBeCloseTo(2.29, 2);
    expect(removed('K2O') / removed('Potassium')).toBeCloseTo(1.2, 1);
    const hectares = (season.number('Plantings', 'Bulb', 'Bed area') ?? Number.NaN) / 10_000;
    expect(removed('Nitrogen per area')).toBeCloseTo((1.8 * tonnes) / hectares, 6);
  });

  it('finds a family that comes back too soon, and when it may', () => {
    const row = 'Bean';
    expect(season.value('Nutrients and rotation', row, 'Rotation')).toBe(
      'Fabaceae stood here in 2025: 1 clear year since, 2 wanted. Choose another bed, or wait until 2028.',
    );
    expect(season.number('Nutrients and rotation', row, 'Here again from')).toBe(2030);
    // University of Connecticut IPM: anthracnose and bacterial blight of bean, two years.
    expect(season.number('Nutrients and rotation', row, 'Clear years for disease')).toBe(2);
    expect(season.value('Nutrients and rotation', 'Bulb', 'Rotation')).toBeNull();
  });

  it('plans the years of the family from the same figures as the warning of the planting', () => {
    expect(season.value('Plantings', 'Bean', 'Back too soon')).toBe(true);
    season.type('Beds', 'One', 'Family two years ago', 'Poaceae');
    expect(season.value('Nutrients and rotation', 'Bean', 'Rotation')).toMatch(/^Clear/);
    expect(season.value('Plantings', 'Bean', 'Back too soon')).not.toBe(true);
    season.book.undo();
  });
});

describe('dates of water', () => {
  it('begin in the week of planting', () => {
    const first = [...season.book.rows('Bed water')]
      .filter((row) => season.book.rowName('Bed water', row).startsWith('Bean'))
      .map((row) => Number(season.book.value('Bed water', row, 'Week starts')))[0];
    expect(first).toBeLessThanOrEqual(civilDay(2027, 4, 2));
    expect((first ?? 0) + 7).toBeGreaterThan(civilDay(2027, 4, 2));
  });
});
