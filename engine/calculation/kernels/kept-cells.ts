// Cells through links, looked up once for all formulas that read them, for as long as neither the links nor the cells change: the
// weeks of a sheet of pairs ask a dozen times whether their lot is stored. Made by the planner.

import type { Column } from '../../values/column.ts';
import type { ColumnDef } from '../layout.ts';
import { linkedKernel, throughKernel } from './load-kernels.ts';
import type { Batch, Kernel, Vector } from './vector.ts';

/** A chain from a link of this row over further links to a cell. */
export type Chain = readonly [link: ColumnDef, next: ColumnDef, ...further: ColumnDef[]];

/** What a chain leads to in rows side by side, as it was last looked up. */
export class KeptCells {
  readonly #columns: Chain;
  readonly #look: Kernel;
  /** Of the columns when it was. */
  readonly #stamps: Float64Array;
  #from = 0;
  #count = 0;
  #cells: Vector | undefined;

  constructor(columns: Chain) {
    this.#columns = columns;
    this.#look = chainKernel(columns);
    this.#stamps = new Float64Array(columns.length);
  }

  of(batch: Batch): Vector {
    const { frame, from, count } = batch;
    const stamps = this.#stamps;
    let isSame = from === this.#from && count === this.#count;
    for (let k = 0; k < stamps.length; k++) {
      const { stamp }: Column = frame.column(this.#columns[k] as ColumnDef);
      if (stamps[k] === stamp) continue;
      stamps[k] = stamp;
      isSame = false;
    }
    if (isSame && this.#cells !== undefined) return this.#cells;
    this.#from = from;
    this.#count = count;
    this.#cells = this.#look(batch);
    return this.#cells;
  }
}

/** A cell through links; a formula that looks at a few rows alone, or one, while it looks at many has its own room for those. */
export function keptKernel(kept: KeptCells, columns: Chain): Kernel {
  const few = chainKernel(columns);
  return (batch) => (batch.rows === undefined && batch.count > 1 ? kept.of(batch) : few(batch));
}

function chainKernel([link, next, ...further]: Chain): Kernel {
  return further.reduce(throughKernel, linkedKernel(link, next));
}
