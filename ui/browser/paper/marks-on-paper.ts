// The colours of a sheet on paper, which are marks there, and those of them that were met, for the line that explains them. Pure but
// for that list.

import { type Book, colourRules, meeting } from '../../../engine/index.ts';
import type { PaperMark } from './paper.ts';

export interface SheetMarks {
  /** The mark of a cell's colour, in words where the rule has no sign; '' for a cell without one. */
  of(row: number, column: string): string;
  /** Those that were asked for, in the order of the rules. */
  met(): readonly PaperMark[];
}

export function marksOf(book: Book, sheet: string): SheetMarks {
  const rules = colourRules(book, sheet).map((rule) => ({
    mark: rule.mark === '' ? rule.name : rule.mark,
    says: rule.name,
    column: rule.column,
    holds: meeting(book, sheet, rule.column, rule.when),
  }));
  const met = new Set<(typeof rules)[number]>();
  return {
    of: (row, column) => {
      const found = rules.find((rule) => rule.column === column && rule.holds(row));
      if (found === undefined) return '';
      met.add(found);
      return found.mark;
    },
    met: () => rules.filter((rule) => met.has(rule) && rule.mark !== rule.says),
  };
}
