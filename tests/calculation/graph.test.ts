// The loop that brings dirty rows up to date, with nodes that only copy row numbers.
import { describe, expect, test } from 'vitest';
import { Graph, type Node, orderNodes, Source } from '../../engine/calculation/graph.ts';
import { RowSet } from '../../engine/calculation/row-set.ts';

interface Told extends Node {
  readonly runs: string[];
}

/** A node that passes its dirty rows on, but for those it is told to find unchanged, and keeps a record of its runs. */
function copier(name: string, unchanged: readonly number[] = [], kept = false): Told {
  const runs: string[] = [];
  const node: Told = {
    name,
    runs,
    kept,
    dirty: new RowSet(),
    feeds: [],
    source: new Source(undefined),
    rank: 0,
    run(changed) {
      runs.push(node.dirty.all ? 'all' : [...node.dirty.sorted()].join(' '));
      if (node.dirty.all) changed.addAll();
      else for (const row of node.dirty.sorted()) if (!unchanged.includes(row)) changed.add(row);
    },
  };
  return node;
}

function joined(from: Source, to: Told, feed?: Told): void {
  from.edges.push({ to, spread: (changed) => to.dirty.addFrom(changed) });
  if (feed !== undefined) to.feeds.push(feed);
}

function rowsOf(...rows: number[]): RowSet {
  const set = new RowSet();
  for (const row of rows) set.add(row);
  return set;
}

/** Lengths feed stations; stations feed seeds and totals; totals are kept by themselves. */
function chain(unchanged: readonly number[] = []) {
  const entered = new Source(undefined);
  const stations = copier('stations', unchanged);
  const seeds = copier('seeds');
  const totals = copier('totals', [], true);
  joined(entered, stations);
  joined(stations.source, seeds, stations);
  joined(stations.source, totals, stations);
  const { order } = orderNodes([totals, seeds, stations]);
  const graph = new Graph(order);
  const heard: string[] = [];
  const run = (only?: Uint8Array): void =>
    graph.run((node, changed) => {
      heard.push(`${node.name}: ${changed.all ? 'all' : [...changed.sorted()].join(' ')}`);
    }, only);
  return { entered, stations, seeds, totals, graph, heard, run };
}

describe('a run', () => {
  test('follows the edges in order, each node once, and tells what changed', () => {
    const { entered, stations, seeds, totals, graph, heard, run } = chain();
    graph.changed(entered, rowsOf(2, 5));
    graph.changed(entered, rowsOf(5, 7));
    run();
    expect([stations.runs, seeds.runs, totals.runs]).toEqual([['2 5 7'], ['2 5 7'], ['2 5 7']]);
    expect([...heard].sort()).toEqual(['seeds: 2 5 7', 'stations: 2 5 7', 'totals: 2 5 7']);
    expect(heard[0]).toBe('stations: 2 5 7');
    run();
    expect(stations.runs).toHaveLength(1);
  });

  test('stops where nothing changed', () => {
    const { entered, stations, seeds, graph, heard, run } = chain([4, 5]);
    graph.changed(entered, rowsOf(4, 5));
    run();
    expect(stations.runs).toEqual(['4 5']);
    expect(seeds.runs).toEqual([]);
    expect(heard).toEqual([]);
    graph.changed(entered, rowsOf(5, 6));
    run();
    expect(seeds.runs).toEqual(['6']);
  });

  test('does nothing for an empty change', () => {
    const { entered, stations, graph, run } = chain();
    graph.changed(entered, new RowSet());
    run();
    expect(stations.runs).toEqual([]);
  });

  test('over marked nodes alone leaves the rest for later', () => {
    const { entered, stations, seeds, totals, graph, run } = chain();
    const only = graph.upstream([seeds]);
    expect([stations, seeds, totals].map(({ rank }) => only[rank])).toEqual([1, 1, 0]);
    graph.changed(entered, rowsOf(3));
    run(only);
    expect([stations.runs, seeds.runs, totals.runs]).toEqual([['3'], ['3'], []]);
    run();
    expect([stations.runs, seeds.runs, totals.runs]).toEqual([['3'], ['3'], ['3']]);
  });
});

describe('asking', () => {
  test('for a row of one node runs it and what reads it', () => {
    const { seeds, stations, totals, graph, run } = chain();
    graph.demand(stations, 8);
    run();
    expect([stations.runs, seeds.runs, totals.runs]).toEqual([['8'], ['8'], ['8']]);
    graph.demand(seeds, 1);
    run();
    expect([stations.runs, seeds.runs, totals.runs]).toEqual([['8'], ['8', '1'], ['8']]);
  });

  test('for everything spares what keeps itself, unless a change reaches it', () => {
    const { stations, seeds, totals, graph, run } = chain();
    graph.demandAll();
    expect(totals.dirty.empty).toBe(true);
    run();
    expect([stations.runs, seeds.runs, totals.runs]).toEqual([['all'], ['all'], ['all']]);
  });
});

test('nodes that are not in the graph are not marked', () => {
  const { graph } = chain();
  const stranger = copier('stranger');
  stranger.rank = 1;
  expect([...graph.upstream([stranger])]).toEqual([0, 0, 0]);
});

test('circles come in reading order; what hangs on one is ordered, what feeds one too', () => {
  const [a, b, c, d, e] = ['a', 'b', 'c', 'd', 'e'].map((name) => copier(name));
  if (!a || !b || !c || !d || !e) throw new Error('five nodes');
  b.feeds.push(c, e);
  c.feeds.push(b);
  a.feeds.push(b);
  d.feeds.push(d);
  const { order, circles } = orderNodes([a, b, c, d, e]);
  expect(circles.map((circle) => circle.map(({ name }) => name))).toEqual([['b', 'c'], ['d']]);
  expect(order.map(({ name }) => name)).toEqual(['e', 'a']);
});
