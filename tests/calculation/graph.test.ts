// The loop that brings dirty rows up to date, with nodes that only copy row numbers.
import { describe, expect, test } from 'vitest';
import {
  dirtyRows,
  Graph,
  type Node,
  type OnChange,
  orderNodes,
  Source,
} from '../../engine/calculation/graph/graph.ts';
import { Layout } from '../../engine/calculation/layout.ts';
import { RowSet } from '../../engine/calculation/row-set.ts';
import { emptyFrame, rowsOf, told } from './frames.ts';

interface Told extends Node {
  readonly runs: string[];
}

interface Ways {
  /** Rows that it finds unchanged. */
  readonly unchanged?: readonly number[];
  readonly kept?: boolean;
  readonly lanes?: number;
}

/** A node that passes its dirty rows on, but for those it is told to find unchanged, and keeps a record of its runs. */
function copier(name: string, { unchanged = [], kept = false, lanes = 1 }: Ways = {}): Told {
  const runs: string[] = [];
  const node: Told = {
    name,
    runs,
    lanes,
    isKept: () => kept,
    dependencies: [],
    source: new Source(undefined),
    rank: 0,
    firstSet: 0,
    run(frame, changed) {
      const sets = Array.from({ length: lanes }, (_, lane) => dirtyRows(frame, node, lane));
      runs.push(sets.map(told).join(' | '));
      for (const set of sets) {
        if (set.all) changed.addAll();
        else for (const row of set.sorted()) if (!unchanged.includes(row)) changed.add(row);
      }
    },
  };
  return node;
}

function joined(from: Source, to: Told, dependency?: Told, lane = 0): void {
  from.edges.push({ to, propagate: (changed, frame) => dirtyRows(frame, to, lane).addFrom(changed) });
  if (dependency !== undefined) to.dependencies.push(dependency);
}

function graphOf(...nodes: Node[]): Graph {
  return new Graph(orderNodes(nodes));
}

/** Lengths feed stations; stations feed seeds and totals; totals are kept by themselves. */
function chain(unchanged: readonly number[] = []) {
  const entered = new Source(undefined);
  const stations = copier('stations', { unchanged });
  const seeds = copier('seeds');
  const totals = copier('totals', { kept: true });
  joined(entered, stations);
  joined(stations.source, seeds, stations);
  joined(stations.source, totals, stations);
  const graph = graphOf(totals, seeds, stations);
  const frame = emptyFrame(new Layout(), graph.order.length);
  const heard: string[] = [];
  const hear: OnChange = (node, changed, wasAsleep) => {
    heard.push(`${node.name}: ${told(changed)}${wasAsleep ? ', asleep' : ''}`);
  };
  const run = (in_ = frame): void => graph.run(in_, hear);
  return { entered, stations, seeds, totals, graph, frame, heard, hear, run };
}

describe('a run', () => {
  test('follows the edges in order, each node once, and tells what changed', () => {
    const { entered, stations, seeds, totals, graph, frame, heard, run } = chain();
    graph.changed(frame, entered, rowsOf(2, 5));
    graph.changed(frame, entered, rowsOf(5, 7));
    run();
    expect([stations.runs, seeds.runs, totals.runs]).toEqual([['2 5 7'], ['2 5 7'], ['2 5 7']]);
    expect([...heard].sort()).toEqual(['seeds: 2 5 7', 'stations: 2 5 7', 'totals: 2 5 7']);
    expect(heard[0]).toBe('stations: 2 5 7');
    run();
    expect(stations.runs).toHaveLength(1);
  });

  test('stops where nothing changed', () => {
    const { entered, stations, seeds, graph, frame, heard, run } = chain([4, 5]);
    graph.changed(frame, entered, rowsOf(4, 5));
    run();
    expect(stations.runs).toEqual(['4 5']);
    expect(seeds.runs).toEqual([]);
    expect(heard).toEqual([]);
    graph.changed(frame, entered, rowsOf(5, 6));
    run();
    expect(seeds.runs).toEqual(['6']);
  });

  test('does nothing for an empty change', () => {
    const { entered, stations, graph, frame, run } = chain();
    graph.changed(frame, entered, new RowSet());
    run();
    expect(stations.runs).toEqual([]);
  });

  test('goes on for as long as it may', () => {
    const { entered, stations, seeds, totals, graph, frame, hear, run } = chain();
    graph.changed(frame, entered, rowsOf(3));
    let steps = 0;
    graph.run(frame, hear, true, () => ++steps <= 2);
    expect([stations, seeds, totals].map(({ runs }) => runs.length).sort()).toEqual([0, 1, 1]);
    graph.changed(frame, entered, rowsOf(5));
    run();
    expect(stations.runs).toEqual(['3', '5']);
    expect([seeds.runs.join(), totals.runs.join()].sort()).toEqual(['3 5', '3,5'].sort());
  });

  test('in one frame leaves what waits in another', () => {
    const { entered, stations, graph, frame, run } = chain();
    const branch = frame.branch();
    graph.changed(frame, entered, rowsOf(1));
    graph.changed(branch, entered, rowsOf(6));
    run(branch);
    expect(stations.runs).toEqual(['6']);
    run();
    expect(stations.runs).toEqual(['6', '1']);
    run(branch);
    expect(stations.runs).toHaveLength(2);
  });

  test('tells the lanes of a node apart, and forgets them all afterwards', () => {
    const [rows, keys] = [new Source(undefined), new Source(undefined)];
    const total = copier('total', { lanes: 2 });
    const reader = copier('reader');
    joined(rows, total);
    joined(keys, total, undefined, 1);
    joined(total.source, reader, total);
    const graph = graphOf(reader, total);
    const frame = emptyFrame(new Layout(), graph.order.length);
    graph.changed(frame, rows, rowsOf(1, 2));
    graph.changed(frame, keys, rowsOf(2, 9));
    graph.run(frame, () => undefined);
    expect(total.runs).toEqual(['1 2 | 2 9']);
    expect(reader.runs).toEqual(['1 2 9']);
    graph.demand(frame, total, 4);
    graph.demand(frame, reader, 7);
    graph.run(frame, () => undefined);
    expect(total.runs).toEqual(['1 2 | 2 9', '4 | ']);
    expect(reader.runs).toEqual(['1 2 9', '4 7']);
  });
});

