// Finds formulas that go in a circle, from what each formula reads: columns, and the rows of sheets that follow from other
// sheets. Looks at the catalogue alone, before anything is planned, so that no graph is ever built around a circle.

import type { Typed } from '../language/typed.ts';
import { recordColumn } from '../values/figures.ts';
import type { CheckedSchema } from './check.ts';
import { FIRST, LAST, spanTable, WHERE } from './hidden.ts';
import { isMadeSheet, type Schema } from './schema.ts';

/** A column ('column beds/length') or the rows of a sheet ('rows beds'). */
type Thing = string;

function columnThing(table: string, column: string): Thing {
  return `column ${table}/${recordColumn(column)}`;
}

function rowsThing(table: string): Thing {
  return `rows ${table}`;
}

export interface Circles {
  /** The columns of each circle of formulas as 'sheet/column', in reading order. */
  readonly formulas: readonly (readonly string[])[];
  /** Sheets whose rows would be made from themselves without any formula in between. */
  readonly rows: readonly string[];
}

export function findCircles(schema: Schema, checked: CheckedSchema): Circles {
  const { formulas } = checked;
  const reads = new Map<Thing, readonly Thing[]>();
  for (const { table, column, typed } of formulas) {
    if (typed !== undefined) {
      reads.set(columnThing(table, column), [rowsThing(table), ...new Set(thingsRead(typed, table, schema, checked))]);
    }
  }
  for (const sheet of schema.sheets) {
    if (!isMadeSheet(sheet)) continue;
    reads.set(rowsThing(sheet.id), rowsRead(sheet.id, schema));
    // What is typed on made rows comes and goes with them.
    for (const { id } of sheet.columns) {
      const column = columnThing(sheet.id, id);
      if (!reads.has(column)) reads.set(column, [rowsThing(sheet.id)]);
    }
  }
  const computed = new Set(formulas.map(({ table, column }) => `${table}/${column}`));
  const found: (readonly string[])[] = [];
  for (;;) {
    const circles = circlesOf(reads);
    const withFormulas = circles.map((circle) => namesOf(circle, 'column ').filter((column) => computed.has(column)));
    const more = withFormulas.filter((circle) => circle.length > 0);
    if (more.length === 0) return { formulas: found, rows: circles.flatMap((circle) => namesOf(circle, 'rows ')) };
    found.push(...more);
    // Formulas in a circle will not run. What still goes round without them, as rows made of themselves, is found then.
    for (const column of more.flat()) reads.set(`column ${column}`, []);
  }
}

/** The things of a sort on a way round, without the word for the sort. */
function namesOf(circle: readonly Thing[], sort: 'column ' | 'rows '): readonly string[] {
  return circle.flatMap((thing) => (thing.startsWith(sort) ? [thing.slice(sort.length)] : []));
}

/** Which rows exist rests on the rows the sheet has, and on its condition where it has one. */
function existing(table: string, schema: Schema): readonly Thing[] {
  const rows = schema.sheet(table)?.rows;
  const conditional = (rows?.from === 'each' || rows?.from === 'pairs') && rows.where !== '';
  return conditional ? [rowsThing(table), columnThing(table, WHERE)] : [rowsThing(table)];
}

function rowsRead(id: string, schema: Schema): readonly Thing[] {
  const rows = schema.sheet(id)?.rows;
  switch (rows?.from) {
    case 'each':
      return existing(rows.sheet, schema);
    case 'pairs':
      return rows.sheets.flatMap((sheet) => existing(sheet, schema));
    case 'span':
      return [columnThing(spanTable(id), FIRST), columnThing(spanTable(id), LAST)];
    case 'events':
      return rows.dates.flatMap(({ sheet, column }) => [...existing(sheet, schema), columnThing(sheet, column)]);
    default:
      return [];
  }
}

function thingsRead(typed: Typed, table: string, schema: Schema, checked: CheckedSchema): readonly Thing[] {
  const read: Thing[] = [];
  const walk = (node: Typed): void => {
    switch (node.node) {
      case 'cell':
        read.push(...cellsOnTheWay(node, table, checked));
        return;
      case 'single':
        read.push(columnThing(node.table, node.column));
        return;
      case 'column':
        read.push(columnThing(node.table, node.column), ...existing(node.table, schema));
        return;
      case 'table':
        read.push(...existing(node.table, schema));
        return;
      case 'criteria':
        for (const { given, looked } of node.pairs) {
          read.push(columnThing(node.table, given.column), columnThing(node.of, looked.column));
        }
        read.push(...existing(node.table, schema), ...existing(node.of, schema));
        return;
      case 'negate':
        walk(node.operand);
        return;
      case 'key':
        walk(node.operand);
        read.push(...keysOf(node.operand, schema));
        return;
      case 'binary':
        walk(node.left);
        walk(node.right);
        return;
      case 'condition':
        walk(node.value);
        return;
      case 'call':
        node.args.forEach(walk);
        return;
      case 'typed':
      case 'constant':
      case 'blank':
      case 'today':
        return;
    }
  };
  walk(typed);
  return read;
}

