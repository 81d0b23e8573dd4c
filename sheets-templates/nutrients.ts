// The Nutrients and rotation sheet: what each planting carries off the bed, and whether its family may stand there. Reads
// Plantings, Crops, Beds and Farm.

import type { SheetDeclaration } from '../engine/index.ts';
import { computed, group, link, MASS, made, PLAIN, quantity, TEXT } from './authoring.ts';

const CROP = '[Planting].[Variety].[Crop]';
const RATE = quantity('lb/acre', 'kg/ha');
const BED = '[Planting].[Bed]';
/** Crops gives the years until the family comes back: one more than the clear years between. */
const CLEAR = `MAX(0; ${CROP}.[Rotation years] - 1)`;

function removed(id: string, nutrient: string) {
  return computed(id, nutrient, MASS, `NUTRIENTREMOVED([Planting].[Marketable yield]; ${CROP}.[${nutrient} removal])`, {
    decimals: 2,
  });
}

export const nutrientsSheet: SheetDeclaration = {
  id: 'nutrients-and-rotation',
  name: 'Nutrients and rotation',
  question: 'Ground',
  about:
    'What leaves each bed with the harvest, as elements and as bags name it, and when the family may come back. Not a fertiliser recommendation.',
  rows: {
    from: 'each',
    sheet: 'plantings',
    as: made('planting', 'Planting'),
    where: 'NOT(ISBLANK([Planting].[Marketable yield]))',
  },
  columns: [
    ...group(
      'Removed',
      computed('crop', 'Crop', TEXT, '[Planting].[Crop]'),
      removed('nitrogen', 'Nitrogen'),
      removed('phosphorus', 'Phosphorus'),
      removed('potassium', 'Potassium'),
      computed('p2o5', 'P2O5', MASS, 'PHOSPHATE([Phosphorus])', { note: 'As bags name phosphorus.', decimals: 2 }),
      computed('k2o', 'K2O', MASS, 'POTASH([Potassium])', { note: 'As bags name potassium.', decimals: 2 }),
      computed('nitrogen-per-area', 'Nitrogen per area', RATE, '[Nitrogen] / [Planting].[Bed area]', { decimals: 0 }),
      computed('p2o5-per-area', 'P2O5 per area', RATE, '[P2O5] / [Planting].[Bed area]', { decimals: 0 }),
      computed('k2o-per-area', 'K2O per area', RATE, '[K2O] / [Planting].[Bed area]', { decimals: 0 }),
    ),
    ...group(
      'Rotation',
      computed('bed', 'Bed', link('beds'), BED),
      computed('family', 'Family', TEXT, '[Planting].[Family]'),
      computed('clear-years-wanted', 'Clear years wanted', PLAIN, CLEAR, {
        note: 'Without the family between.',
        decimals: 0,
      }),
      computed('clear-years-for-disease', 'Clear years for disease', PLAIN, 'DISEASEYEARS([Family])', {
        note: 'The most that a published disease of the family asks for.',
        decimals: 0,
      }),
      computed(
        'rotation',
        'Rotation',
        TEXT,
        `IF(NOT(ISBLANK(${BED})); ROTATIONSAYS([Family]; Farm[Season]; [Clear years wanted]; ${BED}.[Family last year];
          ${BED}.[Family two years ago]; ${BED}.[Family three years ago]; ${BED}.[Family four years ago]))`,
        { note: 'From the last four years of the bed.' },
      ),
      computed('here-again-from', 'Here again from', PLAIN, 'ROTATIONCLEAR(Farm[Season]; [Clear years wanted])', {
        note: 'First year the family may follow this planting.',
        decimals: 0,
      }),
    ),
  ],
  checks: [],
  cautions: [
    'A planning estimate of what leaves with the crop, not a fertiliser recommendation. Test the soil, and keep to local limits on nitrogen, phosphorus, manure and compost.',
    'White rot, clubroot and some wilts outlast any rotation: keep them off with clean plants, boots and tools.',
  ],
};
