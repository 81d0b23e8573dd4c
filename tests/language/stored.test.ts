// Formulas as workbooks keep them: what each becomes with ids in place of names, what is shown again, and that whatever is
// renamed a kept formula means the same.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type CheckContext, checkFormula } from '../../engine/language/checker.ts';
import { parseFormula } from '../../engine/language/parser.ts';
import { type FoundName, idsIn, shownFormula, storedFormula } from '../../engine/language/stored.ts';
import type { Catalog, Typed } from '../../engine/language/typed.ts';
import { anyCall, CONTEXT } from './any-call.ts';
import { contextOf, isUnitHere } from './plan.ts';

interface Read {
  readonly typed: Typed | undefined;
  readonly found: readonly FoundName[];
}

function read(text: string, context: CheckContext): Read {
  const parsed = parseFormula(text, isUnitHere);
  if (!parsed.ok) throw new Error(`${text}: ${parsed.diagnostic.why}`);
  const found: FoundName[] = [];
  const told = {
    ...context,
    found: ({ from, to }: { from: number; to: number }, id: string) => found.push({ from, to, id }),
  };
  const checked = checkFormula(parsed.tree, told);
  return { typed: checked.ok ? checked.typed : undefined, found };
}

/** What a catalogue calls the sheet or column of an id. */
function namesOf({ tables }: Catalog): (id: string) => string | undefined {
  const names = new Map<string, string>();
  for (const { id, name, columns } of tables) {
    names.set(id, name);
    for (const column of columns) names.set(`${id}/${column.id}`, column.name);
  }
  return (id) => names.get(id);
}

describe('a formula is kept', () => {
  test.each([
    ['[length] * 2', '[#plantings/length] * 2'],
    ['[Bed] . [Area]', '[#plantings/bed] . [#beds/area]'],
    ["'seed LOTS'[Lot]", "'#seed-lots'[#seed-lots/lot]"],
    ['ROWS(Beds) + ROWS(beds)', "ROWS('#beds') + ROWS('#beds')"],
    ['Farm[Bed width]', "'#farm'[#farm/bed-width]"],
    ['DCOUNT(Beds; "Length"; Wanted)', "DCOUNT('#beds'; \"#beds/length\"; '#wanted')"],
    ['DCOUNT(Beds; Beds[Length]; Wanted)', "DCOUNT('#beds'; '#beds'[#beds/length]; '#wanted')"],
    ['DCOUNT(Beds; 3; Wanted)', "DCOUNT('#beds'; 3; '#wanted')"],
    ['VLOOKUP("x"; \'Seed lots\'; 2)', 'VLOOKUP("x"; \'#seed-lots\'; 2)'],
    ['"Length" & "Beds"', '"Length" & "Beds"'],
    ['[Length] + [Moon]', '[#plantings/length] + [Moon]'],
    ['8 in', '8 in'],
  ])('%s', (text, stored) => {
    const { found } = read(text, CONTEXT);
    expect(storedFormula(text, found)).toBe(stored);
  });
});

describe('a kept formula is shown', () => {
  const names: Readonly<Record<string, string>> = {
    beds: 'Garden beds',
    'beds/length': 'Net [m] length',
    crops: 'Crops',
    'crops/note': 'Its "note"',
    "o'clock": "O'clock",
  };
  const nameOf = (id: string): string | undefined => names[id];

  test.each([
    ['[#beds/length] + 1', '[Net [[m]] length] + 1'],
    ["'#beds'[#beds/length]", "'Garden beds'[Net [[m]] length]"],
    ["ROWS('#crops')", 'ROWS(Crops)'],
    ['DSUM(\'#crops\'; "#crops/note"; X)', 'DSUM(Crops; "Its ""note"""; X)'],
    // What is gone is shown by its last word; a text that only looks like an id stays.
    ['[#beds/width] * 2', '[width] * 2'],
    ["ROWS('#fields')", 'ROWS(fields)'],
    ['"#1/2" & [#beds/length]', '"#1/2" & [Net [[m]] length]'],
    ['[Length] & "#"', '[Length] & "#"'],
  ])('%s', (stored, shown) => {
    expect(shownFormula(stored, nameOf)).toBe(shown);
  });

  test('the ids in it are told as often as they stand there', () => {
    expect(idsIn('[#beds/length] + SUM(\'#beds\'[#beds/length]) & "#1" & "#a/b"')).toEqual([
      'beds/length',
      'beds',
      'beds/length',
      'a/b',
    ]);
    expect(idsIn('[Length]')).toEqual([]);
  });
});

/** A typed tree as text without its places. */
function meaning(typed: Typed | undefined): string {
  return JSON.stringify(typed, (key, value: unknown) => (key === 'from' || key === 'to' ? undefined : value));
}

test('whatever is renamed, a kept formula means the same', () => {
  const renamed: Catalog = {
    tables: CONTEXT.catalog.tables.map((table) => ({
      ...table,
      name: `My 'own' ${table.name}`,
      columns: table.columns.map((column) => ({ ...column, name: `${column.name} [new] "x"` })),
    })),
  };
  let kept = 0;
  fc.assert(
    fc.property(anyCall, (text) => {
      const { typed, found } = read(text, CONTEXT);
      if (typed === undefined) return;
      kept++;
      const stored = storedFormula(text, found);
      const same = shownFormula(stored, namesOf(CONTEXT.catalog));
      expect(meaning(read(same, CONTEXT).typed), text).toBe(meaning(typed));
      const anew = shownFormula(stored, namesOf(renamed));
      expect(meaning(read(anew, { ...CONTEXT, catalog: renamed }).typed), anew).toBe(meaning(typed));
    }),
    { numRuns: 3000 },
  );
  expect(kept).toBeGreaterThan(300);
});

test('a formula that stands in no sheet is kept as well', () => {
  const { found } = read('SUM(Plantings[Length])', contextOf({ table: undefined }));
  expect(storedFormula('SUM(Plantings[Length])', found)).toBe("SUM('#plantings'[#plantings/length])");
});