describe('asking', () => {
  test('for a row of one node runs it and what reads it', () => {
    const { seeds, stations, totals, graph, frame, run } = chain();
    graph.demand(frame, stations, 8);
    run();
    expect([stations.runs, seeds.runs, totals.runs]).toEqual([['8'], ['8'], ['8']]);
    graph.demand(frame, seeds, 1);
    run();
    expect([stations.runs, seeds.runs, totals.runs]).toEqual([['8'], ['8', '1'], ['8']]);
  });

  test('for everything spares what keeps itself, unless a change reaches it', () => {
    const { stations, seeds, totals, graph, frame, run } = chain();
    graph.demandAll(frame);
    expect(dirtyRows(frame, totals).empty).toBe(true);
    run();
    expect([stations.runs, seeds.runs, totals.runs]).toEqual([['all'], ['all'], ['all']]);
  });

  test('for all of some nodes runs those and what reads them', () => {
    const { stations, seeds, totals, graph, frame, run } = chain();
    graph.demandAll(frame, [seeds]);
    run();
    expect([stations.runs, seeds.runs, totals.runs]).toEqual([[], ['all'], []]);
  });
});

describe('bringing one node up to date', () => {
  test('works out what it rests on, and leaves the rest for whoever asks', () => {
    const { entered, stations, seeds, totals, graph, frame, heard, hear, run } = chain();
    expect([stations, seeds, totals].map(({ rank }) => graph.upstream([seeds])[rank])).toEqual([1, 1, 0]);
    graph.changed(frame, entered, rowsOf(3));
    graph.bring(frame, seeds, hear);
    expect([stations.runs, seeds.runs, totals.runs]).toEqual([['3'], ['3'], []]);
    graph.bring(frame, stations, hear);
    graph.changed(frame, entered, rowsOf(4));
    graph.bring(frame, seeds, hear);
    expect([stations.runs, seeds.runs, totals.runs]).toEqual([['3', '4'], ['3', '4'], []]);
    run();
    expect(totals.runs).toEqual(['3 4']);
    expect(heard).toContain('totals: 3 4');
  });

  test('wakes what sleeps; a run that wakes nobody leaves the rest asleep, whatever changes', () => {
    const { entered, stations, seeds, totals, graph, frame, heard, hear } = chain();
    graph.demandAll(
      frame,
      [stations, seeds, totals].map((node) => ({ ...node, isKept: () => false })),
    );
    graph.bring(frame, seeds, hear);
    expect([stations.runs, seeds.runs, totals.runs]).toEqual([['all'], ['all'], []]);
    expect(heard).toEqual(['stations: all, asleep', 'seeds: all, asleep']);
    graph.changed(frame, entered, rowsOf(2));
    graph.run(frame, hear, false);
    expect([seeds.runs, totals.runs]).toEqual([['all', '2'], []]);
    const branch = frame.branch();
    graph.bring(branch, totals, hear);
    expect(totals.runs).toEqual(['all']);
    graph.bring(frame, totals, hear);
    expect(totals.runs).toEqual(['all', 'all']);
  });
});

test('nodes that are not in the graph are not marked', () => {
  const { graph } = chain();
  const stranger = copier('stranger');
  stranger.rank = 1;
  expect([...graph.upstream([stranger])]).toEqual([0, 0, 0]);
});

describe('nodes that depend on themselves are no graph', () => {
  test.each([
    ['a', 'a', 'a depends on itself through a'],
    ['a', 'b', 'a depends on itself through b'],
  ])('%s and %s', (name, other, said) => {
    const a = copier(name);
    const b = name === other ? a : copier(other);
    a.dependencies.push(b);
    b.dependencies.push(a);
    expect(() => orderNodes([a])).toThrow(said);
    expect(() => orderNodes([copier('free'), a])).toThrow(said);
  });

  test('a step without a name is said to be one', () => {
    const [index, column] = [copier(''), copier('plantings/stations')];
    index.dependencies.push(column);
    column.dependencies.push(index);
    expect(() => orderNodes([index])).toThrow('A step depends on itself through plantings/stations');
    expect(() => orderNodes([column])).toThrow('plantings/stations depends on itself through a step');
  });

  test('a node met by two ways, neither a circle, is met once', () => {
    const [end, left, right, start] = ['end', 'left', 'right', 'start'].map((name) => copier(name));
    if (!end || !left || !right || !start) throw new Error('four nodes');
    left.dependencies.push(end);
    right.dependencies.push(end);
    start.dependencies.push(left, right);
    expect(orderNodes([start]).map(({ name }) => name)).toEqual(['end', 'left', 'right', 'start']);
  });
});
