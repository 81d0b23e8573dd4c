// The columns that pictures read, by the ids that the season's sheets give them. list.ts says which picture needs which; a
// test holds them against the sheets.

export const PLANTINGS = 'plantings';
export const BEDS = 'beds';
export const VARIETIES = 'varieties';
export const SEED_LOTS = 'seed-lots';
export const FARM = 'farm';

export const PLANTING = {
  bed: 'bed',
  lengthUsed: 'bed-length-used',
  bedWidth: 'bed-width',
  rows: 'rows',
  spacing: 'in-row-spacing',
  pattern: 'pattern',
  perStation: 'seeds-per-station',
  stations: 'stations',
  plantedOut: 'planted-out',
  bedFree: 'bed-free',
  raised: 'raised',
  fromSeed: 'from-seed',
  blocks: 'blocks-to-start',
  sets: 'sets-or-plants-to-buy',
  seeds: 'seeds-needed',
  density: 'plant-density',
  mass: 'mean-plant-mass',
  yield: 'marketable-yield',
  diameter: 'mean-diameter',
  small: 'mass-small',
  medium: 'mass-medium',
  large: 'mass-large',
  extraLarge: 'mass-extra-large',
  margin: 'margin',
} as const;

export const BED = { length: 'length', width: 'width', east: 'east', north: 'north', lies: 'lies' } as const;

export const VARIETY = {
  critical: 'critical-day-length',
  reached: 'day-length-reached',
  longest: 'longest-day-here',
} as const;

export const SEED_LOT = {
  sowing: 'sowing-date',
  tested: 'tested-on',
  germination: 'germination-at-sowing',
  standard: 'standard',
} as const;

export const FARM_COLUMN = { latitude: 'latitude', starts: 'season-starts', ends: 'season-ends' } as const;
