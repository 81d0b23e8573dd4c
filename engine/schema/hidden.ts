// Ids of the columns and tables behind a sheet that no one sees: they begin with a dot that no other id begins with.

export { isHidden } from '../calculation/layout.ts';

/** The yes/no column that says which rows of a sheet exist. */
export const WHERE = '·where';
/** The ends of a span of dates, in a one-row table of their own. */
export const FIRST = '·first';
export const LAST = '·last';
/** Which of its dated columns an event comes from. */
export const KIND = '·kind';

/** The column that holds what a check says. */
export function checkColumn(id: string): string {
  return `·check ${id}`;
}

/** Whether a column is one of those. */
export function isCheckColumn(column: string): boolean {
  return column.startsWith(checkColumn(''));
}

/** The one-row table that holds the two ends of a span. */
export function spanTable(sheet: string): string {
  return `·span of ${sheet}`;
}
