// How other parts of the page ask the formula line to begin: '=' typed in the grid starts a formula there.

import { signal } from '@preact/signals';

export interface FormulaRequest {
  readonly text: string;
}

/** The latest request; the formula line takes it and sets it back to undefined. */
export const formulaRequest = signal<FormulaRequest | undefined>(undefined);

/** Puts the focus in the formula line with this text, the caret at its end. */
export function beginFormula(text: string): void {
  formulaRequest.value = { text };
}
