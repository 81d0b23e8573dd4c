// Every column of the Crops sheet that the library fills is read by a formula or a check, or shown to the grower for a reason
// told here: figures that nobody reads are not gathered.

import { describe, expect, it } from 'vitest';
import type { SheetDeclaration } from '../../engine/index.ts';
import { cropsSheet } from '../../sheets-templates/crops.ts';
import { SEASON_SHEETS } from '../../sheets-templates/season.ts';

/** Columns for the grower's eye alone, and what for. */
const SHOWN: Readonly<Record<string, string>> = {
  'Also called': 'names that people look a crop up by',
  'Seeding depth': 'how deep to sow',
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

describe('the columns of the Crops sheet', () => {
  const read = readColumns();

  it('are read by a formula or a check, or shown for a reason', () => {
    expect(NAMES.filter((name) => !read.has(name) && !(name in SHOWN))).toEqual([]);
  });

  it('are declared as shown only where nothing reads them', () => {
    const declared = Object.keys(SHOWN);
    expect(declared.filter((name) => read.has(name) || !NAMES.includes(name))).toEqual([]);
    expect(new Set(declared).size).toBe(declared.length);
  });
});
