// Plans the functions that only look at some of their arguments, or at rows rather than values: IF and its kin, AND, OR,
// catching errors, choosing, counting rows, looking up by an exact key. Called by call-plans.ts alone.

import { bodyFor, type Form } from '../../functions/definition.ts';
import type { Typed } from '../../language/typed.ts';
import { BLANK, FAULT, FILLED } from '../../values/column.ts';
import { compareKernel, ORDERS } from '../kernels/compare-kernels.ts';
import { todayKernel } from '../kernels/load-kernels.ts';
import { type Branch, catchKernel, chooseKernel, junctionKernel } from '../kernels/point-kernels.ts';
import { blankKernel, constantKernel, type Kernel, room, scratch, single } from '../kernels/vector.ts';
import { type ColumnDef, isHidden } from '../layout.ts';
import type { CallNode } from './call-nodes.ts';
import { slotOfText } from './group-keys.ts';
import { orderFor } from './order.ts';
import { holdsText, type Reader } from './reader.ts';

type ColumnNode = Extract<Typed, { node: 'column' }>;

const blank = blankKernel;

export function planForm(form: Exclude<Form, 'not'>, { args }: CallNode, reader: Reader): Kernel {
  const at = (i: number): Kernel => {
    const argument = args[i];
    return argument === undefined ? blank : reader.plan(argument);
  };
  const all = (): readonly Kernel[] => args.map((argument) => reader.plan(argument));
  switch (form) {
    case 'if':
      return planIf(args, reader);
    case 'ifs':
      return planIfs(args, reader);
    case 'switch':
      return planSwitch(args, reader);
    case 'choose':
      return planChoose(args, reader);
    case 'and':
      return junctionKernel(all(), 0);
    case 'or':
      return junctionKernel(all(), 1);
    case 'iferror':
      return catchKernel(at(0), at(1), () => true);
    case 'ifna':
      return catchKernel(at(0), at(1), (fault) => reader.words.faults.error(fault).error === 'missing');
    case 'rows':
      return planRows(args[0], reader);
    case 'columns':
      return planColumnCount(args[0], reader);
    case 'lookup':
      return planLookup(args, reader);
    case 'lookup first column':
      return planLookup(args.slice(0, 3), reader);
    case 'today':
      reader.readsToday();
      return todayKernel();
  }
}

/** What is taken where something does not hold is the other branch where it does: blanks and faults pass on either way. */
function planIf([condition, yes, no]: readonly Typed[], reader: Reader): Kernel {
  const branches = [branchOf(yes, reader), branchOf(no, reader)] as const;
  const denied = condition?.node === 'call' && condition.signature.name === 'NOT' ? condition.args[0] : undefined;
  if (denied !== undefined) return chooseKernel(reader.plan(denied), branches[1], branches[0]);
  return chooseKernel(condition === undefined ? blank : reader.plan(condition), ...branches);
}

function branchOf(tree: Typed | undefined, reader: Reader): Branch {
  if (tree === undefined) return { kernel: blank, isCostly: false };
  return { kernel: reader.plan(tree), isCostly: isCostly(tree, reader) };
}

/** Whether a part calls a function that works on boxed values or is a model of the trade: far more than a sum costs. */
function isCostly(tree: Typed, reader: Reader): boolean {
  switch (tree.node) {
    case 'call': {
      const definition = reader.functions.get(tree.signature.name);
      const body = definition === undefined ? undefined : bodyFor(definition, tree.args);
      const isModel = body?.lane === 'numeric' && body.loop === undefined && tree.signature.source !== undefined;
      const isBoxed = body?.lane === 'scalar' && body.isBlankness !== true;
      if (isModel || isBoxed || body?.lane === 'columns' || body?.lane === 'matching rows') return true;
      return tree.args.some((argument) => isCostly(argument, reader));
    }
    case 'binary':
      return isCostly(tree.left, reader) || isCostly(tree.right, reader);
    case 'negate':
    case 'key':
      return isCostly(tree.operand, reader);
    default:
      return false;
  }
}

function missing(reader: Reader, why: string): Kernel {
  return constantKernel(reader.words.faults.number({ error: 'missing', why }), FAULT);
}

function planIfs(args: readonly Typed[], reader: Reader): Kernel {
  let kernel = blank;
  for (let i = args.length - 2; i >= 0; i -= 2) {
    const [condition, value] = [args[i], args[i + 1]];
    if (condition !== undefined && value !== undefined)
      kernel = chooseKernel(reader.plan(condition), branchOf(value, reader), { kernel, isCostly: i + 2 < args.length });
  }
  return kernel;
}

/** A kernel that asks again and again for the same argument, which is worked out once a batch: nested calls stay as long as they are written. */
function askingOnce(argument: Kernel, asking: (held: Kernel) => Kernel): Kernel {
  let now = scratch();
  const kernel = asking(() => now);
  return (batch) => {
    now = argument(batch);
    return kernel(batch);
  };
}

function planSwitch(args: readonly Typed[], reader: Reader): Kernel {
  const [subject, ...rest] = args;
  if (subject === undefined) return blank;
  return askingOnce(reader.plan(subject), (held) => planCases(subject, held, rest, reader));
}

