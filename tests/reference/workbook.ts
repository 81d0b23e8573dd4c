// A planting in a season workbook at a place of the calendars, to be asked what the workbook says of it: for checks of what other
// people measured. Figures come in metric units.

import { seasonOf } from '../sheets/season.ts';
import { latitudeOf, monthsOf } from './calendars.ts';

export interface Planted {
  readonly place: string;
  readonly crop: string;
  /** 'direct seed', 'cells', 'sets', 'plants'. */
  readonly start: string;
  /** Sown, or set out for sets: '2027-05-01'. */
  readonly sown: string;
  /** Set out; left out for what is sown in the bed. */
  readonly plantedOut?: string;
  /** Further entries of the planting, the variety, the farm. */
  readonly planting?: Readonly<Record<string, string>>;
  readonly variety?: Readonly<Record<string, string>>;
  readonly farm?: Readonly<Record<string, string>>;
}

export interface Asked {
  /** A figure in its metric unit; not a number where the cell is blank. */
  number(column: string): number;
  /** A civil day; not a number where the cell is blank. */
  day(column: string): number;
  text(column: string): string;
}

/** The one planting of a season. */
export function planted({ place, crop, start, sown, plantedOut, planting, variety, farm }: Planted): Asked {
  const season = seasonOf(
    {
      'Monthly climate': monthsOf(place),
      Varieties: [{ Variety: 'One', Crop: crop, ...variety }],
      Plantings: [
        {
          Planting: 'One',
          Variety: 'One',
          Start: start,
          Sown: sown,
          ...(plantedOut === undefined ? {} : { 'Planted out': plantedOut }),
          ...planting,
        },
      ],
    },
    { Latitude: String(latitudeOf(place)), ...farm },
    { units: 'si' },
  );
  return {
    number: (column) => season.number('Plantings', 'One', column) ?? Number.NaN,
    day: (column) => {
      const value = season.value('Plantings', 'One', column);
      return typeof value === 'number' ? value : Number.NaN;
    },
    text: (column) => season.shown('Plantings', 'One', column),
  };
}

const library = seasonOf({}, { Latitude: '' }, { units: 'si' });

/** A figure of the Crops sheet in its metric unit, defaults worked out; not a number where it is blank. */
export function cropFigure(crop: string, column: string): number {
  return library.number('Crops', crop, column) ?? Number.NaN;
}

/** Share of ground that beds of 30 in take with paths of 18 in: yields of fields count the paths. */
export const BED_SHARE = 30 / 48;
