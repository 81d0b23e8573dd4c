// What a person typed in a cell, as plain data that says by itself what it is: a text, a number, a quantity with its unit, a
// date, a row of another sheet. Transactions and files hold it. Whatever becomes of the column it was typed in, it can
// still be read for what it was.

/** A figure with the unit it is counted in. */
export interface Quantity {
  readonly number: number;
  /** The unit's symbol: 'in', 'lb/ft2', 'degC', 'money/kg', '%'. */
  readonly unit: string;
  /** The unit was the column's own: it is shown in another when the workbook's units are switched. */
  readonly follows?: true;
  /** It was typed in this unit, in which no short figure gives the very same quantity back. */
  readonly shownIn?: string;
}

/** A civil day, '2027-03-15'. */
export interface DateContent {
  readonly date: string;
}

/** A row of the sheet that the column links to, by its id. */
export interface LinkContent {
  readonly row: string;
}

/** How far what was typed may be off: its lowest and highest, of the same kind as the content of the cell, which lies between. */
export interface ContentRange {
  readonly low: Content;
  readonly high: Content;
}

/** null: nothing typed. A text also stands for a choice; a bare number counts things. */
export type Content = null | string | boolean | number | Quantity | DateContent | LinkContent;

export function isQuantity(content: Content): content is Quantity {
  return typeof content === 'object' && content !== null && 'unit' in content;
}

export function isDateContent(content: Content): content is DateContent {
  return typeof content === 'object' && content !== null && 'date' in content;
}

export function isLinkContent(content: Content): content is LinkContent {
  return typeof content === 'object' && content !== null && 'row' in content;
}

/** Whether plain data can hold it: a number beyond every number would come back as something else. */
export function isFiniteContent(content: Content): boolean {
  if (typeof content === 'number') return Number.isFinite(content);
  return !isQuantity(content) || Number.isFinite(content.number);
}

export function sameContent(a: Content, b: Content): boolean {
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return a === b;
  if (isQuantity(a))
    return (
      isQuantity(b) && a.number === b.number && a.unit === b.unit && a.follows === b.follows && a.shownIn === b.shownIn
    );
  if (isDateContent(a)) return isDateContent(b) && a.date === b.date;
  return isLinkContent(b) && a.row === b.row;
}
