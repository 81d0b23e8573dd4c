// Plans the functions over the rows of a sheet that meet a sheet of criteria: DSUM and its kin, DGET. They read their
// columns whole, and give every row of the reading sheet the same: the answer is worked out again only when something read
// has changed. Called by call-plans.ts alone.

import type { Body, Fold } from '../functions/definition.ts';
import { BLANK, Column, FAULT, FILLED } from '../values/column.ts';
import type { CallNode } from './call-nodes.ts';
import { type CriteriaNode, type Met, planCriteria } from './criteria.ts';
import type { Reader } from './reader.ts';
import { Gathering } from './rollup.ts';
import { type Kernel, scratch } from './vector.ts';
import { WholeReads } from './whole-reads.ts';

interface Database {
  readonly reads: WholeReads;
  readonly met: () => Met;
  /** undefined: the rows themselves are meant. */
  readonly field: Column | undefined;
}

function databaseOf(tree: CallNode, reader: Reader): Database {
  const field = tree.args.find((argument) => argument.node === 'column');
  const criteria = tree.args.find((argument): argument is CriteriaNode => argument.node === 'criteria');
  if (criteria === undefined) throw new Error(`${tree.signature.name} has no criteria`);
  const reads = new WholeReads(reader);
  const met = planCriteria(criteria, reads, reader);
  return { reads, met, field: field?.node === 'column' ? reads.column(field.table, field.column) : undefined };
}

type Give = (value: number, state: number) => void;

/** A kernel that gives one value to every row, worked out again only when what it rests on has changed. */
function onceKernel(reads: WholeReads, work: (give: Give) => void): Kernel {
  const vector = { ...scratch(), uniform: true };
  const give: Give = (value, state) => {
    vector.values[0] = value;
    vector.states[0] = state;
    vector.clean = state === FILLED;
  };
  let seen = -1;
  return () => {
    const now = reads.version();
    if (now !== seen) work(give);
    seen = now;
    return vector;
  };
}

/** DSUM(Plantings; "Seeds"; Wanted) and its kin: the field of the rows that meet the criteria, folded. */
export function planDatabase(tree: CallNode, fold: Fold, reader: Reader): Kernel {
  const { reads, met, field } = databaseOf(tree, reader);
  const gathering = new Gathering();
  const result = new Column(false);
  result.grow(1);
  return onceKernel(reads, (give) => {
    const found = met();
    if ('fault' in found) {
      give(found.fault, FAULT);
      return;
    }
    gathering.start(found.rows.length);
    for (const row of found.rows) {
      if (field === undefined) gathering.take(fold, 1, FILLED);
      else gathering.take(fold, field.values[row] ?? 0, field.states[row] ?? BLANK);
    }
    gathering.finish(fold, result, 0, reader.model.faults);
    give(result.values[0] ?? 0, result.states[0] ?? BLANK);
  });
}

/** DGET: the field of the one row that meets the criteria. */
export function planDatabaseRow(
  tree: CallNode,
  { none, several }: Extract<Body, { lane: 'database row' }>,
  reader: Reader,
): Kernel {
  const { reads, met, field } = databaseOf(tree, reader);
  const { faults } = reader.model;
  return onceKernel(reads, (give) => {
    const found = met();
    if ('fault' in found) {
      give(found.fault, FAULT);
      return;
    }
    const [row, second] = found.rows;
    if (row === undefined) give(faults.number(none), FAULT);
    else if (second !== undefined) give(faults.number(several), FAULT);
    else give(field?.values[row] ?? 0, field?.states[row] ?? BLANK);
  });
}
