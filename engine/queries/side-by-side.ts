// What another formula would make of a column, row by row, beside what stands there now: tried on a branch, nothing is changed.

import { message } from '../commands/messages.ts';
import type { Workbook } from '../commands/workbook.ts';
import type { Diagnostic } from '../language/tree.ts';
import { columnOf } from './book.ts';
import { numberOf } from './figures.ts';
import { rowId, rows } from './rows.ts';
import { inWords, rowName, scalarAt } from './shown.ts';
import { tryFormula } from './trying.ts';

export interface FormulaRow {
  readonly row: string;
  readonly rowName: string;
  readonly before: string;
  readonly after: string;
  readonly differs: boolean;
}

export type FormulaTrial =
  | { readonly ok: true; readonly rows: readonly FormulaRow[]; readonly differing: number }
  | { readonly ok: false; readonly why: string; readonly diagnostic?: Diagnostic };

/** Every row's figure before and after; null as formula: the template's own. Rows that come or go with it are left out. */
export function formulaSideBySide(
  workbook: Workbook,
  sheet: string,
  column: string,
  formula: string | null,
): FormulaTrial {
  if (formula !== null) {
    const tried = tryFormula(workbook, sheet, column, formula);
    if (!tried.ok) return { ok: false, why: tried.diagnostic.why, diagnostic: tried.diagnostic };
  }
  return workbook.onBranch((branch) => rowsBySide(workbook, branch, { sheet, column, formula }));
}

interface Other {
  readonly sheet: string;
  readonly column: string;
  readonly formula: string | null;
}

function rowsBySide(workbook: Workbook, branch: Workbook, { sheet, column, formula }: Other): FormulaTrial {
  const done = branch.do([{ command: 'set formula', sheet, column, formula }], message('set formula', { column }));
  if (done.refused) return { ok: false, why: done.why };
  const [before, after] = [columnOf(workbook, sheet, column), columnOf(branch, sheet, column)];
  if (before === undefined || after === undefined) return { ok: false, why: 'There is no such column any more.' };
  if (after.diagnostic !== undefined) return { ok: false, why: after.diagnostic.why, diagnostic: after.diagnostic };
  const compared = Array.from(rows(branch, sheet)).flatMap((slot): FormulaRow[] => {
    const row = rowId(branch, sheet, slot);
    const was = workbook.document.slotOf(sheet, row);
    if (was === undefined) return [];
    const [old, fresh] = [inWords(workbook, before, was), inWords(branch, after, slot)];
    const [a, b] = [scalarAt(workbook, before, was), scalarAt(branch, after, slot)].map((value, i) =>
      numberOf({ value, type: (i === 0 ? before : after).type, shown: '' }),
    );
    const differs = a === undefined || b === undefined ? old !== fresh : a !== b;
    return [{ row, rowName: rowName(branch, sheet, slot), before: old, after: fresh, differs }];
  });
  return { ok: true, rows: compared, differing: compared.filter(({ differs }) => differs).length };
}
