// What the smaller templates share.

import type { SheetDeclaration, Template } from '../engine/index.ts';

export interface OwnTemplate {
  readonly template: Template;
  readonly sheets: readonly SheetDeclaration[];
}

/** Formulas of plantings without outlets and products. */
export const BESIDE_SALES: Readonly<Record<string, string>> = {
  'plantings/sales-by-outlets': '0 money',
};
