// Turns a typed tree into a kernel: each node of the tree becomes a closure over the closures of its parts. Calls are
// planned by lane in call-plans.ts, conditional totals in fold-plans.ts; this file does names, operators and conversions.

import { type Typed, walkTyped } from '../../language/typed.ts';
import { FILLED } from '../../values/column.ts';
import type { Scalar } from '../../values/error.ts';
import { LONGEST_TEXT, tooLongText } from '../../values/plain-text.ts';
import { compareKernel, ORDERS } from '../kernels/compare-kernels.ts';
import { cellKernel } from '../kernels/kept-cells.ts';
import { singleKernel, throughKernel, todayKernel } from '../kernels/load-kernels.ts';
import { arithmeticKernel } from '../kernels/point-kernels.ts';
import { rememberingKernel } from '../kernels/remembering-kernel.ts';
import { scalarKernel } from '../kernels/scalar-kernels.ts';
import { TOO_LARGE, toStored } from '../kernels/scalars.ts';
import { negateKernel } from '../kernels/unit-kernels.ts';
import { blankKernel, constantKernel, type Kernel } from '../kernels/vector.ts';
import { planCall } from './call-plans.ts';
import { orderFor } from './order.ts';
import { keyColumn, type LinkStep, type Reader, tableBehind } from './reader.ts';

type CellNode = Extract<Typed, { node: 'cell' }>;

/** The kernel of a typed tree for columns of `reader.table`; what it reads is told to the reader. */
export function plan(tree: Typed, reader: Reader): Kernel {
  switch (tree.node) {
    case 'constant': {
      const stored = { value: 0, state: FILLED };
      toStored(reader.words, tree.value, stored);
      return constantKernel(stored.value, stored.state);
    }
    case 'blank':
      return blankKernel;
    case 'today':
      reader.readsToday();
      return todayKernel();
    case 'single':
      reader.readsWhole(tree.table, tree.column);
      return singleKernel(reader.layout.column(tree.table, tree.column));
    case 'cell':
      return planCell(tree, reader);
    case 'typed':
      return reader.typed(reader.layout.column(tree.table, tree.column));
    case 'key':
      return planKey(tree.operand, reader);
    case 'negate':
      return negateKernel(plan(tree.operand, reader));
    case 'binary':
      return planBinary(tree, reader);
    case 'call':
      return planCall(tree, reader);
    case 'column':
    case 'table':
    case 'condition':
    case 'criteria':
      throw new Error(`A ${tree.node} stands only among the arguments of a function that takes one`);
  }
}

/** The table a chain of links reaches, and the steps to it. */
function linkSteps(tree: CellNode, reader: Reader): LinkStep[] {
  const steps: LinkStep[] = [];
  let table = reader.table.id;
  for (const column of tree.links) {
    steps.push({ table, column });
    table = tableBehind(reader, table, column);
  }
  return steps;
}

function planCell(tree: CellNode, reader: Reader): Kernel {
  const steps = linkSteps(tree, reader);
  steps.forEach((step, i) => {
    reader.readsCell(steps.slice(0, i), step.table, step.column);
  });
  reader.readsCell(steps, tree.table, tree.column);
  const column = reader.layout.column(tree.table, tree.column);
  const links = steps.map((step) => reader.layout.column(step.table, step.column));
  const [first = column, ...further] = [...links, column];
  return cellKernel(reader.layout, [first, ...further]);
}

/** The key text of the row that a link names. */
function planKey(link: Typed, reader: Reader): Kernel {
  if (link.type.kind !== 'link') throw new Error('Only a link has a key');
  const target = link.type.table;
  const column = keyColumn(reader, target);
  if (link.node === 'cell') {
    reader.readsCell([...linkSteps(link, reader), { table: link.table, column: link.column }], target, column.id);
  } else {
    reader.readsWhole(target, column.id);
  }
  return throughKernel(plan(link, reader), column);
}

function planBinary(tree: Extract<Typed, { node: 'binary' }>, reader: Reader): Kernel {
  const { operator } = tree;
  if (operator === '&') return planJoin(tree, reader);
  const left = plan(tree.left, reader);
  const right = plan(tree.right, reader);
  const faults = {
    divide: reader.words.faults.number({
      error: 'divide',
      why: 'This divides by zero: give the divisor a value other than 0.',
    }),
    overflow: reader.words.faults.number(TOO_LARGE),
  };
  switch (operator) {
    case '+':
    case '-':
    case '*':
    case '/':
      return arithmeticKernel(operator, left, right, faults);
    case '^':
      return arithmeticKernel(operator, left, right, {
        ...faults,
        overflow: reader.words.faults.number({
          error: 'number',
          why: 'This power has no value: a negative number has only whole powers, and 0 only positive ones.',
        }),
      });
    default:
      return compareKernel(
        left,
        right,
        ORDERS[operator],
        orderFor(tree.left.type, operator === '=' || operator === '<>', reader.words.texts),
      );
  }
}

/** Texts joined, however many one after another; a blank joins as nothing. Links came as their keys. */
function planJoin(tree: Typed, reader: Reader): Kernel {
  const parts = joinedParts(tree);
  const joined = scalarKernel(
    reader.words,
    parts.map((part) => plan(part, reader)),
    parts.map(({ type }) => type),
    (values) => {
      let joined = '';
      for (let k = 0; k < parts.length; k++) joined += said(values[k] ?? null, parts[k] as Typed, reader);
      return joined.length > LONGEST_TEXT ? tooLongText('join less') : joined;
    },
    { blanks: 'given', errors: 'pass' },
  );
  const cells = parts.filter(({ node }) => node === 'call').length > 1 ? cellsAlone(tree) : undefined;
  const isFew = cells !== undefined && cells.length > 0 && cells.length <= MOST_REMEMBERED_BY;
  return isFew
    ? rememberingKernel(
        cells.map((cell) => planCell(cell, reader)),
        joined,
      )
    : joined;
}

/** By more cells than this rows are seldom alike. */
const MOST_REMEMBERED_BY = 2;

/** The cells that an answer follows from, each once; undefined where it follows from anything besides. */
function cellsAlone(tree: Typed): readonly CellNode[] | undefined {
  const cells = new Map<string, CellNode>();
  let isAlone = true;
  walkTyped(tree, (node) => {
    if (node.node === 'cell') cells.set([...node.links, node.table, node.column].join(' '), node);
    else if (!MADE_OF_CELLS.has(node.node)) isAlone = false;
  });
  return isAlone ? [...cells.values()] : undefined;
}

const MADE_OF_CELLS: ReadonlySet<Typed['node']> = new Set(['constant', 'blank', 'binary', 'negate', 'call']);

/** What a row of & joins, from left to right. */
function joinedParts(tree: Typed): readonly Typed[] {
  if (tree.node !== 'binary' || tree.operator !== '&') return [tree];
  return [...joinedParts(tree.left), ...joinedParts(tree.right)];
}

function said(value: Scalar, part: Typed, reader: Reader): string {
  return value === null ? '' : reader.say(value, part.type);
}
