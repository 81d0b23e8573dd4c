// Cells as formulas of a layout read them: those that must be gathered, through links or as doubles, are gathered once for all
// that read them, for as long as nothing on the way changes. The weeks of a sheet of pairs ask a dozen times whether their lot is
// stored. Made by the planner.

import type { ColumnDef, Layout } from '../layout.ts';
import { linkedKernel, loadKernel, throughKernel } from './load-kernels.ts';
import type { Batch, Kernel, Vector } from './vector.ts';

/** A column of this row, or a link of it, followed over further links to a cell. */
export type Chain = readonly [ColumnDef, ...ColumnDef[]];

/** What a chain leads to in rows side by side, as it was last gathered. */
class KeptCells {
  readonly #columns: Chain;
  readonly #gather: Kernel;
  /** Of the columns when it was. */
  readonly #stamps: Float64Array;
  #from = 0;
  #count = 0;
  #cells: Vector | undefined;

  constructor(columns: Chain) {
    this.#columns = columns;
    this.#gather = chainKernel(columns);
    this.#stamps = new Float64Array(columns.length);
  }

  of(batch: Batch): Vector {
    const { frame, from, count } = batch;
    const stamps = this.#stamps;
    let isSame = from === this.#from && count === this.#count;
    for (let k = 0; k < stamps.length; k++) {
      const { stamp } = frame.column(this.#columns[k] as ColumnDef);
      if (stamps[k] === stamp) continue;
      stamps[k] = stamp;
      isSame = false;
    }
    if (isSame && this.#cells !== undefined) return this.#cells;
    this.#from = from;
    this.#count = count;
    this.#cells = this.#gather(batch);
    return this.#cells;
  }
}

/** By the numbers of the columns. */
const KEPT = new WeakMap<Layout, Map<string, KeptCells>>();

function keptCells(layout: Layout, chain: Chain): KeptCells {
  const kept = KEPT.get(layout) ?? new Map<string, KeptCells>();
  KEPT.set(layout, kept);
  const name = chain.map(({ number }) => number).join(' ');
  const known = kept.get(name) ?? new KeptCells(chain);
  kept.set(name, known);
  return known;
}

/** The kernel of a cell; a formula that looks at a few rows alone, or one, while it looks at many has its own room for those. */
export function cellKernel(layout: Layout, chain: Chain): Kernel {
  const few = chainKernel(chain);
  // Doubles of this row are read where they lie.
  if (chain.length === 1 && !chain[0].whole) return few;
  const kept = keptCells(layout, chain);
  return (batch) => (batch.rows === undefined && batch.count > 1 ? kept.of(batch) : few(batch));
}

function chainKernel([first, next, ...further]: Chain): Kernel {
  return next === undefined ? loadKernel(first) : further.reduce(throughKernel, linkedKernel(first, next));
}
