// What is told of cells besides their text: what was found in them, the colour a rule gives, the note on them, whether they hold
// what is looked for or were cut. sheet-grid.ts keeps it current.

import {
  type Book,
  type ColourRule,
  colourRules,
  type Finding,
  type FindingLevel,
  meeting,
  noteOn,
  type SheetView,
} from '../../../engine/index.ts';
import { finding as lookedFor } from '../store/find.ts';
import type { CellMarks } from './cell-face.ts';
import { isRow, type RowHandle } from './row-handle.ts';

function keyOf(row: string, column: string): string {
  return `${row} ${column}`;
}

interface Rule {
  readonly rule: ColourRule;
  readonly holds: (row: number) => boolean;
}

export class SheetMarks {
  readonly #book: Book;
  readonly #sheet: () => SheetView;
  readonly #isCut: (row: string, column: string) => boolean;
  #findings = new Map<string, Finding>();
  #levels = new Map<string, Set<FindingLevel>>();
  #rules = new Map<string, Rule[]>();

  constructor(book: Book, sheet: () => SheetView, isCut: (row: string, column: string) => boolean) {
    this.#book = book;
    this.#sheet = sheet;
    this.#isCut = isCut;
    this.takeRules();
  }

  /** Takes up what was found; gives whether a cell is marked otherwise than before. */
  takeFindings(found: readonly Finding[]): (row: string, column: string) => boolean {
    const before = this.#findings;
    const now = new Map<string, Finding>();
    const levels = new Map<string, Set<FindingLevel>>();
    for (const finding of found) {
      if (finding.sheet !== this.#sheet().id || finding.row === undefined) continue;
      const key = keyOf(finding.rowId, finding.column);
      // The list comes with the gravest first.
      if (!now.has(key)) now.set(key, finding);
      levels.set(finding.rowId, (levels.get(finding.rowId) ?? new Set()).add(finding.level));
    }
    this.#findings = now;
    this.#levels = levels;
    return (row, column) => before.get(keyOf(row, column))?.says !== now.get(keyOf(row, column))?.says;
  }

  /** Whether something of a level was found in a row. */
  found(row: string, level: FindingLevel | 'any'): boolean {
    const levels = this.#levels.get(row);
    return levels !== undefined && (level === 'any' || levels.has(level));
  }

  /** Takes up the colours of the sheet as they are now. */
  takeRules(): void {
    const { id } = this.#sheet();
    this.#rules = new Map();
    for (const rule of colourRules(this.#book, id)) {
      const one = { rule, holds: meeting(this.#book, id, rule.column, rule.when) };
      this.#rules.set(rule.column, [...(this.#rules.get(rule.column) ?? []), one]);
    }
  }

  of(row: RowHandle, column: string): CellMarks {
    if (!isRow(row)) return {};
    const sheet = this.#sheet().id;
    const { matches } = lookedFor.peek();
    return {
      found: this.#findings.get(keyOf(row.id, column)),
      colour: this.#rules.get(column)?.find(({ holds }) => holds(row.slot))?.rule,
      note: noteOn(this.#book, sheet, row.id, column),
      isMatch: matches.size > 0 && matches.has(`${sheet} ${row.id} ${column}`),
      isCut: this.#isCut(row.id, column),
    };
  }
}
