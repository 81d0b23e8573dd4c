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
import type { CellMarks } from './cell-words.ts';
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

  /** Takes up what was found; gives the cells that are marked otherwise than before: by column, the ids of their rows. */
  takeFindings(found: readonly Finding[]): ReadonlyMap<string, ReadonlySet<string>> {
    const before = this.#findings;
    const now = new Map<string, Finding>();
    const levels = new Map<string, Set<FindingLevel>>();
    const { id: sheet } = this.#sheet();
    for (const finding of found) {
      if (finding.sheet !== sheet || finding.row === undefined) continue;
      const key = keyOf(finding.rowId, finding.column);
      // The list comes with the gravest first.
      if (!now.has(key)) now.set(key, finding);
      const known = levels.get(finding.rowId);
      if (known === undefined) levels.set(finding.rowId, new Set([finding.level]));
      else known.add(finding.level);
    }
    this.#findings = now;
    this.#levels = levels;
    return otherCells(before, now);
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

type FindingsByCell = ReadonlyMap<string, Finding>;

function otherCells(before: FindingsByCell, now: FindingsByCell): ReadonlyMap<string, ReadonlySet<string>> {
  const cells = new Map<string, Set<string>>();
  const take = ({ column, rowId }: Finding): void => {
    const known = cells.get(column);
    if (known === undefined) cells.set(column, new Set([rowId]));
    else known.add(rowId);
  };
  for (const [key, finding] of now) {
    if (before.get(key)?.says !== finding.says) take(finding);
  }
  for (const [key, finding] of before) {
    if (!now.has(key)) take(finding);
  }
  return cells;
}
