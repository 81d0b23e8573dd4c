// Seasons drawn by chance: every figure that is not known for sure is drawn between its lowest and highest, most often near
// what is likely (triangular), counted shares are drawn of their number (binomial), and the figures asked for are noted. One stream
// of chance an input, by its id, so that an edit elsewhere does not reshuffle it. The streams come from outside: the engine
// has no chance.
//
// What is drawn is written straight into a branch's cells, and only the steps between it and the figures run (TrialRun). A season is
// the same whichever was drawn before it, so workers may share them.

import type { Frame } from '../calculation/frame.ts';
import type { Node } from '../calculation/graph/graph.ts';
import { type Touch, TrialRun } from '../calculation/graph/trial-run.ts';
import type { TableDef } from '../calculation/layout.ts';
import type { Workbook } from '../commands/workbook.ts';
import { columnOf } from './book.ts';
import {
  type ByChance,
  type Chances,
  countedByChance,
  type DrawnInput,
  manyOf,
  type Seasons,
  type StreamOf,
  skipped,
  yearsByChance,
} from './by-chance.ts';
import { type DrawnColumn, drawnColumns, sourcesOf, typeFirst, writeSeason } from './drawn-cells.ts';
import { type Asked, type DrawnFigure, type DrawnWeeks, type Read, reading } from './drawn-figures.ts';
import { type MovingDecisions, movingDecisions } from './moving-decisions.ts';
import type { UncertainInput } from './uncertain.ts';

export interface Drawn {
  readonly inputs: readonly DrawnInput[];
  readonly figures: readonly DrawnFigure[];
  readonly weekly: readonly DrawnWeeks[];
}

export interface DrawOrder extends Seasons {
  readonly inputs: readonly UncertainInput[];
  readonly asked: Asked;
  readonly chances?: Chances;
}

/** So many seasons that no face could hold more. */
export const MOST_DRAWS = 100_000;

export class Draws {
  readonly #branch: Workbook;
  /** The branch's, worked out here alone. */
  readonly #frame: Frame;
  readonly #order: DrawOrder;
  readonly #drawn: readonly Float64Array[];
  /** What is drawn besides the inputs. */
  readonly #besides: readonly DrawnInput[];
  readonly #columns: readonly DrawnColumn[];
  readonly #moving: MovingDecisions | undefined;
  readonly #read: Read;
  readonly #run: TrialRun;
  #done = 0;

  constructor(workbook: Workbook, order: DrawOrder, streamOf: StreamOf) {
    this.#order = order;
    const count = order.until - order.from;
    this.#drawn = order.inputs.map((input) => {
      const next = skipped(streamOf(input.id), order.from);
      return manyOf(count, () => drawnFrom(input, next()));
    });
    this.#columns = drawnColumns(workbook, order.inputs, this.#drawn);
    this.#read = reading(workbook, order.asked, count);
    // Nothing else is worked out, here or in the workbook.
    workbook.document.frame.upTo(this.#read.nodes);
    this.#branch = workbook.branch();
    this.#moving = movingDecisions(workbook, order.chances?.together ?? [], this.#columns);
    const tried = [...sourcesOf(workbook, this.#columns), ...(this.#moving?.sources ?? [])];
    const held = new Set<Node>(nodesOf(workbook, order.chances?.decided ?? []));
    const byChance = byChanceIn(this.#branch, order, streamOf);
    this.#besides = byChance.flatMap((one) => one.inputs);
    const touched = new Map<Node, Touch>();
    for (const { touches } of byChance) {
      for (const [node, touch] of touches) touched.set(node, (frame) => touch(frame, this.#done));
    }
    this.#frame = this.#branch.document.frame.takenOver(this.#read.nodes);
    const free = freeTables(workbook, this.#frame, held);
    const { graph } = workbook.document.program.built;
    this.#run = new TrialRun(graph, { tried, wanted: this.#read.nodes, held, touched, free });
  }

  get done(): number {
    return this.#done;
  }

  get isDone(): boolean {
    return this.#done >= this.#order.until - this.#order.from;
  }

  /** Draws so many seasons more; the sentence of a refusal, which ends it. */
  step(seasons: number): string | undefined {
    const { from, until } = this.#order;
    const last = Math.min(until - from, this.#done + seasons);
    const frame = this.#frame;
    if (this.#done === 0) {
      const refused = typeFirst(this.#branch, this.#columns) ?? this.#moving?.begin();
      if (refused !== undefined) return refused;
    }
    for (; this.#done < last; this.#done++) {
      writeSeason(this.#branch, frame, this.#run, this.#columns, this.#done);
      this.#moving?.write(frame, this.#run, this.#done);
      this.#run.run(frame);
      this.#read.note(this.#branch, frame, this.#done);
    }
    return undefined;
  }

  /** What was drawn so far. */
  result(): Drawn {
    const upTo = (values: Float64Array): Float64Array => values.slice(0, this.#done);
    const inputs = this.#order.inputs.map(({ id, name }, i): DrawnInput => {
      return { id, name, values: upTo(this.#drawn[i] ?? new Float64Array()) };
    });
    const besides = this.#besides.map((one) => ({ ...one, values: upTo(one.values) }));
    return { inputs: [...inputs, ...besides], ...this.#read.result(this.#done) };
  }
}

function byChanceIn(branch: Workbook, order: DrawOrder, streamOf: StreamOf): readonly ByChance[] {
  const { chances, inputs } = order;
  const drawn = new Set(inputs.map(({ id }) => id));
  const counted = chances?.counted.map((one) => countedByChance(branch, one, order, drawn, streamOf)) ?? [];
  return chances?.years === undefined ? counted : [...counted, yearsByChance(branch, chances.years, order, streamOf)];
}

function nodesOf(book: Workbook, places: readonly string[]): readonly Node[] {
  return places.flatMap((place) => {
    const [sheet = '', id = ''] = place.split('/');
    const column = columnOf(book, sheet, id);
    const node = column === undefined ? undefined : book.document.program.built.columnNode(column.def);
    return node ?? [];
  });
}

/** Tables of made rows in which nothing is typed and to which no link leads that is typed or stays as it is. */
function freeTables({ document }: Workbook, frame: Frame, held: ReadonlySet<Node>): ReadonlySet<TableDef> {
  const { sheets, built } = document.program;
  const linked = new Set<string>();
  for (const { role, type, def } of sheets.flatMap(({ columns }) => columns)) {
    if (type?.kind !== 'link') continue;
    const node = built.columnNode(def);
    const isHeld = node !== undefined && held.has(node);
    if (role === 'entered' || isHeld || (frame.typed[def.number]?.over.size ?? 0) > 0) linked.add(type.table);
  }
  const free = sheets.filter(({ id, schema }) => {
    const isMade = schema.rows.from !== 'entry' && schema.rows.from !== 'single';
    return isMade && !linked.has(id) && !document.shelf.has(id);
  });
  return new Set(free.map(({ table }) => table));
}

/** A triangular value from an even one: the inverse of its distribution (Kotz & van Dorp 2004, Beyond Beta, section 1.2). */
export function drawnFrom({ low, likely, high, whole }: Omit<UncertainInput, 'id'>, even: number): number {
  const span = high - low;
  const below = span === 0 ? 0 : (likely - low) / span;
  const value =
    even < below
      ? low + Math.sqrt(even * span * (likely - low))
      : high - Math.sqrt((1 - even) * span * (high - likely));
  return whole ? Math.round(value) : value;
}
