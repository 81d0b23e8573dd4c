// Nutrients that leave with the crop: nitrogen, phosphorus and potassium per tonne times the planned yield, oxide names and
// elements told apart. Rates are kg per tonne fresh (1/1000), masses and areas in one set of units. Calls nothing.

import type { Limits } from './limits.ts';
import type { ModelSource } from './source.ts';

export const NUTRIENT_LIMITS = {
  rate: {
    min: 0,
    max: 60,
    why: 'no crop removes more than about 45 kg of one nutrient a tonne: dry beans 38, fresh vegetables below 12',
  },
} satisfies Limits;

/** Nitrogen, phosphorus and potassium as elements. */
export interface Nutrients {
  readonly nitrogen: number;
  readonly phosphorus: number;
  readonly potassium: number;
}

const ATOMIC_MASS = { potassium: 39.0983, oxygen: 15.999, phosphorus: 30.973762 } as const;

/** Mass of P2O5 that holds a mass of 1 of phosphorus. */
export const PHOSPHATE_PER_PHOSPHORUS =
  (2 * ATOMIC_MASS.phosphorus + 5 * ATOMIC_MASS.oxygen) / (2 * ATOMIC_MASS.phosphorus);

/** Mass of K2O that holds a mass of 1 of potassium. */
export const POTASH_PER_POTASSIUM = (2 * ATOMIC_MASS.potassium + ATOMIC_MASS.oxygen) / (2 * ATOMIC_MASS.potassium);

/** Protein holds 16 % nitrogen: nitrogen = protein / 6.25, the convention of food tables. */
export const PROTEIN_PER_NITROGEN = 6.25;

function scaled(nutrients: Nutrients, factor: number): Nutrients {
  return {
    nitrogen: nutrients.nitrogen * factor,
    phosphorus: nutrients.phosphorus * factor,
    potassium: nutrients.potassium * factor,
  };
}

/** Nutrients in a harvest, in the mass unit of the harvest, from rates in kg per tonne. NaN for a negative harvest. */
export function removedNutrients(harvest: number, ratesPerTonne: Nutrients): Nutrients {
  return scaled(ratesPerTonne, harvest >= 0 ? harvest / 1000 : Number.NaN);
}

/**
 * Rates in kg per tonne from a food table's figures per 100 g of the part sold: protein in g, phosphorus and potassium in
 * mg. Leaves and tops carried off come on top.
 */
export function ratesFromComposition(
  proteinGrams: number,
  phosphorusMilligrams: number,
  potassiumMilligrams: number,
): Nutrients {
  return {
    nitrogen: (proteinGrams * 10) / PROTEIN_PER_NITROGEN,
    phosphorus: phosphorusMilligrams / 100,
    potassium: potassiumMilligrams / 100,
  };
}

/** The same nutrients under the names on a fertiliser bag: N, P2O5 and K2O. */
export function asOxides(nutrients: Nutrients): { readonly n: number; readonly p2o5: number; readonly k2o: number } {
  return {
    n: nutrients.nitrogen,
    p2o5: nutrients.phosphorus * PHOSPHATE_PER_PHOSPHORUS,
    k2o: nutrients.potassium * POTASH_PER_POTASSIUM,
  };
}

/** A bag's N, P2O5 and K2O as elements. */
export function asElements(n: number, p2o5: number, k2o: number): Nutrients {
  return { nitrogen: n, phosphorus: p2o5 / PHOSPHATE_PER_PHOSPHORUS, potassium: k2o / POTASH_PER_POTASSIUM };
}

/** What is given less what leaves: above zero stays in the soil or is lost. */
export function nutrientBalance(given: Nutrients, removed: Nutrients): Nutrients {
  return {
    nitrogen: given.nitrogen - removed.nitrogen,
    phosphorus: given.phosphorus - removed.phosphorus,
    potassium: given.potassium - removed.potassium,
  };
}

/** Shown wherever nutrients are planned. */
export const NUTRIENT_CAUTION =
  'A planning estimate of what leaves with the crop, not a fertiliser recommendation. Test the soil, and keep to local limits on nitrogen, phosphorus, manure and compost.';

export const SOURCES: readonly ModelSource[] = [
  {
    model: 'Nutrients removed',
    gives: 'nitrogen, phosphorus and potassium that leave with a harvest',
    equation: 'harvest x rate per tonne; from food tables nitrogen = protein / 6.25',
    range: 'the part of the crop sold; tops carried off come on top',
    source:
      'USDA National Nutrient Database for Standard Reference; onion also Khokhar 2019, J. Hort. Sci. Biotechnol. 94: 703-717',
    standing: 'published',
  },
];
