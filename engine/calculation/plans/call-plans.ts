// Plans calls of functions by the lane their body runs in: numeric and scalar lanes here, forms in form-plans.ts,
// totals in fold-plans.ts, rows that meet conditions in scan-plans.ts, whole columns in column-plans.ts, rows that meet a
// sheet of criteria in database-plans.ts. Called by plan.ts alone.

import { bodyFor, type FunctionDefinition, type RunBody } from '../../functions/definition.ts';
import type { Typed } from '../../language/typed.ts';
import { FILLED } from '../../values/column.ts';
import { blanknessKernel, denyKernel } from '../kernels/denying-kernels.ts';
import { loopKernel } from '../kernels/loop-kernels.ts';
import { pointKernel1, pointKernel2, pointKernel3, pointKernel4, pointKernelN } from '../kernels/point-kernels.ts';
import { remembered } from '../kernels/remembered.ts';
import { scalarKernel } from '../kernels/scalar-kernels.ts';
import { canonicalKernel } from '../kernels/unit-kernels.ts';
import { blankKernel, constantKernel, type Kernel } from '../kernels/vector.ts';
import { planArgument } from './argument-plans.ts';
import { type CallNode, parameterOf } from './call-nodes.ts';
import { planColumns } from './column-plans.ts';
import { planDatabase, planDatabaseRow } from './database-plans.ts';
import { planFirst } from './first-plans.ts';
import { planConditionalFold, planFold } from './fold-plans.ts';
import { planForm } from './form-plans.ts';
import type { Reader } from './reader.ts';
import { planMatchingRows } from './scan-plans.ts';

export function planCall(tree: CallNode, reader: Reader): Kernel {
  const definition = reader.functions.get(tree.signature.name);
  if (definition === undefined) throw new Error(`No body for ${tree.signature.name}`);
  const body = bodyFor(definition, tree.args);
  switch (body.lane) {
    case 'numeric':
      return planNumeric(tree, definition, body, reader);
    case 'scalar':
      return planScalar(tree, body, reader);
    case 'fold':
      return planFold(tree, body.fold, reader);
    case 'conditional fold':
      return planConditionalFold(tree, body.fold, reader);
    case 'columns':
      return planColumns(tree, body, reader);
    case 'matching rows':
      return (body.takesFirst === true ? planFirst(tree, reader) : undefined) ?? planMatchingRows(tree, body, reader);
    case 'database':
      return planDatabase(tree, body.fold, reader);
    case 'database row':
      return planDatabaseRow(tree, body, reader);
    case 'form':
      return body.form === 'not' ? planDenied(tree, reader) : planForm(body.form, tree, reader);
  }
}

/** NOT, of which most are of what is blank. */
function planDenied({ args: [denied] }: CallNode, reader: Reader): Kernel {
  if (denied === undefined) return blankKernel;
  const cell = askedBlank(denied, reader);
  return cell === undefined ? denyKernel(reader.plan(denied)) : blanknessKernel(cell, true);
}

/** The argument of a call that says whether it is blank; undefined of any other. */
function askedBlank(tree: Typed, reader: Reader): Kernel | undefined {
  if (tree.node !== 'call') return undefined;
  const definition = reader.functions.get(tree.signature.name);
  const body = definition === undefined ? undefined : bodyFor(definition, tree.args);
  const asksBlankness = body?.lane === 'scalar' && body.isBlankness === true;
  return asksBlankness ? planUnlessLeftOut(tree.args[0], 0, tree, reader) : undefined;
}

function planNumeric(
  tree: CallNode,
  definition: FunctionDefinition,
  body: Extract<RunBody, { lane: 'numeric' }>,
  reader: Reader,
): Kernel {
  const { signature, args } = tree;
  const count = Math.max(args.length, signature.repeating === 0 ? signature.parameters.length : 0);
  const kernels: (Kernel | undefined)[] = [];
  for (let i = 0; i < count; i++) kernels.push(planUnlessLeftOut(args[i], i, tree, reader));
  const fault = body.undefinedMeans === 'blank' ? undefined : reader.words.faults.number(body.undefinedMeans);
  const { loop } = body;
  const compute = body.isDear === true ? remembered(body.compute, count) : body.compute;
  const there = kernels.filter((kernel) => kernel !== undefined);
  const result =
    there.length < kernels.length
      ? pointKernelN(kernels, compute, fault)
      : loop === undefined
        ? numericKernel(there, compute, fault)
        : loopKernel(there, loop, (same) => numericKernel(same, compute, fault));
  const unit = definition.resultUnit === undefined ? undefined : reader.unit(definition.resultUnit);
  if (unit === undefined || (unit.numerator === unit.denominator && unit.offset === 0)) return result;
  return canonicalKernel(result, unit);
}

function numericKernel(
  kernels: readonly Kernel[],
  compute: (...numbers: number[]) => number,
  fault: number | undefined,
): Kernel {
  const [a, b, c, d, ...more] = kernels;
  if (a === undefined) return constantKernel(compute(), FILLED);
  if (b === undefined) return pointKernel1(a, compute, fault);
  if (c === undefined) return pointKernel2(a, b, compute, fault);
  if (d === undefined) return pointKernel3([a, b, c], compute, fault);
  return more.length > 0 ? pointKernelN(kernels, compute, fault) : pointKernel4([a, b, c, d], compute, fault);
}

/** An argument's kernel; undefined where an optional one was left out. */
function planUnlessLeftOut(argument: Typed | undefined, i: number, tree: CallNode, reader: Reader): Kernel | undefined {
  const leftOut = argument === undefined || (argument.node === 'blank' && parameterOf(tree, i)?.optional === true);
  return leftOut ? undefined : planArgument(argument, i, tree, reader);
}

function planScalar(tree: CallNode, body: Extract<RunBody, { lane: 'scalar' }>, reader: Reader): Kernel {
  const { args } = tree;
  const kernels = args.map((argument, i) => planUnlessLeftOut(argument, i, tree, reader));
  const [only] = kernels;
  if (body.isBlankness === true && only !== undefined) return blanknessKernel(only);
  return scalarKernel(
    reader.words,
    kernels,
    args.map((argument) => argument.type),
    body.compute,
    { blanks: body.blanks, errors: body.errors ?? 'pass' },
  );
}
