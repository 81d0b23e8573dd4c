// The edges of the graph, each drawn once: how changed rows of a source make rows of a node dirty. Two readings that spread
// in the same way share an edge, and one that reaches every row makes the others from its source needless.

import { FILLED } from '../../values/column.ts';
import type { Frame, FrameState } from '../frame.ts';
import { dirtyRows, type Edge, type Node, type Source } from '../graph/graph.ts';
import type { IndexNode } from '../graph/group-nodes.ts';
import type { GroupIndex, KeyColumn } from '../indexes/group-index.ts';
import type { RowSet } from '../row-set.ts';

const EVERY_ROW = 'every row';

/** An edge and how rows spread along it. */
interface Drawn {
  readonly source: Source;
  readonly way: string;
  readonly edge: Edge;
}

export class Edges {
  readonly #numbers = new Map<object, number>();
  /** What was drawn to each node: some dozen at most, so that they are looked through. */
  readonly #into = new Map<Node, Drawn[]>();

  /** The same rows, in a lane of the node's dirty rows. */
  sameRows(source: Source, to: Node, lane = 0): void {
    this.#draw(source, to, `rows ${lane}`, (changed, frame) => dirtyRows(frame, to, lane).addFrom(changed));
  }

  /** Every row of the node, whatever changed. */
  all(source: Source, to: Node): void {
    this.#draw(source, to, EVERY_ROW, (_, frame) => dirtyRows(frame, to).addAll());
  }

  /** The rows that an index looks at again: those whose keys changed, that came, went or moved. */
  rowsOfIndex(index: IndexNode, to: Node, lane = 0): void {
    this.#depend(to, index);
    for (const { source, way } of this.#into.get(index) ?? []) if (way === 'rows 0') this.sameRows(source, to, lane);
  }

  /** The node runs after what makes the source, and hears nothing of it. */
  after(node: Node, source: Source): void {
    if (source.maker !== undefined) this.#depend(node, source.maker);
  }

  /** From changed groups to the row that is the group's key, where its own cells are the other keys. */
  ownRow(
    source: Source,
    to: Node,
    index: FrameState<GroupIndex>,
    key: number,
    others: readonly (KeyColumn & { readonly key: number })[],
  ): void {
    const name = `own row ${key} ${others.map(({ column }) => column.number).join(' ')}`;
    this.#draw(source, to, name, (changed, frame) => {
      const dirty = dirtyRows(frame, to);
      if (changed.all) {
        dirty.addAll();
        return;
      }
      const groups = index.read(frame);
      for (let i = 0; i < changed.count; i++) {
        const group = changed.at(i);
        const row = groups.keyValue(group, key);
        // A cell that is still to change has its row worked out again by itself.
        const reads = others.every(({ column, text, key: other }) => {
          const { values, states } = frame.column(column);
          const value = values[row] ?? 0;
          return states[row] === FILLED && groups.keyValue(group, other) === (text ? frame.texts.fold(value) : value);
        });
        if (reads) dirty.add(row);
      }
    });
  }

  /** From changed groups to the rows whose own cells are the group's keys, as `readers` finds them. */
  groups(source: Source, to: Node, index: FrameState<GroupIndex>, readers: IndexNode, keys: number): void {
    const key: number[] = Array.from({ length: keys }, () => 0);
    this.#depend(to, readers);
    this.#draw(source, to, `groups ${this.#number(readers)}`, (changed, frame) => {
      const dirty = dirtyRows(frame, to);
      if (changed.all) {
        dirty.addAll();
        return;
      }
      const groups = index.read(frame);
      const reading = readers.forWayBack(frame);
      for (let i = 0; i < changed.count; i++) {
        const group = changed.at(i);
        if (keys === 2) {
          addMembers(reading, reading.findTwo(groups.keyValue(group, 0), groups.keyValue(group, 1)), dirty);
          continue;
        }
        for (let k = 0; k < keys; k++) key[k] = groups.keyValue(group, k);
        addMembers(reading, reading.find(key), dirty);
      }
    });
  }

  /** From changed rows back along links, the last followed first, to the rows that look through them. */
  backAlong(source: Source, to: Node, ways: readonly IndexNode[]): void {
    for (const way of ways) this.#depend(to, way);
    const name = `back ${ways.map((way) => this.#number(way)).join(' ')}`;
    this.#draw(source, to, name, (changed, frame) => {
      const dirty = dirtyRows(frame, to);
      if (changed.all) {
        dirty.addAll();
        return;
      }
      const [first] = ways;
      if (dirty.all || first === undefined) return;
      const index = first.forWayBack(frame);
      for (let i = 0; i < changed.count; i++) followBack(index, index.findOne(changed.at(i)), ways, 1, dirty, frame);
    });
  }

  #draw(source: Source, to: Node, way: string, propagate: Edge['propagate']): void {
    if (source.maker !== undefined) this.#depend(to, source.maker);
    let into = this.#into.get(to);
    if (into === undefined) {
      into = [];
      this.#into.set(to, into);
    }
    for (const drawn of into) {
      if (drawn.source !== source) continue;
      if (drawn.way === way || (drawn.way === EVERY_ROW && !isOtherLane(way))) return;
    }
    if (way === EVERY_ROW) this.#erase(source, into);
    const edge: Edge = { to, propagate };
    source.edges.push(edge);
    into.push({ source, way, edge });
  }

  /** Takes away what an edge to every row makes needless; rows in another lane are told apart and stay. */
  #erase(source: Source, into: Drawn[]): void {
    for (let at = into.length - 1; at >= 0; at--) {
      const drawn = into[at] as Drawn;
      if (drawn.source !== source || isOtherLane(drawn.way)) continue;
      into.splice(at, 1);
      source.edges.splice(source.edges.indexOf(drawn.edge), 1);
    }
  }

  #depend(node: Node, on: Node): void {
    if (!node.dependencies.includes(on)) node.dependencies.push(on);
  }

  #number(thing: object): number {
    const known = this.#numbers.get(thing);
    if (known !== undefined) return known;
    this.#numbers.set(thing, this.#numbers.size);
    return this.#numbers.size - 1;
  }
}

function isOtherLane(way: string): boolean {
  return way.startsWith('rows ') && way !== 'rows 0';
}

function addMembers(index: GroupIndex, group: number, into: RowSet): void {
  const { rows, from, count } = index.members(group);
  for (let i = from; i < from + count; i++) into.add(rows[i] as number);
}

/** From the rows of a group on along the ways from one on. The depth is the number of links in the formula, never that of rows. */
function followBack(
  index: GroupIndex,
  group: number,
  ways: readonly IndexNode[],
  step: number,
  into: RowSet,
  frame: Frame,
): void {
  const way = ways[step];
  if (way === undefined) {
    addMembers(index, group, into);
    return;
  }
  const { rows, from, count } = index.members(group);
  if (count === 0) return;
  const next = way.forWayBack(frame);
  for (let i = from; i < from + count; i++)
    followBack(next, next.findOne(rows[i] as number), ways, step + 1, into, frame);
}
