// Finding anything in the workbook by its name: sheets, columns and rows. Pure; the go-to box calls it.

import type { WorkbookFace } from '../../../engine/index.ts';

export interface FoundPlace {
  readonly kind: 'sheet' | 'column' | 'row';
  readonly name: string;
  /** The sheet it is in; for a sheet, its question. */
  readonly within: string;
  readonly table: string;
  readonly row: number | undefined;
  readonly column: string | undefined;
}

/** The best `most` matches, those that begin with the words first, sheets before rows before columns. */
export function findPlaces(workbook: WorkbookFace, typed: string, most: number): readonly FoundPlace[] {
  const wanted = typed.trim().toLowerCase();
  const tables = workbook.tables();
  if (wanted === '') {
    return tables.map(({ name, question }) => sheet(name, question)).slice(0, most);
  }
  const found: { place: FoundPlace; rank: number }[] = [];
  const offer = (place: FoundPlace, kindRank: number): void => {
    const rank = rankOf(place.name.toLowerCase(), wanted);
    if (rank !== undefined) found.push({ place, rank: rank * 4 + kindRank });
  };
  for (const table of tables) {
    offer(sheet(table.name, table.question), 0);
    for (const { name } of table.columns) {
      offer({ kind: 'column', name, within: table.name, table: table.name, row: undefined, column: name }, 2);
    }
    if (table.oneRow) continue;
    for (const row of workbook.rows(table.name)) {
      const name = workbook.rowName(table.name, row);
      offer({ kind: 'row', name, within: table.name, table: table.name, row, column: table.key }, 1);
    }
  }
  return found
    .sort((a, b) => a.rank - b.rank || a.place.name.length - b.place.name.length)
    .slice(0, most)
    .map(({ place }) => place);
}

function sheet(name: string, question: string): FoundPlace {
  return { kind: 'sheet', name, within: question, table: name, row: undefined, column: undefined };
}

/** 0 the same, 1 begins with it, 2 a word begins with it, 3 holds it; undefined: no match. */
function rankOf(name: string, wanted: string): number | undefined {
  if (name === wanted) return 0;
  if (name.startsWith(wanted)) return 1;
  if (name.includes(` ${wanted}`)) return 2;
  return name.includes(wanted) ? 3 : undefined;
}
