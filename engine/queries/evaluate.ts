// Answers formulas that stand in no sheet: each is checked against the sheets as they are, planned as the one column of a
// one-row table beside the workbook's, and run with a graph of its own on a branch. Nothing of the workbook is touched.

import { Frame } from '../calculation/frame.ts';
import { toScalar } from '../calculation/kernels/scalars.ts';
import { Layout } from '../calculation/layout.ts';
import { type Built, buildGraph } from '../calculation/plans/build.ts';
import type { Diagnostic } from '../language/tree.ts';
import { checkText } from '../schema/check.ts';
import { isWhole } from '../schema/types.ts';
import { BLANK } from '../values/column.ts';
import { isError, type Scalar } from '../values/error.ts';
import { showWithUnit } from '../values/show.ts';
import type { ValueType } from '../values/type.ts';
import type { Book } from './book.ts';
import { rowName } from './shown.ts';

/** A formula's value, canonical, with its type and as a person reads it ('12.4 lb', '15 Mar 2027'); or what is wrong. */
export type Evaluated =
  | { readonly ok: true; readonly value: Scalar; readonly type: ValueType; readonly shown: string }
  | { readonly ok: false; readonly diagnostic: Diagnostic };

const BENCH = '·bench';
const ANSWER = '·answer';

/** Names `Table[Column]` are known, `[Column]` is not: the formula stands in no row. A leading = is allowed. */
export function evaluate(book: Book, formula: string): Evaluated {
  const planned = planFormula(book, formula);
  if (!planned.ok) return planned;
  const value = planned.answer(book.document.frame.besideOf(planned.beside));
  return { ok: true, value, type: planned.type, shown: shownAnswer(book, value, planned.type) };
}

/** A formula that stands in no sheet, ready to be answered as often as its book's figures change. */
export type PlannedFormula =
  | {
      readonly ok: true;
      readonly type: ValueType;
      /** What it reads: ids of sheets and 'sheet/column'. */
      readonly reads: readonly string[];
      /** The same for the engine. */
      readonly beside: Built['reads'];
      /** Its value in a frame of the book's program that is up to date; canonical. */
      readonly answer: (frame: Frame) => Scalar;
      /** The same as often as the frame is another. */
      readonly follow: (frame: Frame) => () => Scalar;
    }
  | { readonly ok: false; readonly diagnostic: Diagnostic };

/** Good for as long as no formula, column or unit of the book changes. */
export function planFormula(book: Book, formula: string): PlannedFormula {
  const { program } = book.document;
  const checked = checkText(formula, {}, program.catalog, program.vocabulary);
  if (!checked.ok) return checked;
  const { typed, found } = checked;
  if (typed.type.kind === 'record') return { ok: false, diagnostic: severalFigures(formula, typed.type) };
  const layout = Layout.beside(program.layout);
  const bench = layout.addTable(BENCH);
  const answer = layout.addColumn(bench, ANSWER, isWhole(typed.type));
  const { graph, reads } = buildGraph({
    layout,
    words: program.words,
    schema: program.plan,
    computed: [{ column: answer, typed }],
    generators: () => [],
  });
  const setUp = (frame: Frame): Frame => {
    const beside = Frame.beside(frame, layout, graph.order.length);
    beside.setLive(bench, 0, true);
    return beside;
  };
  const answerIn = (beside: Frame): Scalar => {
    graph.demandAll(beside);
    graph.run(beside, () => undefined);
    const { values, states } = beside.column(answer);
    return withoutPlace(toScalar(program.words, typed.type, values[0] ?? 0, states[0] ?? BLANK));
  };
  return {
    ok: true,
    type: typed.type,
    reads: found.map(({ id }) => id),
    beside: reads,
    answer: (frame) => answerIn(setUp(frame)),
    follow: (frame) => {
      const beside = setUp(frame);
      return () => {
        beside.follow(frame);
        return answerIn(beside);
      };
    },
  };
}

/** Figures that belong together stand in a column, where each has its place. */
function severalFigures(formula: string, { record }: ValueType & { kind: 'record' }): Diagnostic {
  const names = record.figures.map(({ name }) => name);
  const why = `This holds several figures (${names.join(', ')}): make a column of it, and name one of them there, as in [Column].[${names[0] ?? ''}].`;
  return { from: 0, to: formula.length, why };
}

function shownAnswer(book: Book, value: Scalar, type: ValueType): string {
  if (type.kind === 'link' && typeof value === 'number') return rowName(book, type.table, value);
  return showWithUnit(value, type, { currency: book.document.program.currency });
}

/** An error that began in the formula itself began in no cell. */
function withoutPlace(value: Scalar): Scalar {
  if (!isError(value) || value.at?.sheet !== BENCH) return value;
  return { error: value.error, why: value.why };
}
