// The condition on a sheet of pairs with what it asks of one row alone worked out once a row, in a column behind that row's sheet:
// a planting whose harvest becomes another but stays above nothing has none of its pairs looked at again. Called by build.ts.

import type { Typed } from '../../language/typed.ts';
import { type AsColumn, type PairSheet, seenFrom, sideOf } from './pair-ranges.ts';

const JOINED: readonly string[] = ['AND', 'OR', 'NOT', 'IF'];
const COMPARED: readonly string[] = ['=', '<>', '<', '<=', '>', '>='];

/** The same condition, reading those columns. Only comparisons of a cell with a constant are told apart: in them no error can begin. */
export function conditionInParts(where: Typed, sheet: PairSheet, asColumn: AsColumn): Typed {
  if (where.node === 'call' && JOINED.includes(where.signature.name)) {
    const args = where.args.map((argument) => conditionInParts(argument, sheet, asColumn));
    return args.some((argument, k) => argument !== where.args[k]) ? { ...where, args } : where;
  }
  if (!isPlainComparison(where)) return where;
  const side = sideOf(where, sheet);
  if (side === undefined) return where;
  const { id } = sheet.sources[side];
  const column = asColumn(seenFrom(where, sheet, side), sheet.sources[side]);
  const { from, to, type } = where;
  return { node: 'cell', links: [sheet.links[side].id], table: id, column: column.id, type, from, to };
}

function isPlainComparison(tree: Typed): boolean {
  if (tree.node !== 'binary' || !COMPARED.includes(tree.operator)) return false;
  const isPlain = (one: Typed): boolean => one.node === 'cell' || one.node === 'constant';
  return isPlain(tree.left) && isPlain(tree.right);
}
