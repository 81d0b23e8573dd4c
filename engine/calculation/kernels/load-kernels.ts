// Kernels that read columns: this row's cell, a cell through links, the one row of a one-row table. Made by the planner.

import { BLANK, FAULT, FILLED } from '../../values/column.ts';
import type { ColumnDef } from '../layout.ts';
import { type Kernel, room, rowAt, scratch, single, type Vector } from './vector.ts';

/** This row's cell: a view into the column where the batch is a run of rows of doubles, else gathered. */
export function loadKernel(column: ColumnDef): Kernel {
  const view: Vector = scratch();
  const own = scratch();
  return (batch) => {
    const { values, states, exceptions } = batch.frame.column(column);
    const clean = exceptions === 0;
    if (batch.rows === undefined && values instanceof Float64Array) {
      view.values = values;
      view.states = states;
      view.at = batch.from;
      view.clean = clean;
      return view;
    }
    const { count } = batch;
    room(own, count);
    own.clean = clean;
    if (batch.rows === undefined) {
      for (let i = 0, row = batch.from; i < count; i++, row++) own.values[i] = values[row] as number;
      if (!clean) for (let i = 0, row = batch.from; i < count; i++, row++) own.states[i] = states[row] as number;
      return own;
    }
    if (values instanceof Float64Array) gather(own.values, values, batch.rows, 0, count);
    else gatherWhole(own.values, values, batch.rows, 0, count);
    if (!clean) gatherStates(own.states, states, batch.rows, count);
    return own;
  };
}

/**
 * A cell of another table through a link of this row; what throughKernel gives for a link that is loaded. The slots are read
 * where they lie, or where the batch lists its rows, gathered first.
 */
export function linkedKernel(link: ColumnDef, column: ColumnDef): Kernel {
  const out = scratch();
  let careful: Kernel | undefined;
  let listed = NO_SLOTS;
  let listedStates = NO_STATES;
  return (batch) => {
    room(out, batch.count);
    const links = batch.frame.column(link);
    const cells = batch.frame.column(column);
    const { values } = cells;
    const { count, rows } = batch;
    let { values: slots, states } = links;
    let { from } = batch;
    if (!(slots instanceof Int32Array)) {
      careful ??= throughKernel(loadKernel(link), column);
      return careful(batch);
    }
    const isPlain = links.exceptions === 0 && cells.exceptions === 0;
    if (rows !== undefined) {
      if (listed.length < count) {
        listed = new Int32Array(out.values.length);
        listedStates = new Uint8Array(out.values.length);
      }
      for (let i = 0; i < count; i++) listed[i] = slots[rows[i] as number] as number;
      if (!isPlain) gatherStates(listedStates, states, rows, count);
      [slots, states, from] = [listed, listedStates, 0];
    }
    out.clean = isPlain;
    if (!isPlain) {
      if (values instanceof Float64Array) {
        if (links.exceptions === 0) out.clean = followFilled(out, values, cells.states, slots, from, count);
        else out.clean = follow(out, values, cells.states, slots, states, from, count);
      } else out.clean = followWhole(out, values, cells.states, slots, states, from, count);
    } else if (values instanceof Float64Array) gather(out.values, values, slots, from, count);
    else gatherWhole(out.values, values, slots, from, count);
    return out;
  };
}

const NO_SLOTS = new Int32Array(0);
const NO_STATES = new Uint8Array(0);

// Each of these twice, for doubles and for whole numbers: a loop that met both could be compiled for neither.

/** out[i] = values[slots[from + i]], all of them there. */
function gather(out: Float64Array, values: Float64Array, slots: Int32Array, from: number, count: number): void {
  for (let i = 0; i < count; i++) out[i] = values[slots[from + i] as number] as number;
}

function gatherWhole(out: Float64Array, values: Int32Array, slots: Int32Array, from: number, count: number): void {
  for (let i = 0; i < count; i++) out[i] = values[slots[from + i] as number] as number;
}

function gatherStates(out: Uint8Array, states: Uint8Array, rows: Int32Array, count: number): void {
  for (let i = 0; i < count; i++) out[i] = states[rows[i] as number] as number;
}

/** As gather with the states; gives whether all are filled. A blank link gives a blank, a faulty one its fault. */
function follow(
  { values: out, states }: Vector,
  values: Float64Array,
  cells: Uint8Array,
  slots: Int32Array,
  links: Uint8Array,
  from: number,
  count: number,
): boolean {
  let worst = FILLED;
  for (let i = 0; i < count; i++) {
    const link = links[from + i] as number;
    const slot = slots[from + i] as number;
    const state = link === FILLED ? (cells[slot] as number) : link;
    states[i] = state;
    out[i] = link === FILLED ? (values[slot] as number) : link === FAULT ? slot : 0;
    worst |= state;
  }
  return worst === FILLED;
}

/** As follow, where no link is blank or faulty: a sheet of pairs leads to rows that the sheet behind it leaves out, but its own are filled. */
function followFilled(
  { values: out, states }: Vector,
  values: Float64Array,
  cells: Uint8Array,
  slots: Int32Array,
  from: number,
  count: number,
): boolean {
  let worst = FILLED;
  for (let i = 0; i < count; i++) {
    const slot = slots[from + i] as number;
    const state = cells[slot] as number;
    states[i] = state;
    out[i] = values[slot] as number;
    worst |= state;
  }
  return worst === FILLED;
}

