// What a sum would be as a column: the formula, whether the sheet takes it, and what it gives in the row for which the sum was tried
// on the paper, found on a branch. Changes nothing.

import {
  cellView,
  decimalText,
  isError,
  message,
  rowName,
  rows,
  sheetView,
  tryFormula,
  type Workbook,
} from '../../engine/index.ts';
import type { ScratchRoom } from './room.ts';
import { type SumPlace, translateSum } from './translate.ts';

export type SumAsColumn =
  | { readonly ok: true; readonly formula: string; readonly said: string }
  | { readonly ok: false; readonly formula: string; readonly why: string };

/** `said` tells what the column gives where the paper gave its figure. */
export function sumAsColumn(book: Workbook, room: ScratchRoom, place: SumPlace, sheet: string): SumAsColumn {
  const translated = translateSum(room, place, sheet);
  if (!translated.ok) return { ok: false, formula: '', why: translated.why };
  const { formula, row } = translated;
  const tried = tryFormula(book, sheet, undefined, formula);
  if (!tried.ok) return { ok: false, formula, why: tried.diagnostic.why };
  const slots = rows(book, sheet);
  const slot = slots[row ?? 0];
  if (slot === undefined) return { ok: true, formula, said: 'The sheet has no row yet to try it in.' };
  const onTrial = book.onBranch((branch) => {
    const name = 'Sum on trial';
    const done = branch.do([{ command: 'add formula', sheet, name, formula }], message('trial'));
    const column = sheetView(branch, sheet)?.columns.find((one) => one.name === name);
    if (done.refused || column === undefined) return { why: done.refused ? done.why : 'It fits no column.' };
    return { column, cell: cellView(branch, sheet, slot, column.id) };
  });
  if ('why' in onTrial) return { ok: false, formula, why: onTrial.why };
  const { column } = onTrial;
  const { value, text } = onTrial.cell;
  if (isError(value)) return { ok: false, formula, why: `In ${rowName(book, sheet, slot)}: ${value.why}` };
  const onPaper = room.cell(place.paper, place.cell);
  const isNumber = column.type?.kind === 'number' && typeof value === 'number' && typeof onPaper.value === 'number';
  const same = isNumber
    ? Math.abs(value - onPaper.value) <= 1e-9 * Math.max(1, Math.abs(onPaper.value))
    : value === onPaper.value || text === onPaper.text;
  if (!same) {
    const read = typeof value === 'number' && column.type?.kind === 'number' ? decimalText(value, 0, 9) : text;
    return {
      ok: false,
      formula,
      why: `In ${rowName(book, sheet, slot)} it would give ${read || 'nothing'}, and the paper gives ${onPaper.text}.`,
    };
  }
  return { ok: true, formula, said: `In ${rowName(book, sheet, slot)} it gives ${onPaper.text}, as on the paper.` };
}
