// The seedlings template: plants raised for sale, batch by batch: seed, trays, mix, bench, date of sale, margin. It stands on the sheets
// of the season; a planting is a batch here, its places are the plants to sell. index.ts offers it.

import type { ColumnDeclaration, SheetDeclaration } from '../engine/index.ts';
import { computed, entered, group, MONEY, PLAIN } from './authoring.ts';
import { partOfSeason } from './part-of-season.ts';
import { rowsOfSheets, SEASON, SEASON_SHEETS } from './season.ts';
import { BESIDE_RECORDS, madeOnce } from './small-template.ts';

const SOLD: readonly ColumnDeclaration[] = group(
  'Sale',
  entered('plants-to-sell', 'Plants to sell', PLAIN, {
    note: 'Blocks, cells or pots with a plant in them; seed is reckoned so that as many stand, as surely as the confidence of Farm.',
    decimals: 0,
    least: 0,
  }),
  computed('sales', 'Sales', MONEY, '[Plants to sell] * [Price each]', { decimals: 2 }),
  computed('margin-each', 'Margin each', MONEY, '[Margin] / [Plants to sell]', { note: 'Of a plant.', decimals: 3 }),
);

/** Plantings, with what a batch is sold for beside it. */
function withSale(sheet: SheetDeclaration): SheetDeclaration {
  return sheet.id === 'plantings' ? { ...sheet, columns: [...sheet.columns, ...SOLD], checks: [] } : sheet;
}

const KEPT = [
  'planting',
  'variety',
  'crop',
  'family',
  'start',
  'seed-lot',
  'plants-to-sell',
  'sown',
  'planted-out',
  'dates-from',
  'emergence',
  'loose',
  'heated-to-germinate',
  'stations',
  'empty-stations',
  'nursery-survival',
  'germination',
  'seeds-per-station',
  'plants-per-station',
  'blocks-to-start',
  'seeds-needed',
  'tray',
  'trays',
  'mix-volume',
  'bench-area',
  'pot-on-into',
  'pot-on',
  'harden-from',
  'ready-from',
  'start-hours',
  'price-each',
  'seed-cost',
  'mix-cost',
  'labour-cost',
  'costs',
  'sales',
  'margin',
  'margin-each',
  'hours-this-season',
  'costs-this-season',
  'margin-this-season',
];

/** The template, the same whenever it is asked for. */
export const seedlings = madeOnce(() => {
  const sheets = partOfSeason(SEASON_SHEETS.map(withSale), {
    sheets: [
      'farm',
      'climate',
      'monthly-climate',
      'frost-years',
      'crops',
      'work-rates',
      'varieties',
      'packs',
      'seed-lots',
      'trays',
      'plantings',
      'raising',
      'sowing-list',
      'propagation',
      'mixes',
      'mix-ingredients',
      'seed-order',
      'suppliers',
      'order-lines',
      'weeks',
      'sources',
    ],
    only: { plantings: KEPT },
    formulas: {
      ...BESIDE_RECORDS,
      'farm/weeks-until': '[Season ends] + 26 weeks',
      'plantings/start':
        'IF(OR([Variety].[Crop].[Usual start] = "blocks"; [Variety].[Crop].[Usual start] = "cells"); [Variety].[Crop].[Usual start]; "cells")',
      'plantings/stations': '[Plants to sell]',
      'plantings/hours': '[Start hours]',
      'plantings/seed-cost':
        'IF(ISBLANK([Seed lot]); [Seeds needed] * [Variety].[Price per 1,000 seeds] / 1000; 0 money)',
      'plantings/margin': '[Sales] - [Costs]',
      'plantings/hours-this-season': '[Hours]',
      'plantings/costs-this-season': '[Costs]',
      'plantings/margin-this-season': '[Margin]',
      'plantings/in-the-bed-from': 'IF(NOT(ISBLANK([Date typed])); [Date typed]; [Earliest this season])',
      'plantings/meant-for': '[Date typed]',
      'packs/form': '"seed"',
      'packs/needed': `SUMIFS('Seed order'[Seeds to buy]; 'Seed order'[Variety]; [Variety])`,
    },
    keeps: [
      'propagation/bench-free',
      'sowing-list/mix-volume',
      'mixes/price-of-the-mix',
      'suppliers/to-pay',
      'order-lines/cost',
    ],
    names: { Plantings: 'Batches', Planting: 'Batch', 'Planted out': 'Sold from' },
    words: {
      said: [
        [/\bplanting(?:-| )out dates\b/g, 'dates of sale'],
        [/\bplanting out\b/g, 'the day of sale'],
        [/\bplanted out\b/g, 'sold'],
        [/\bPlanted out\b/g, 'Sold from'],
        [/\bPlantings\b/g, 'Batches'],
        [/\bplantings\b/g, 'batches'],
        [/\bplanting\b/g, 'batch'],
      ],
      notIn: ['crops', 'varieties', 'work-rates', 'sources'],
    },
    notes: {
      plantings:
        'One row a batch. Enter the variety, how many plants to sell, and a date or none: seed, trays, mix, bench, dates and margin follow.',
      'plantings/stations': 'Blocks, cells or pots to sell.',
      'plantings/sown': 'Follows from the day of sale where you type none.',
      'plantings/planted-out':
        'Ready to sell from this day. Follows from the sowing, or is the earliest that buyers can plant it here.',
      'plantings/date-typed': 'On sale, by what is typed under Sold from or Sown.',
      'plantings/blocks-to-start': "So that, as surely as the farm's confidence, every plant to sell is there.",
      'varieties/seeds-needed': 'Over all batches, with the spare.',
    },
  });
  return { ...SEASON, name: 'seedlings', version: 3, sheets, rows: rowsOfSheets(SEASON.rows, sheets) };
});
