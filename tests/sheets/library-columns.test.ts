// Every column of the Crops sheet that the library fills is read by a formula or a check, or shown to the grower for a reason
// told here: figures that nobody reads are not gathered.

import { describe, expect, it } from 'vitest';
import type { SheetDeclaration } from '../../engine/index.ts';
import { cropsSheet } from '../../sheets-templates/crops.ts';
import { SEASON_SHEETS } from '../../sheets-templates/season.ts';

/** Columns for the grower's eye alone, and what for. */
const SHOWN: Readonly<Record<string, string>> = {
  'Also called': 'names that people look a crop up by',
  'Start methods': 'the ways to start it, beside the usual one',
  'Seeding depth': 'how deep to sow',
  'Transplant height': 'when a seedling is ready to go out',
  'Bolting size': 'the size from which cold counts, in words',
  Ranges: 'what varies and has no columns of its own',
  Doubts: 'where sources disagree',
  Sources: 'where each figure comes from',
};

const NAMES = cropsSheet.columns.map(({ name }) => name);

function formulasOf(sheet: SheetDeclaration): readonly string[] {
  const where = 'where' in sheet.rows && typeof sheet.rows.where === 'string' ? [sheet.rows.where] : [];
  return [...sheet.columns.map(({ formula }) => formula), ...sheet.checks.map(({ says }) => says), ...where];
}

function named(pattern: RegExp, formula: string): readonly string[] {
  return [...formula.matchAll(pattern)].flatMap(([, name]) => (name === undefined ? [] : [name]));
}

/** Columns of Crops that the formulas of other sheets follow a link to, or look up by name. */
function readElsewhere(): ReadonlySet<string> {
  const formulas = SEASON_SHEETS.filter((sheet) => sheet !== cropsSheet).flatMap(formulasOf);
  return new Set(
    formulas.flatMap((formula) => [
      ...named(/\[Crop\]\.\[([^\]]+)\]/g, formula),
      ...named(/\bCrops\[([^\]]+)\]/g, formula),
    ]),
  );
}

/** Those, the columns that the sheet's own checks read, and all that such columns are worked out from. */
function readColumns(): ReadonlySet<string> {
  const read = new Set([...readElsewhere(), ...cropsSheet.checks.flatMap(({ says }) => named(/\[([^\]]+)\]/g, says))]);
  for (let before = -1; before !== read.size; ) {
    before = read.size;
    for (const { name, formula } of cropsSheet.columns)
      if (read.has(name)) for (const other of named(/\[([^\]]+)\]/g, formula)) read.add(other);
  }
  return read;
}

/** New columns that no sheet reads yet, by the model they wait for. It shrinks to nothing as the models take them up. */
const WAITING: Readonly<Record<string, readonly string[]>> = {
  'the seed count and the order': [
    'Planted piece',
    'Planted piece mass',
    'Typical germination low',
    'Typical germination',
    'Typical germination high',
    'Seedlings per seed',
    'Germination best from',
    'Germination best to',
    'Raising temperature',
  ],
  'dates in the bed': [
    'Years to first harvest',
    'Overwinters',
    'Sowing soil minimum',
    'Setting out minimum',
    'Autumn soil maximum',
    'Latest sowing before first frost',
  ],
  'warmth to a harvest': [
    'Growth minimum',
    'Growth best from',
    'Growth best to',
    'Growth maximum',
    'Degree-day ceiling',
    'Warmth to harvest low',
    'Warmth to harvest',
    'Warmth to harvest high',
    'Warmth to harvest direct low',
    'Warmth to harvest direct',
    'Warmth to harvest direct high',
    'Warmth counts from',
    'Chill below',
    'Chill days',
    'Days to maturity low',
    'Days to maturity high',
    'Days to maturity direct low',
    'Days to maturity direct high',
  ],
  'frost and cold': ['Frost limit young', 'Chilling limit'],
  bolting: [
    'Bolting trigger',
    'Bolting size warmth',
    'Bolting size warmth base',
    'Bolting cold base',
    'Bolting cold best from',
    'Bolting cold best to',
    'Bolting cold',
    'Bolting cold days',
    'Bolting cold days most',
    'Bolting day length',
    'Bolting heat',
    'Bolting heat days',
  ],
  'crowding outside the trials': ['Density least', 'Density most'],
  'the harvest by weeks and pieces': [
    'Harvest window low',
    'Harvest window high',
    'Harvest unit',
    'Plants per harvest unit',
    'Yield low',
    'Yield high',
    'Pickings',
    'Days between pickings',
    'Harvest curve middle',
    'Harvest curve spread',
    'Second cut share',
    'Third cut share',
    'Side shoot share',
  ],
  'hours of work': [
    'Picking',
    'Packing',
    'Weeding',
    'Thinning',
    'Trellising',
    'Cover',
    'Cleaning',
    'Picking rate low',
    'Picking rate',
    'Picking rate high',
    'Packing rate low',
    'Packing rate',
    'Packing rate high',
    'Cleaning rate low',
    'Cleaning rate',
    'Cleaning rate high',
    'Weeding time low',
    'Weeding time',
    'Weeding time high',
    'Thinning time low',
    'Thinning time',
    'Thinning time high',
    'Trellising time low',
    'Trellising time',
    'Trellising time high',
    'Cover time low',
    'Cover time',
    'Cover time high',
  ],
  'the store': ['Storage life low', 'Storage life high', 'Bunched life'],
};

describe('the columns of the Crops sheet', () => {
  const read = readColumns();
  const waiting = Object.values(WAITING).flat();

  it('are read by a formula or a check, or shown for a reason', () => {
    expect(NAMES.filter((name) => !read.has(name) && !(name in SHOWN) && !waiting.includes(name))).toEqual([]);
  });

  it('are declared as shown or waiting only where nothing reads them', () => {
    const declared = [...Object.keys(SHOWN), ...waiting];
    expect(declared.filter((name) => read.has(name) || !NAMES.includes(name))).toEqual([]);
    expect(new Set(declared).size).toBe(declared.length);
  });
});
