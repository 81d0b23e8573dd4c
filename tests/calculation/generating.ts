// Row generators at work in a frame of their own, for their tests: run by their node over changed rows of their inputs.

import { type Frame, FrameState } from '../../engine/calculation/frame.ts';
import type { RowGenerator } from '../../engine/calculation/generators/generator.ts';
import { GeneratorNode, RowsSeen } from '../../engine/calculation/graph/generator-node.ts';
import { dirtyRows, Graph, Source } from '../../engine/calculation/graph/graph.ts';
import type { ColumnDef, Layout } from '../../engine/calculation/layout.ts';
import { RowSet } from '../../engine/calculation/row-set.ts';
import { allRows, emptyFrame, told } from './frames.ts';

/** A frame of the layout in which a generator works, and the run of its node; `sources` are what readers of columns hang on. */
export function working(layout: Layout, generator: RowGenerator, sources = new Map<ColumnDef, Source>()) {
  generator.prepare?.(() => {
    throw new Error('no formula stands behind these rows');
  });
  // Far behind the places of the generators' own state.
  const seen = new FrameState(100, (owner) => new RowsSeen(owner));
  const node = new GeneratorNode(generator, (column) => sources.get(column) ?? new Source(undefined), seen);
  const frame = emptyFrame(layout, new Graph([node]).order.length);
  return { frame, node, make: (...dirty: RowSet[]): string => made(frame, node, ...dirty) };
}

/** Runs the node over changed rows of its inputs, all of the first where none are given; gives the rows it says changed. */
export function made(frame: Frame, node: GeneratorNode, ...dirty: RowSet[]): string {
  const given = dirty.length === 0 ? [allRows()] : dirty;
  given.forEach((set, lane) => {
    dirtyRows(frame, node, lane).addFrom(set);
  });
  const changed = new RowSet();
  node.run(frame, changed);
  for (let lane = 0; lane < node.lanes; lane++) dirtyRows(frame, node, lane).clear();
  return told(changed);
}
