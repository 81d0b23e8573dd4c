// Rows of a person's own sheets that name plantings, as Records do: what was seen of them, done to them. They are of the season that
// ends, for its plantings are copied under their own ids: in the season to come the same rows would speak of other plantings.

import { type DocumentData, sheetViews, type Workbook } from '../../engine/index.ts';
import { counted, rowNamed } from './act.ts';
import { plantingLinks } from './planting-links.ts';

/** Ids of rows by the id of their sheet, and by its name for people. */
export type NamingRows = ReadonlyMap<string, { readonly name: string; readonly rows: ReadonlySet<string> }>;

/** The rows of own sheets that name any planting but those that are told of in the season to come too. */
export function ownNaming(workbook: Workbook, data: DocumentData, toldOf: ReadonlySet<string>): NamingRows {
  const found = sheetViews(workbook).flatMap((sheet) => {
    const { id, name } = sheet;
    const links = plantingLinks(sheet);
    const rows = (data.rows[id] ?? []).filter(({ cells }) =>
      links.some((column) => {
        const planting = rowNamed(cells[column.id]);
        return planting !== undefined && !toldOf.has(planting);
      }),
    );
    return rows.length === 0 ? [] : [[id, { name, rows: new Set(rows.map((row) => row.id)) }] as const];
  });
  return new Map(found);
}

/** 'Flushes: 220 rows that name plantings of 2027 stay behind.'; '' where there are none. */
export function toldNaming(naming: NamingRows, ending: number, along: boolean): string {
  return [...naming.values()]
    .map(({ name, rows: { size } }) => {
      const one = size === 1;
      const rows = `${name}: ${counted(size, 'row')} that ${one ? 'names' : 'name'} plantings of ${ending}`;
      if (!along) return ` ${rows} ${one ? 'stays' : 'stay'} behind with that season.`;
      return ` ${rows} ${one ? 'comes' : 'come'} along, and ${one ? 'names' : 'name'} what is planted in their place.`;
    })
    .join('');
}
