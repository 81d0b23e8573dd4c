// The demo's season at any size: its plantings copied in turn until there are so many, four to a bed, on as many beds as that
// takes. Varieties, seed lots, packs, stores and climate stay the demo's. Left out are its outlets and its diary, and the plantings
// whose dates follow from when they are wanted: the floor reckons with neither. The benchmarks of the season open it.

import { demoFarm } from '../../../demo/farm.ts';
import { newDocument, type Start, Workbook, type World, writeWorkbookFile } from '../../../engine/index.ts';
import { SEASON } from '../../../sheets-templates/season.ts';
import { testWorld } from '../../book.ts';

const ON_A_BED = 4;

/** Sheets of the demo that are taken over as they stand. */
const TAKEN = ['farm', 'monthly-climate', 'frost-years', 'varieties', 'suppliers', 'packs', 'seed-lots', 'stores'];

type RowsOfSheet = NonNullable<Start['rows'][string]>;

/** The demo's farm with so many plantings. */
export function copiedSeason(plantings: number): Start {
  const demo = (sheet: string): RowsOfSheet => demoFarm.rows[sheet] ?? [];
  const dated = demo('plantings').filter((row) => row.sown !== undefined || row['planted-out'] !== undefined);
  const beds = copies(demo('beds'), Math.ceil(plantings / ON_A_BED), 'bed');
  const rows = copies(dated, plantings, 'planting').map((row, index) => ({
    ...row,
    bed: String(beds[Math.floor(index / ON_A_BED)]?.bed),
  }));
  const title = `${demoFarm.title}, ${plantings} plantings`;
  const taken = Object.fromEntries(TAKEN.map((sheet) => [sheet, demo(sheet)]));
  return { ...demoFarm, title, rows: { ...taken, beds, plantings: rows } };
}

/** Rows in turn until there are so many, from the second turn on with its number behind the name. */
function copies(rows: RowsOfSheet, count: number, name: string): RowsOfSheet {
  return Array.from({ length: count }, (_, index) => {
    const row = rows[index % rows.length] ?? {};
    const turn = Math.floor(index / rows.length) + 1;
    return turn === 1 ? row : { ...row, [name]: `${row[name]} ${turn}` };
  });
}

export interface CopiedBook {
  readonly workbook: Workbook;
  readonly world: World;
  /** As a file keeps it. */
  readonly text: string;
}

export function copiedBook(plantings: number): CopiedBook {
  const world = testWorld(SEASON);
  const made = newDocument(SEASON, copiedSeason(plantings), () => world.newId());
  if (!made.ok) throw new Error(made.problems.join('\n'));
  const workbook = Workbook.open(made.data, world);
  if (workbook === undefined) throw new Error('The season template is not known.');
  return { workbook, world, text: writeWorkbookFile(workbook.data()) };
}
