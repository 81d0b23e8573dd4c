// The smallest changes a workbook is made of. Each says how to do it and, once done, how to undo it: a transaction is a list
// of them, undo is the list of opposites backwards. Applying them is changes.ts.

import type { Content } from './cells.ts';
import type { TypeDeclaration } from './declaration.ts';

export type Step =
  /** `own`: the content is hand-typed; false gives a computed or default cell back to its formula. */
  | {
      readonly step: 'cell';
      readonly table: string;
      readonly column: string;
      readonly row: number;
      readonly content: Content;
      readonly own: boolean;
    }
  | { readonly step: 'row'; readonly table: string; readonly row: number; readonly alive: boolean }
  | { readonly step: 'formula'; readonly table: string; readonly column: string; readonly formula: string }
  /** A column of a person's own: computed with a type from its formula, or entered with a declared type. */
  | {
      readonly step: 'new column';
      readonly table: string;
      readonly column: string;
      readonly formula: string;
      readonly type: TypeDeclaration | undefined;
      /** Its place among the sheet's columns. */
      readonly at: number;
    }
  /** Only a column that was added by hand. */
  | { readonly step: 'drop column'; readonly table: string; readonly column: string }
  | { readonly step: 'units'; readonly units: 'us' | 'si' }
  | { readonly step: 'today'; readonly today: number };

/** Whether a step changes formulas, columns or units, so that everything is compiled anew. */
export function changesSchema(step: Step): boolean {
  return step.step === 'formula' || step.step === 'new column' || step.step === 'drop column' || step.step === 'units';
}