function followWhole(
  { values: out, states }: Vector,
  values: Int32Array,
  cells: Uint8Array,
  slots: Int32Array,
  links: Uint8Array,
  from: number,
  count: number,
): boolean {
  let worst = FILLED;
  for (let i = 0; i < count; i++) {
    const link = links[from + i] as number;
    const slot = slots[from + i] as number;
    const state = link === FILLED ? (cells[slot] as number) : link;
    states[i] = state;
    out[i] = link === FILLED ? (values[slot] as number) : link === FAULT ? slot : 0;
    worst |= state;
  }
  return worst === FILLED;
}

/** This row's cell where a person typed over its formula, blank elsewhere. */
export function typedKernel(column: ColumnDef): Kernel {
  const out = scratch();
  return (batch) => {
    room(out, batch.count);
    const { values, states } = batch.frame.column(column);
    const over = batch.frame.typed[column.number]?.over;
    let clean = true;
    for (let i = 0; i < batch.count; i++) {
      const row = rowAt(batch, i);
      const state = over?.has(row) === true ? (states[row] ?? BLANK) : BLANK;
      out.values[i] = state === BLANK ? 0 : (values[row] ?? 0);
      out.states[i] = state;
      if (state !== FILLED) clean = false;
    }
    out.clean = clean;
    return out;
  };
}

const singles = new WeakMap<ColumnDef, Kernel>();

/** The one cell at slot 0 of a column, for every row; the same kernel for all that read it. */
export function singleKernel(def: ColumnDef): Kernel {
  const known = singles.get(def) ?? madeSingle(def);
  singles.set(def, known);
  return known;
}

function madeSingle(def: ColumnDef): Kernel {
  const vector = single();
  return ({ frame }) => {
    const column = frame.column(def);
    vector.values[0] = column.values[0] ?? 0;
    const state = column.length === 0 ? BLANK : (column.states[0] ?? BLANK);
    vector.states[0] = state;
    vector.clean = state === FILLED;
    return vector;
  };
}

/** The workbook's today, for every row. */
export function todayKernel(): Kernel {
  const vector = single();
  return ({ frame }) => {
    vector.values[0] = frame.today;
    return vector;
  };
}

/** A cell of another table: `link` gives row slots there; a blank link gives a blank, a faulty one its fault. */
export function throughKernel(link: Kernel, column: ColumnDef): Kernel {
  const out = scratch();
  return (batch) => {
    room(out, batch.count);
    const from = link(batch);
    const count = from.uniform ? 1 : batch.count;
    const { values, states, exceptions } = batch.frame.column(column);
    out.uniform = from.uniform;
    if (from.clean && exceptions === 0) {
      if (values instanceof Float64Array) through(out.values, values, from, count);
      else throughWhole(out.values, values, from, count);
      out.clean = true;
    } else if (values instanceof Float64Array) out.clean = throughCarefully(out, values, states, from, count);
    else out.clean = throughWholeCarefully(out, values, states, from, count);
    return out;
  };
}

// Slots that a kernel gives may be none of the table's: what is looked up and not found.

function through(out: Float64Array, values: Float64Array, { values: slots, at }: Vector, count: number): void {
  for (let i = 0; i < count; i++) out[i] = values[slots[at + i] as number] ?? 0;
}

function throughWhole(out: Float64Array, values: Int32Array, { values: slots, at }: Vector, count: number): void {
  for (let i = 0; i < count; i++) out[i] = values[slots[at + i] as number] ?? 0;
}

/** Gives whether all are filled; so the next. */
function throughCarefully(
  { values: out, states }: Vector,
  values: Float64Array,
  cells: Uint8Array,
  { values: slots, states: links, at, clean }: Vector,
  count: number,
): boolean {
  let worst = FILLED;
  for (let i = 0; i < count; i++) {
    const link = clean ? FILLED : (links[at + i] as number);
    const slot = slots[at + i] as number;
    const state = link === FILLED ? (cells[slot] ?? BLANK) : link;
    states[i] = state;
    out[i] = link === FILLED ? (values[slot] ?? 0) : link === FAULT ? slot : 0;
    worst |= state;
  }
  return worst === FILLED;
}

function throughWholeCarefully(
  { values: out, states }: Vector,
  values: Int32Array,
  cells: Uint8Array,
  { values: slots, states: links, at, clean }: Vector,
  count: number,
): boolean {
  let worst = FILLED;
  for (let i = 0; i < count; i++) {
    const link = clean ? FILLED : (links[at + i] as number);
    const slot = slots[at + i] as number;
    const state = link === FILLED ? (cells[slot] ?? BLANK) : link;
    states[i] = state;
    out[i] = link === FILLED ? (values[slot] ?? 0) : link === FAULT ? slot : 0;
    worst |= state;
  }
  return worst === FILLED;
}

/** The row's own slot, as a link to itself. */
export function ownRowKernel(): Kernel {
  const out = scratch();
  return (batch) => {
    room(out, batch.count);
    for (let i = 0; i < batch.count; i++) out.values[i] = rowAt(batch, i);
    return out;
  };
}
