// What seed holds before it is stored: oil, which decides how much water it takes up, and the most water sealed packets
// may hold. The crop library starts with the same shares of oil; calls nothing.

export interface SeedOil {
  readonly crop: string;
  /** Share of the dry seed. */
  readonly oil: number;
  readonly note: string;
}

/**
 * Oil by crop, recalled and not read: starting values for a grower who has none. For onion and beet the equilibrium
 * equation is poor whatever the oil; a measured moisture is better.
 */
export const SEED_OIL: readonly SeedOil[] = [
  { crop: 'Onion', oil: 0.24, note: 'memory' },
  { crop: 'Leek', oil: 0.23, note: 'memory' },
  { crop: 'Lettuce', oil: 0.37, note: 'memory' },
  { crop: 'Carrot', oil: 0.2, note: 'memory; Ozcan & Chalchat 2007 (Grasas y Aceites) pressed 7.84 %' },
  { crop: 'Cabbage and its kin', oil: 0.35, note: 'memory' },
  { crop: 'Radish', oil: 0.37, note: 'memory' },
  { crop: 'Beet', oil: 0.05, note: 'memory' },
  { crop: 'Spinach', oil: 0.07, note: 'memory' },
  { crop: 'Tomato', oil: 0.24, note: 'memory' },
  { crop: 'Pepper', oil: 0.23, note: 'memory' },
  { crop: 'Eggplant', oil: 0.22, note: 'memory' },
  { crop: 'Cucumber', oil: 0.32, note: 'memory' },
  { crop: 'Squash and pumpkin', oil: 0.35, note: 'memory' },
  { crop: 'Melon', oil: 0.34, note: 'memory' },
  { crop: 'Watermelon', oil: 0.3, note: 'memory' },
  { crop: 'Celery', oil: 0.25, note: 'memory' },
  { crop: 'Parsley', oil: 0.22, note: 'memory' },
  { crop: 'Pea', oil: 0.02, note: 'memory' },
  { crop: 'Common bean', oil: 0.02, note: 'memory' },
  { crop: 'Maize', oil: 0.05, note: 'memory; sweet corn 8 to 12 %' },
  { crop: 'Okra', oil: 0.16, note: 'memory' },
];

/** Most moisture, share of fresh weight, of seed in sealed packets by kind. Source: 7 CFR 201.36c, as repeated in Hawaii Administrative Rules 4-67, Table 1. */
export const SEALED_PACKET_MOISTURE: Readonly<Record<string, number>> = {
  'Bean, garden': 0.07,
  'Bean, lima': 0.07,
  Beet: 0.075,
  Broccoli: 0.05,
  'Brussels sprouts': 0.05,
  Cabbage: 0.05,
  Carrot: 0.07,
  Cauliflower: 0.05,
  Celeriac: 0.07,
  Celery: 0.07,
  'Chard, Swiss': 0.075,
  'Chinese cabbage': 0.05,
  Chives: 0.065,
  Collards: 0.05,
  'Corn, sweet': 0.08,
  Cucumber: 0.06,
  Eggplant: 0.06,
  Kale: 0.05,
  Kohlrabi: 0.05,
  Leek: 0.065,
  Lettuce: 0.055,
  Muskmelon: 0.06,
  'Mustard, India': 0.05,
  Onion: 0.065,
  'Onion, Welsh': 0.065,
  Parsley: 0.065,
  Parsnip: 0.06,
};
