// How a sheet is looked at: named views of its columns with what is shown and in which order, and colours by rule. Plain
// data by ids; templates ship views, people change them and add their own (looks.ts). Nothing here changes a figure.

import type { ById } from './records.ts';

/**
 * What a cell has to be. Amounts are canonical: m, kg, days, K, shares as 0.85, dates as civil days. Values are told by
 * their keys (queries/value-key.ts): a link by its row's id, a number or day as it is kept, '' for a blank.
 */
export type Condition =
  | { readonly is: 'one of'; readonly values: readonly string[] }
  | { readonly is: 'none of'; readonly values: readonly string[] }
  | { readonly is: 'at least'; readonly least: number }
  | { readonly is: 'at most'; readonly most: number }
  | { readonly is: 'between'; readonly least: number; readonly most: number }
  /** The text is in what the cell reads, case aside. */
  | { readonly is: 'holding'; readonly text: string }
  | { readonly is: 'not holding'; readonly text: string }
  | { readonly is: 'blank' }
  | { readonly is: 'filled' }
  /** A person typed over the formula. */
  | { readonly is: 'typed over' };

/** Rows that stay: those whose cell is so, or those in which something was found. */
export type Filter =
  | { readonly by: 'cell'; readonly column: string; readonly when: Condition }
  | { readonly by: 'finding'; readonly level: 'any' | 'error' | 'warning' | 'note' };

export interface SortKey {
  readonly column: string;
  /** Greatest, latest, last in the alphabet first. Blanks come last either way. */
  readonly descending?: true;
}

/** What stands for a column under each group of rows. */
export type Total = 'sum' | 'mean' | 'least' | 'most' | 'none';

export interface ViewDeclaration {
  readonly id: string;
  /** The question it answers: 'How close?'. */
  readonly name: string;
  /** In order. What names a row stands in front, whether it is among them or not. Absent: every column of the sheet. */
  readonly columns?: readonly string[];
  /** Those that stay in sight at the left beside the name. */
  readonly pinned?: readonly string[];
  readonly filters?: readonly Filter[];
  /** The first key counts first. Absent: in the order of the rows. */
  readonly sort?: readonly SortKey[];
  /** Rows stand under the value they share in this column. */
  readonly groupBy?: string;
  /** By column; those not named have what suits their kind. */
  readonly totals?: ById<Total>;
  /** Its place among a person's own; the sheet's come first, in their order. */
  readonly order?: number;
}

/** Named after what they look like in daylight; every theme has its own shade of each. */
export const TONES = ['rose', 'amber', 'leaf', 'sky', 'plum', 'stone'] as const;

export type Tone = (typeof TONES)[number];

/** A colour for cells that are so, always with words beside it. */
export interface ColourRule {
  readonly id: string;
  /** What it says of a cell: 'harvested late'. Shown with the colour and read out. */
  readonly name: string;
  readonly column: string;
  readonly when: Condition;
  readonly tone: Tone;
  /** A sign of a letter or two that stands in the cell, so that the colour never speaks alone. */
  readonly mark: string;
  /** Of several that hold for a cell the one with the least counts. */
  readonly order: number;
}