function planCases(subject: Typed, held: Kernel, rest: readonly Typed[], reader: Reader): Kernel {
  const hasDefault = rest.length % 2 === 1;
  const last = rest[rest.length - 1];
  let kernel =
    hasDefault && last !== undefined
      ? reader.plan(last)
      : missing(reader, 'SWITCH met a value that it has no case for: add a last argument for the rest.');
  for (let i = rest.length - (hasDefault ? 3 : 2); i >= 0; i -= 2) {
    const [value, result] = [rest[i], rest[i + 1]];
    if (value === undefined || result === undefined) continue;
    const same = compareKernel(held, reader.plan(value), ORDERS['='], orderFor(subject.type, true, reader.words.texts));
    kernel = chooseKernel(same, branchOf(result, reader), { kernel, isCostly: false });
  }
  return kernel;
}

function planChoose(args: readonly Typed[], reader: Reader): Kernel {
  const [which, ...choices] = args;
  if (which === undefined) return blank;
  const wrong = reader.words.faults.number({
    error: 'value',
    why: `CHOOSE was given a number that is not between 1 and ${choices.length}: change it or add choices.`,
  });
  return askingOnce(reader.plan(which), (held) => planPlaces(held, choices, constantKernel(wrong, FAULT), reader));
}

function planPlaces(held: Kernel, choices: readonly Typed[], otherwise: Kernel, reader: Reader): Kernel {
  let kernel = otherwise;
  choices.forEach((choice, i) => {
    const here = compareKernel(
      held,
      constantKernel(i + 1, FILLED),
      (order) => order === 0,
      (a, b) => Math.trunc(a) - b,
    );
    kernel = chooseKernel(here, branchOf(choice, reader), { kernel, isCostly: false });
  });
  return kernel;
}

function planRows(argument: Typed | undefined, reader: Reader): Kernel {
  if (argument?.node !== 'table') return blank;
  reader.readsRowsOf(argument.table);
  const table = reader.layout.table(argument.table);
  const vector = single();
  return ({ frame }) => {
    vector.values[0] = table.shown === undefined ? frame.table(table).liveCount : frame.rows(table).length;
    return vector;
  };
}

/** Columns that a person sees; adding or removing one plans every formula anew. */
function planColumnCount(argument: Typed | undefined, reader: Reader): Kernel {
  if (argument?.node !== 'table') return blank;
  const { columns } = reader.layout.table(argument.table);
  return constantKernel(columns.filter(({ id }) => !isHidden(id)).length, FILLED);
}

/** The column that an argument is, or whose links' keys it is. */
function columnBehind(argument: Typed | undefined): ColumnNode | undefined {
  const node = argument?.node === 'key' ? argument.operand : argument;
  return node?.node === 'column' ? node : undefined;
}

/** The keys that a link column's rows are shown by. */
function keysBehind(links: ColumnNode, reader: Reader): ColumnDef | undefined {
  const key = links.type.kind === 'link' ? reader.keyOf(links.type.table) : undefined;
  if (links.type.kind !== 'link' || key === undefined) return undefined;
  reader.readsWhole(links.type.table, key);
  return reader.layout.column(links.type.table, key);
}

/** XLOOKUP(key; Table[Key column]; Table[Result column]; if none), VLOOKUP for an equal key: the first row whose key is equal. */
function planLookup(args: readonly Typed[], reader: Reader): Kernel {
  const [wanted, keyArgument, resultArgument, otherwise] = args;
  const [keys, results] = [columnBehind(keyArgument), columnBehind(resultArgument)];
  if (wanted === undefined || keys === undefined || results === undefined) return blank;
  const lookup = reader.indexForLookup(keys.table, [keys.column]);
  reader.readsWhole(results.table, results.column);
  const result = reader.layout.column(results.table, results.column);
  const shownBy = resultArgument?.node === 'key' ? keysBehind(results, reader) : undefined;
  const text = holdsText(reader, keys.table, keys.column);
  const { texts } = reader.words;
  const key =
    keyArgument?.node === 'key' && keys.type.kind === 'link'
      ? slotOfText(keys.type.table, wanted, reader)
      : reader.plan(wanted);
  const none =
    otherwise === undefined || otherwise.node === 'blank'
      ? missing(
          reader,
          `No row of ${reader.tableName(keys.table)} has this ${reader.columnName(keys.table, keys.column)}: check the value looked for.`,
        )
      : reader.plan(otherwise);
  const out = scratch();
  return (batch) => {
    room(out, batch.count);
    const k = key(batch);
    const instead = none(batch);
    const { count, frame } = batch;
    const index = lookup.read(frame);
    const column = frame.column(result);
    const named = shownBy === undefined ? undefined : frame.column(shownBy);
    let clean = true;
    for (let i = 0; i < count; i++) {
      const ki = k.at + (k.uniform ? 0 : i);
      const state = k.clean ? FILLED : (k.states[ki] ?? BLANK);
      if (state !== FILLED) {
        out.values[i] = k.values[ki] ?? 0;
        out.states[i] = state;
        clean = false;
        continue;
      }
      const value = k.values[ki] ?? 0;
      const members = index.members(index.findOne(text ? texts.fold(value) : value));
      if (members.count > 0) {
        const row = members.rows[members.from] ?? 0;
        const linked = named !== undefined && column.states[row] === FILLED;
        const from = linked ? named : column;
        const at = linked ? (column.values[row] ?? 0) : row;
        out.values[i] = from.values[at] ?? 0;
        out.states[i] = from.states[at] ?? BLANK;
      } else {
        const ni = instead.at + (instead.uniform ? 0 : i);
        out.values[i] = instead.values[ni] ?? 0;
        out.states[i] = instead.clean ? FILLED : (instead.states[ni] ?? BLANK);
      }
      if (out.states[i] !== FILLED) clean = false;
    }
    out.clean = clean;
    return out;
  };
}
