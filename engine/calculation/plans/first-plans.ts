// Plans the first value, in the order of rows, of those that meet conditions: FIRSTIFS(Plantings[Planting]; Plantings[Planted out]; ">"
// & [Planted out]). Of rows between bounds the one is looked for that stands first in the table. Called by call-plans.ts alone.

import { LEAST } from '../../functions/running.ts';
import { BLANK, type Column, FILLED } from '../../values/column.ts';
import type { Frame } from '../frame.ts';
import type { Kernel, Vector } from '../kernels/vector.ts';
import type { ColumnDef, TableDef } from '../layout.ts';
import type { CallNode } from './call-nodes.ts';
import { rolesOf } from './criteria-roles.ts';
import { FEW_IN_RANGE, RangeFolds, type RowValues } from './range-folds.ts';
import { planRanged, type Ranged, rangedKernel } from './range-plans.ts';
import type { Reader } from './reader.ts';
import { conditionsOf, countedBetween } from './scan-plans.ts';

/** undefined where the conditions are none that an order of numbers answers. */
export function planFirst(tree: CallNode, reader: Reader): Kernel | undefined {
  const { values, criteria } = rolesOf(tree.args);
  const [asked] = values;
  if (asked === undefined) throw new Error(`${tree.signature.name} has no column`);
  const ranged = planRanged(asked.table, conditionsOf(criteria, reader), [asked.column], reader);
  if (ranged === undefined) return undefined;
  reader.counts(tree, countedBetween(ranged));
  return firstBetween(ranged, reader.layout.column(asked.table, asked.column));
}

/** No row. */
const NONE = -1;

function give(cells: Column, row: number, out: Vector, i: number): void {
  out.values[i] = row === NONE ? 0 : (cells.values[row] as number);
  out.states[i] = row === NONE ? BLANK : (cells.states[row] as number);
}

function firstBetween(ranged: Ranged, column: ColumnDef): Kernel {
  const { table } = ranged;
  const folds = new RangeFolds((frame) => placesOfFilled(frame, table, column), LEAST);
  return rangedKernel(
    ranged,
    (rows, from, to, out, i, frame, group, run) => {
      const cells = frame.column(column);
      if (rows === group.rows && to - from > FEW_IN_RANGE) {
        const { value } = folds.between(from, to, group, frame, run ?? {});
        give(cells, frame.rows(table)[value] ?? NONE, out, i);
        return;
      }
      const places = frame.places(table);
      let first = NONE;
      for (let at = from; at < to; at++) {
        const row = rows[at] as number;
        if (cells.states[row] === BLANK) continue;
        if (first === NONE || (places[row] as number) < (places[first] as number)) first = row;
      }
      give(cells, first, out, i);
    },
    true,
  );
}

/** Where rows stand in their table; those are left out that are blank in a column. */
function placesOfFilled(frame: Frame, table: TableDef, column: ColumnDef): RowValues {
  const { states, exceptions } = frame.column(column);
  const filled = exceptions === 0 ? states : states.map((state) => (state === BLANK ? BLANK : FILLED));
  return { values: frame.places(table), states: filled };
}
