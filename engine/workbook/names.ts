// Names of the columns behind a sheet that no one sees: they start with a dot that no typed name starts with.

export const WHERE = '·where';
export const FIRST = '·first';
export const LAST = '·last';

export function checkColumn(index: number): string {
  return `·check ${index}`;
}

export function isHidden(name: string): boolean {
  return name.startsWith('·');
}

/** The one-row table that holds the two ends of a span. */
export function spanTable(sheet: string): string {
  return `·span of ${sheet}`;
}
