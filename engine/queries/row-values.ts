// What parts of a row's formula come to: the cells it reads are put in as constants, and the parts run as a formula that stands in
// no row. Called where a formula is told in words.

import { Frame } from '../calculation/frame.ts';
import { toScalar } from '../calculation/kernels/scalars.ts';
import { Layout } from '../calculation/layout.ts';
import { buildGraph } from '../calculation/plans/build.ts';
import type { Typed } from '../language/typed.ts';
import { isWhole } from '../schema/types.ts';
import { BLANK, FILLED } from '../values/column.ts';
import { isError, type Scalar } from '../values/error.ts';
import type { Book } from './book.ts';
import { rowName } from './shown.ts';

export interface RowOf {
  readonly sheet: string;
  readonly row: number;
}

const BENCH = '·parts';

/** The value of each part for a row, canonical; null where it is blank. */
export function valuesOf(book: Book, at: RowOf, parts: readonly Typed[]): ReadonlyMap<Typed, Scalar> {
  if (parts.length === 0) return new Map();
  const { program, frame } = book.document;
  const layout = Layout.beside(program.layout);
  const bench = layout.addTable(BENCH);
  const computed = parts.map((part, i) => {
    return { column: layout.addColumn(bench, `·${i}`, isWhole(part.type)), typed: grounded(book, at, part) };
  });
  const { graph, reads } = buildGraph({
    layout,
    words: program.words,
    schema: program.plan,
    computed,
    generators: () => [],
  });
  const beside = Frame.beside(frame.besideOf(reads), layout, graph.order.length);
  beside.setLive(bench, 0, true);
  graph.demandAll(beside);
  graph.run(beside, () => undefined);
  return new Map(
    computed.map(({ column }, i): [Typed, Scalar] => {
      const part = parts[i] as Typed;
      const { values, states } = beside.column(column);
      return [part, toScalar(program.words, part.type, values[0] ?? 0, states[0] ?? BLANK)];
    }),
  );
}

/** Where a cell that a formula reads stands, its links followed; undefined where one of them is blank. */
export function placeOf({ document }: Book, at: RowOf, links: readonly string[]): RowOf | undefined {
  let here: RowOf = at;
  for (const link of links) {
    const column = document.program.sheet(here.sheet)?.column(link);
    if (column?.type?.kind !== 'link') return undefined;
    const { values, states } = document.frame.column(column.def);
    if (states[here.row] !== FILLED) return undefined;
    here = { sheet: column.type.table, row: values[here.row] ?? 0 };
  }
  return here;
}

/** The part with this row's values in place of the cells it reads. */
function grounded(book: Book, at: RowOf, part: Typed): Typed {
  const into = (operand: Typed): Typed => grounded(book, at, operand);
  switch (part.node) {
    case 'cell':
      return constant(part, valueAt(book, placeOf(book, at, part.links), part));
    case 'typed': {
      const column = book.document.program.sheet(part.table)?.column(part.column);
      const typed = column !== undefined && book.document.isTyped(column, at.row);
      return constant(part, typed ? valueAt(book, at, part) : null);
    }
    case 'key': {
      const { operand } = part;
      if (operand.node !== 'cell' || operand.type.kind !== 'link') return { ...part, operand: into(operand) };
      const slot = valueAt(book, placeOf(book, at, operand.links), operand);
      return constant(part, typeof slot === 'number' ? rowName(book, operand.type.table, slot) : null);
    }
    case 'negate':
      return { ...part, operand: into(part.operand) };
    case 'binary':
      return { ...part, left: into(part.left), right: into(part.right) };
    case 'condition':
      return { ...part, value: into(part.value) };
    case 'call':
      return { ...part, args: part.args.map(into) };
    default:
      return part;
  }
}

function constant({ from, to, type }: Typed, value: Scalar): Typed {
  return value === null || isError(value)
    ? { from, to, type, node: 'blank' }
    : { from, to, type, node: 'constant', value };
}

function valueAt(
  { document }: Book,
  at: RowOf | undefined,
  { table, column, type }: Extract<Typed, { readonly node: 'cell' | 'typed' }>,
): Scalar {
  if (at === undefined) return null;
  const { program, frame } = document;
  const { values, states, length } = frame.column(program.layout.column(table, column));
  return at.row < length ? toScalar(program.words, type, values[at.row] ?? 0, states[at.row] ?? BLANK) : null;
}
