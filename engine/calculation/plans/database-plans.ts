// Plans the functions over the rows of a sheet that meet a sheet of criteria: DSUM and its kin, DGET. They read their
// columns whole, and give every row of the reading sheet the same: the answer is worked out again only when something read
// has changed. Called by call-plans.ts alone.

import type { Body, Fold } from '../../functions/definition.ts';
import { BLANK, FAULT, FILLED } from '../../values/column.ts';
import type { Frame } from '../frame.ts';
import { Gathering } from '../indexes/totals.ts';
import { type Kernel, single } from '../kernels/vector.ts';
import type { ColumnDef } from '../layout.ts';
import type { CallNode } from './call-nodes.ts';
import { type CriteriaNode, type Met, planCriteria } from './criteria.ts';
import type { Reader } from './reader.ts';
import { WholeReads } from './whole-reads.ts';

interface Database {
  readonly reads: WholeReads;
  readonly met: (frame: Frame) => Met;
  /** undefined: the rows themselves are meant. */
  readonly field: ColumnDef | undefined;
}

function databaseOf(tree: CallNode, reader: Reader): Database {
  const field = tree.args.find((argument) => argument.node === 'column');
  const criteria = tree.args.find((argument): argument is CriteriaNode => argument.node === 'criteria');
  if (criteria === undefined) throw new Error(`${tree.signature.name} has no criteria`);
  const reads = new WholeReads(reader);
  const met = planCriteria(criteria, reads, reader);
  return { reads, met, field: field?.node === 'column' ? reads.column(field.table, field.column) : undefined };
}

interface Answer {
  readonly value: number;
  readonly state: number;
}

/** A kernel that gives one value to every row, worked out again only when what it rests on has changed. */
function onceKernel(reads: WholeReads, work: (frame: Frame) => Answer): Kernel {
  const vector = single();
  const answer = reads.once(work);
  return ({ frame }) => {
    const { value, state } = answer(frame);
    vector.values[0] = value;
    vector.states[0] = state;
    vector.clean = state === FILLED;
    return vector;
  };
}

/** DSUM(Plantings; "Seeds"; Wanted) and its kin: the field of the rows that meet the criteria, folded. */
export function planDatabase(tree: CallNode, fold: Fold, reader: Reader): Kernel {
  const { reads, met, field } = databaseOf(tree, reader);
  const gathering = new Gathering();
  return onceKernel(reads, (frame) => {
    const found = met(frame);
    if ('fault' in found) return { value: found.fault, state: FAULT };
    const column = field === undefined ? undefined : frame.column(field);
    gathering.start(found.rows.length);
    for (const row of found.rows) {
      if (column === undefined) gathering.take(fold, 1, FILLED);
      else gathering.take(fold, column.values[row] ?? 0, column.states[row] ?? BLANK);
    }
    const state = gathering.finish(fold, reader.words.faults);
    return { value: gathering.result, state };
  });
}

/** DGET: the field of the one row that meets the criteria. */
export function planDatabaseRow(
  tree: CallNode,
  { none, several }: Extract<Body, { lane: 'database row' }>,
  reader: Reader,
): Kernel {
  const { reads, met, field } = databaseOf(tree, reader);
  const { faults } = reader.words;
  return onceKernel(reads, (frame) => {
    const found = met(frame);
    if ('fault' in found) return { value: found.fault, state: FAULT };
    const [row, second] = found.rows;
    if (row === undefined) return { value: faults.number(none), state: FAULT };
    if (second !== undefined) return { value: faults.number(several), state: FAULT };
    const column = field === undefined ? undefined : frame.column(field);
    return { value: column?.values[row] ?? 0, state: column?.states[row] ?? BLANK };
  });
}
