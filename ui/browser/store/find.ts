// What is looked for in the values of a sheet or the workbook, and where it was found: the grid marks it. The bar draws it and does the
// looking (looking.ts, which comes with it).

import { signal } from '@preact/signals';

export interface FoundCell {
  readonly sheet: string;
  readonly row: string;
  readonly slot: number;
  readonly column: string;
}

export interface Finding {
  /** 'find' or 'replace' while the bar is open. */
  readonly open: 'find' | 'replace' | undefined;
  /** How often it was asked for: each time its box is in hand again, and the values are looked through anew. */
  readonly asked: number;
  readonly text: string;
  readonly instead: string;
  readonly everywhere: boolean;
  readonly found: readonly FoundCell[];
  /** How many more stand in rows that a filter keeps back. */
  readonly behind: number;
  /** Why not all was looked through: as many were found as are told one by one, or a person ended it; undefined where all was. */
  readonly cut: 'full' | 'ended' | undefined;
  /** The keys of what was found, 'sheet row column', for the grid's marks. */
  readonly matches: ReadonlySet<string>;
  /** Which of them is in hand; -1: none yet. */
  readonly at: number;
  readonly looking: boolean;
}

const NOTHING: Finding = {
  open: undefined,
  asked: 0,
  text: '',
  instead: '',
  everywhere: false,
  found: [],
  behind: 0,
  cut: undefined,
  matches: new Set(),
  at: -1,
  looking: false,
};

export const finding = signal<Finding>(NOTHING);

/** Takes up another part of it. */
export function setFinding(part: Partial<Finding>): void {
  finding.value = { ...finding.peek(), ...part };
}

/** Opens the bar, or puts its box in hand again. */
export function openFind(open: 'find' | 'replace'): void {
  setFinding({ open, asked: finding.peek().asked + 1 });
}
