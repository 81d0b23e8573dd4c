// What is decided beforehand stays as planned in drawn seasons, but where the very cell that it follows from is drawn: a planting
// sown some day between two is planted out so much later. Such cells are worked out season by season on a branch of their own, in
// which nothing but those cells is drawn: who decides does not know what else the season brings. Called by draws.ts.

import type { Frame } from '../calculation/frame.ts';
import type { Node, Source } from '../calculation/graph/graph.ts';
import { TrialRun } from '../calculation/graph/trial-run.ts';
import { RowSet } from '../calculation/row-set.ts';
import type { Workbook } from '../commands/workbook.ts';
import type { ProgramColumn } from '../schema/compile.ts';
import { BLANK } from '../values/column.ts';
import { columnOf } from './book.ts';
import { type DrawnColumn, sourcesOf, typeFirst, writeSeason } from './drawn-cells.ts';

/** The cells of one column that follow from drawn ones of their row. */
interface MovingColumn {
  readonly column: ProgramColumn;
  readonly source: Source;
  readonly slots: RowSet;
}

export class MovingDecisions {
  readonly #branch: Workbook;
  /** The branch's, worked out here alone. */
  readonly #frame: Frame;
  readonly #run: TrialRun;
  readonly #drawn: readonly DrawnColumn[];
  readonly #moving: readonly MovingColumn[];

  constructor(workbook: Workbook, drawn: readonly DrawnColumn[], moving: readonly MovingColumn[], nodes: Node[]) {
    this.#drawn = drawn;
    this.#moving = moving;
    workbook.document.frame.upTo(nodes);
    this.#branch = workbook.branch();
    this.#frame = this.#branch.document.frame.takenOver(nodes);
    this.#run = new TrialRun(workbook.document.program.built.graph, {
      tried: sourcesOf(workbook, drawn),
      wanted: nodes,
      held: new Set(),
      touched: new Map(),
      free: new Set(),
    });
  }

  /** What hears of the cells that move. */
  get sources(): readonly Source[] {
    return this.#moving.map(({ source }) => source);
  }

  /** To be called once before the first season; the sentence of a refusal. */
  begin(): string | undefined {
    return typeFirst(this.#branch, this.#drawn);
  }

  /** Works out one season's decisions, writes them into the frame of the drawn season and tells who hears of them. */
  write(into: Frame, run: TrialRun, season: number): void {
    writeSeason(this.#branch, this.#frame, this.#run, this.#drawn, season);
    this.#run.run(this.#frame);
    for (const { column, source, slots } of this.#moving) {
      const { values, states } = this.#frame.column(column.def);
      const own = into.ownColumn(column.def);
      for (const slot of slots.sorted()) own.put(slot, values[slot] ?? 0, states[slot] ?? BLANK);
      own.touched();
      run.changed(into, source, slots);
    }
  }
}

/** What moves of columns, 'sheet/column', that follow from one another within a row; undefined where none of their cells is drawn. */
export function movingDecisions(
  workbook: Workbook,
  places: readonly string[],
  columns: readonly DrawnColumn[],
): MovingDecisions | undefined {
  const { built } = workbook.document.program;
  const drawn = columns.filter(({ column: { id, def } }) => places.includes(`${def.table.id}/${id}`));
  const moving: MovingColumn[] = [];
  const nodes: Node[] = [];
  for (const place of places) {
    const [sheet = '', id = ''] = place.split('/');
    const column = columnOf(workbook, sheet, id);
    const node = column === undefined ? undefined : built.columnNode(column.def);
    if (column === undefined || node === undefined) continue;
    const slots = new RowSet();
    for (const one of drawn) {
      if (one.column.def.table === column.def.table) for (const { slot } of one.cells) slots.add(slot);
    }
    nodes.push(node);
    if (!slots.empty) moving.push({ column, source: built.columnSource(column.def), slots });
  }
  return moving.length === 0 ? undefined : new MovingDecisions(workbook, drawn, moving, nodes);
}
