// Answers formulas that stand in no sheet: each is checked against the sheets as they are, planned as the one column of a
// one-row table behind the workbook, and run with a graph of its own. The workbook's graph and cells are not touched.

import type { Complaint } from '../language/tree.ts';
import type { Catalog } from '../language/typed.ts';
import { buildGraph, type Schema } from '../recalculation/build.ts';
import { TableData } from '../recalculation/model.ts';
import { toScalar } from '../recalculation/scalars.ts';
import { BLANK } from '../values/column.ts';
import { isError, type Scalar } from '../values/error.ts';
import { showWithUnit } from '../values/show.ts';
import type { ValueType } from '../values/type.ts';
import { rowName } from './cells.ts';
import { catalogOf, checkText, schemaOf } from './compile.ts';
import { isWhole } from './open-sheets.ts';
import type { State } from './state.ts';

/** A formula's value, canonical, with its type and as a person reads it ('12.4 lb', '15 Mar 2027'); or what is wrong. */
export type Evaluated =
  | { readonly ok: true; readonly value: Scalar; readonly type: ValueType; readonly shown: string }
  | { readonly ok: false; readonly complaint: Complaint };

const BENCH = '·bench';
const ANSWER = '·answer';
const NO_OVERRIDES: ReadonlySet<number> = new Set();

/** Good for any number of formulas until formulas, columns or units of the workbook change. */
export class Evaluator {
  readonly #state: State;
  readonly #catalog: Catalog;
  readonly #schema: Schema;
  readonly #bench: TableData;

  constructor(state: State) {
    this.#state = state;
    this.#catalog = catalogOf(state.sheets);
    this.#schema = schemaOf(state);
    const { tables } = state.model;
    const bench = tables.get(BENCH) ?? new TableData(BENCH);
    tables.set(BENCH, bench);
    bench.setLive(0, true);
    this.#bench = bench;
  }

  /** Names `Table[Column]` are known, `[Column]` is not: the formula stands in no row. A leading = is allowed. */
  evaluate(formula: string): Evaluated {
    const { model } = this.#state;
    const checked = checkText(formula, undefined, undefined, undefined, this.#state, this.#catalog);
    if (!checked.ok) return checked;
    const { typed } = checked;
    const column = this.#bench.addColumn(ANSWER, isWhole(typed.type));
    const answer = { table: BENCH, column: ANSWER, typed, overrides: NO_OVERRIDES };
    const { graph } = buildGraph(model, this.#schema, [answer], []);
    graph.demandAll();
    graph.run(() => undefined);
    const value = withoutPlace(toScalar(model, typed.type, column.values[0] ?? 0, column.states[0] ?? BLANK));
    return { ok: true, value, type: typed.type, shown: this.#show(value, typed.type) };
  }

  #show(value: Scalar, type: ValueType): string {
    const target = type.kind === 'link' ? this.#state.sheet(type.table) : undefined;
    if (target !== undefined && typeof value === 'number') return rowName(target, value, this.#state);
    return showWithUnit(value, type, { currency: this.#state.currency });
  }
}

/** An error that began in the formula itself began in no cell. */
function withoutPlace(value: Scalar): Scalar {
  if (!isError(value) || value.at?.table !== BENCH) return value;
  return { error: value.error, why: value.why };
}
