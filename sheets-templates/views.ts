// The ways of looking that the sheets come with: for each question the columns that answer it, by id, in the order of the
// answer. What names a row stands in front of each by itself, and every sheet has a view of all its columns besides. Sheets
// of a dozen columns and less need none. season.ts gives them to the sheets.

import type { SheetDeclaration, ViewDeclaration } from '../engine/index.ts';
import { view } from './view.ts';
import { viewsByGroups } from './views-by-groups.ts';
import { WEEK_VIEWS } from './views-week.ts';

/** By sheet id; the first is the one a sheet opens on. */
export const VIEWS: Readonly<Record<string, readonly ViewDeclaration[]>> = {
  ...WEEK_VIEWS,
  'work-rates': [
    view(
      'time',
      'How long?',
      'task time-by-area-low time-by-area time-by-area-high row-an-hour-low row-an-hour row-an-hour-high basis',
    ),
    view(
      'hour',
      'How much an hour?',
      `task pieces-an-hour-low pieces-an-hour pieces-an-hour-high weight-an-hour-low weight-an-hour weight-an-hour-high
       basis source`,
    ),
  ],
  crops: [
    view(
      'grown',
      'How is it grown?',
      'family start-methods usual-start in-row-spacing rows-per-bed days-to-maturity harvest-window harvest-unit yield',
    ),
    view(
      'seed',
      'How much seed?',
      `seeds-per-gram germination-standard typical-germination-low typical-germination typical-germination-high
       seedlings-per-seed seed-life seeding-depth`,
    ),
    view(
      'raising',
      'How is it raised?',
      `germination-minimum germination-best-from germination-best-to germination-maximum emergence-thermal-time
       weeks-in-propagation transplant-height usual-seeds-per-block raising-temperature`,
    ),
    view(
      'season',
      'When can it go in?',
      `hardiness frost-limit chilling-limit plant-out-from-last-frost sow-outdoors-from-last-frost sowing-soil-minimum
       setting-out-minimum latest-sowing-before-first-frost latest-planting-out-before-first-frost`,
    ),
    view(
      'space',
      'How close?',
      `in-row-spacing rows-per-bed clump-in-row-spacing row-spacing usual-density density-least density-most
       squareness-loss isolated-plant-mass ceiling-yield`,
    ),
    view(
      'days',
      'How long till harvest?',
      `days-to-maturity-low days-to-maturity days-to-maturity-high days-to-maturity-direct warmth-to-harvest
       degree-day-base harvest-window-low harvest-window harvest-window-high pickings days-between-pickings`,
    ),
    view(
      'harvest',
      'What comes in?',
      `harvest-unit unit-mass plants-per-harvest-unit yield-low yield yield-high marketable-share picking-rate
       packing-rate cleaning-rate storage-life`,
    ),
    view(
      'soil',
      'What does it take?',
      `rotation-years nitrogen-removal phosphorus-removal potassium-removal crop-coefficient-initial crop-coefficient-mid
       crop-coefficient-end initial-stage mid-season-stage late-stage`,
    ),
    view(
      'keeping',
      'How does it keep?',
      `curing-days curing-loss storage-temperature storage-humidity storage-life-low storage-life storage-life-high
       monthly-storage-loss`,
    ),
  ],
  varieties: [
    view(
      'suits',
      'Will it do here?',
      `crop day-length-type critical-day-length longest-day-here day-length-reached earliest-planting-out
       leaf-growth-before-bulbing suits-this-farm why`,
    ),
    view('seed', 'How much seed?', 'crop germination seeds-needed price-per-1-000-seeds notes'),
    view(
      'days',
      'How long does it take?',
      `crop days-to-maturity days-to-maturity-direct days-to-emergence warmth-to-harvest early-share late-share
       storage-life bunched-life`,
    ),
    view('size', 'How big?', 'crop bulb-shape shape-factor isolated-plant-mass ceiling-yield'),
  ],
  'seed-lots': [
    view(
      'stock',
      'What is on hand?',
      `variety quantity weight seeds-in-lot germination-when-tested tested-on packed-on usable-seeds seeds-spoken-for`,
    ),
    view(
      'use',
      'Will it still grow?',
      `variety sowing-date age-at-sowing germination-at-sowing
       standard method advice count-it`,
    ),
    view(
      'store',
      'How is it kept?',
      `variety store-temperature store-humidity moisture-content moisture-at-equilibrium moisture by-viability-equation
       by-storage-life`,
    ),
  ],
  beds: [
    view('room', 'How much room?', 'field length width area length-in-use free-length next-free-date'),
    view(
      'rotation',
      'What stood here?',
      `field soil-cover families-this-season family-last-year family-two-years-ago family-three-years-ago family-four-years-ago
       families-too-soon rotation-warning`,
    ),
    view('place', 'Where does it lie?', 'field length width east north lies'),
  ],
  plantings: [
    view(
      'plan',
      'What goes where?',
      'variety start bed bed-length-used rows in-row-spacing sown planted-out harvest marketable-yield',
    ),
    view(
      'wanted',
      'What is wanted?',
      'variety wanted-from wanted wanted-pieces succession expected expected-pieces length-wanted proposed-bed not-placed',
    ),
    view(
      'space',
      'How close?',
      `bed-length-used rows in-row-spacing pattern seeds-per-station stations plants-standing plant-density
       mean-plant-mass marketable-yield yield-per-bed-area`,
    ),
    view(
      'raising',
      'How raised?',
      `start seed-lot sown seeds-per-station germination nursery-survival blocks-to-start seeds-needed tray trays
       bench-area`,
    ),
    view('dates', 'When?', `earliest-in-the-bed latest-in-the-bed sown planted-out harvest harvest-ends bed-free`),
    view(
      'harvest',
      'What comes in?',
      `harvest marketable-yield pieces mass-of-a-piece mean-diameter
       share-medium share-large cured-on cured-yield`,
    ),
    view(
      'money',
      'What does it earn?',
      `marketable-yield price sold-weight revenue seed-cost mix-cost labour-cost costs margin margin-per-bed-area
       share-of-margin`,
    ),
    view(
      'work',
      'How many hours?',
      `bed-hours start-hours planting-hours weeding-hours picking-hours packing-hours cleaning-hours hours harvest-a-picking-hour`,
    ),
  ],
  'best-spacing': [
    view(
      'mass',
      'What weighs most?',
      'closest widest step as-planned kept-after-curing for-most-mass mass-there plant-there',
    ),
    view(
      'money',
      'What earns most?',
      `as-planned for-most-money money-there for-most-small for-most-medium for-most-large for-most-extra-large`,
    ),
  ],
  'harvest-and-curing': [
    view(
      'harvest',
      'What comes off?',
      'crop brought-in tops-fallen pull fresh-mass bolters-and-doubles sold-fresh to-cure',
    ),
    view(
      'curing',
      'Is it cured?',
      'cure-at curing-days cured-on necks-dry curing-loss cured-mass weighed-cured measured-loss',
    ),
    view(
      'racks',
      'Have the racks room?',
      'to-cure bulk-density depth rack-area racks-that-day air-changes air container containers',
    ),
  ],
  storage: [
    view(
      'keeping',
      'How does it keep?',
      `lot crop stored-on stored-mass keeps-until monthly-loss left-after-1-month
       left-after-3-months left-after-6-months`,
    ),
    view(
      'store',
      'Does the store suit?',
      'crop store-temperature store-humidity best-from best-to best-humidity store-suits',
    ),
    view('selling', 'When to sell?', 'lot crop stored-mass monthly-loss keeps-until sell-in-place'),
  ],
  'weekly-harvest': [
    view('week', 'What comes in?', 'crop variety bed share mass pieces hours'),
    view('course', 'How does it go on?', 'crop bed week-starts from to picked-before picked-by-the-end share'),
  ],
  'bed-water': [
    view('water', 'How much to give?', 'bed crop crop-takes rain-that-serves to-give water'),
    view('season', 'What stands there?', 'bed crop season from to crop-coefficient'),
  ],
  'nutrients-and-rotation': [
    view(
      'removed',
      'What is taken away?',
      'crop nitrogen phosphorus potassium p2o5 k2o nitrogen-per-area p2o5-per-area k2o-per-area',
    ),
    view(
      'rotation',
      'Can it come back?',
      'crop bed family clear-years-wanted clear-years-for-disease rotation here-again-from',
    ),
  ],
  trials: [
    view('weighed', 'What was weighed?', 'variety grown-in plants area weight density mean-mass notes'),
    view(
      'curve',
      'Does the curve fit?',
      'variety density mean-mass mass-low mass-by-the-curve mass-high yield-by-the-curve off-the-curve',
    ),
  ],
  'trial-fits': [
    view(
      'plots',
      'What do the plots say?',
      `plots isolated-plant-mass isolated-mass-low isolated-mass-high ceiling-yield ceiling-low ceiling-high scatter
       no-curve`,
    ),
    view('count', 'Shall it count?', 'isolated-plant-mass isolated-mass-in-use ceiling-yield ceiling-in-use offer'),
    view('numbers', 'In which numbers?', 'a a-error b b-error theta theta-error'),
  ],
};

/** More columns than this are looked at through views. */
const LONG = 12;

/** The sheets with the views they come with: those written here, else for long ones their questions. */
export function withViews(sheets: readonly SheetDeclaration[]): readonly SheetDeclaration[] {
  return sheets.map((sheet) => {
    const isLong = sheet.rows.from !== 'single' && sheet.columns.length > LONG;
    const views = VIEWS[sheet.id] ?? (isLong ? viewsByGroups(sheet) : undefined);
    return views === undefined ? sheet : { ...sheet, views };
  });
}