function keysOf(link: Typed, schema: Schema): readonly Thing[] {
  if (link.type.kind !== 'link') return [];
  const key = schema.sheet(link.type.table)?.key;
  return key === undefined ? [] : [columnThing(link.type.table, key)];
}

/** The link columns followed from this row, and the cell at their end. */
function cellsOnTheWay(node: Extract<Typed, { node: 'cell' }>, from: string, checked: CheckedSchema): readonly Thing[] {
  const read: Thing[] = [columnThing(node.table, node.column)];
  let table = from;
  for (const link of node.links) {
    read.push(columnThing(table, link));
    const type = checked.typeOf(table, link);
    if (type?.kind !== 'link') break;
    table = type.table;
  }
  return read;
}

interface Visit {
  readonly thing: Thing;
  readonly reads: readonly Thing[];
  next: number;
}

/**
 * The groups of things that read each other, each as one way round in reading order (Tarjan 1972, SIAM Journal on
 * Computing 1: 146-160, strongly connected components, without recursion).
 */
function circlesOf(reads: ReadonlyMap<Thing, readonly Thing[]>): readonly (readonly Thing[])[] {
  const index = new Map<Thing, number>();
  const low = new Map<Thing, number>();
  const stack: Thing[] = [];
  const onStack = new Set<Thing>();
  const circles: (readonly Thing[])[] = [];
  const open = (thing: Thing): Visit => {
    index.set(thing, index.size);
    low.set(thing, index.size - 1);
    stack.push(thing);
    onStack.add(thing);
    return { thing, reads: reads.get(thing) ?? [], next: 0 };
  };
  const lower = (thing: Thing, to: number): void => {
    low.set(thing, Math.min(low.get(thing) ?? to, to));
  };
  for (const start of reads.keys()) {
    if (index.has(start)) continue;
    const path = [open(start)];
    for (let top = path.at(-1); top !== undefined; top = path.at(-1)) {
      const read = top.reads[top.next++];
      if (read !== undefined) {
        if (!index.has(read)) path.push(open(read));
        else if (onStack.has(read)) lower(top.thing, index.get(read) ?? 0);
        continue;
      }
      path.pop();
      const before = path.at(-1);
      if (before !== undefined) lower(before.thing, low.get(top.thing) ?? 0);
      if (low.get(top.thing) !== index.get(top.thing)) continue;
      const group = new Set(stack.splice(stack.indexOf(top.thing)));
      for (const thing of group) onStack.delete(thing);
      if (group.size > 1 || top.reads.includes(top.thing)) circles.push(...waysRound(top.thing, group, reads));
    }
  }
  return circles;
}

/** Ways round within a group of things that all read each other, until each of them stands on one. */
function waysRound(
  first: Thing,
  group: ReadonlySet<Thing>,
  reads: ReadonlyMap<Thing, readonly Thing[]>,
): readonly (readonly Thing[])[] {
  const ways: (readonly Thing[])[] = [];
  const seen = new Set<Thing>();
  for (const start of [first, ...group]) {
    if (seen.has(start)) continue;
    const way = wayRound(start, group, reads);
    for (const thing of way) seen.add(thing);
    ways.push(way);
  }
  return ways;
}

/** The shortest way from a thing back to itself. */
function wayRound(
  start: Thing,
  group: ReadonlySet<Thing>,
  reads: ReadonlyMap<Thing, readonly Thing[]>,
): readonly Thing[] {
  const from = new Map<Thing, Thing>();
  let edge: Thing[] = [start];
  while (edge.length > 0) {
    const next: Thing[] = [];
    for (const thing of edge) {
      for (const read of reads.get(thing) ?? []) {
        if (read === start) return traced(thing, start, from);
        if (!group.has(read) || from.has(read)) continue;
        from.set(read, thing);
        next.push(read);
      }
    }
    edge = next;
  }
  return [start];
}

function traced(last: Thing, start: Thing, from: ReadonlyMap<Thing, Thing>): readonly Thing[] {
  const way = [last];
  for (let thing = last; thing !== start; ) {
    thing = from.get(thing) ?? start;
    way.unshift(thing);
  }
  return way;
}
