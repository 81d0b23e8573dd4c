// Plans calls of functions by the lane their body runs in: numeric and scalar lanes here, forms in form-plans.ts, anything
// over whole columns or matching rows in group-plans.ts. Called by plan.ts alone.

import { bodyFor, type FunctionDefinition, type RunBody } from '../functions/definition.ts';
import type { Parameter } from '../language/signature.ts';
import type { Typed } from '../language/typed.ts';
import type { Unit } from '../units/unit.ts';
import { fromCanonical, toCanonical } from '../units/unit.ts';
import { FILLED } from '../values/column.ts';
import type { CellError } from '../values/error.ts';
import { type CallNode, parameterAt } from './call-nodes.ts';
import { planForm } from './form-plans.ts';
import { planColumns, planConditionalFold, planFold, planMatchingRows } from './group-plans.ts';
import { pointKernel1, pointKernel2, pointKernel3, pointKernelN } from './point-kernels.ts';
import type { Reader } from './reader.ts';
import { scalarKernel } from './scalar-kernels.ts';
import { constantKernel, type Kernel } from './vector.ts';

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
      return planColumns(tree, body.compute, reader);
    case 'matching rows':
      return planMatchingRows(tree, body, reader);
    case 'form':
      return planForm(tree, reader);
  }
}

/** The argument in its parameter's unit, refused outside the parameter's limit. */
export function planArgument(argument: Typed, parameter: Parameter | undefined, name: string, reader: Reader): Kernel {
  const canonical = reader.plan(argument);
  const unit = parameter?.unit === undefined ? undefined : reader.unit(parameter.unit);
  // A plain number where a quantity is wanted already counts in the parameter's unit.
  const asGiven = parameter?.plain === true && isPlainFor(argument, unit);
  const kernel = unit === undefined || asGiven ? canonical : inUnit(canonical, unit);
  const limit = parameter?.limit;
  if (parameter === undefined || limit === undefined) return kernel;
  const { min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY, why } = limit;
  const error: CellError = {
    error: 'range',
    why: `${name}: ${parameter.name.replaceAll('_', ' ')} is outside the range in which this holds (${why}). Give a value inside it.`,
  };
  return pointKernel1(kernel, (a) => (a >= min && a <= max ? a : Number.NaN), reader.model.faults.number(error));
}

function isPlainFor(argument: Typed, unit: Unit | undefined): boolean {
  const { type } = argument;
  if (unit === undefined || type.kind !== 'number') return false;
  const plain = Object.values(type.dimension).every((power) => power === 0);
  const plainUnit = Object.values(unit.dimension).every((power) => power === 0);
  return plain && !plainUnit;
}

function inUnit(kernel: Kernel, unit: Unit): Kernel {
  if (unit.numerator === unit.denominator && unit.offset === 0) return kernel;
  return pointKernel1(kernel, (a) => fromCanonical(unit, a), undefined);
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
  for (let i = 0; i < count; i++) {
    const argument = args[i];
    const parameter = parameterAt(signature.parameters, signature.repeating, i);
    const leftOut = argument === undefined || (argument.node === 'blank' && parameter?.optional === true);
    kernels.push(leftOut ? undefined : planArgument(argument, parameter, signature.name, reader));
  }
  const fault = body.undefinedMeans === 'blank' ? undefined : reader.model.faults.number(body.undefinedMeans);
  const result = numericKernel(kernels, body.compute, fault);
  const unit = definition.resultUnit === undefined ? undefined : reader.unit(definition.resultUnit);
  if (unit === undefined || (unit.numerator === unit.denominator && unit.offset === 0)) return result;
  return pointKernel1(result, (a) => toCanonical(unit, a), undefined);
}

function numericKernel(
  kernels: readonly (Kernel | undefined)[],
  compute: (...numbers: number[]) => number,
  fault: number | undefined,
): Kernel {
  const [a, b, c] = kernels;
  if (kernels.length === 0) return constantKernel(compute(), FILLED);
  if (kernels.length === 1 && a !== undefined) return pointKernel1(a, compute, fault);
  if (kernels.length === 2 && a !== undefined && b !== undefined) return pointKernel2(a, b, compute, fault);
  if (kernels.length === 3 && a !== undefined && b !== undefined && c !== undefined)
    return pointKernel3([a, b, c], compute, fault);
  return pointKernelN(kernels, compute, fault);
}

function planScalar(tree: CallNode, body: Extract<RunBody, { lane: 'scalar' }>, reader: Reader): Kernel {
  const { signature, args } = tree;
  const kernels: (Kernel | undefined)[] = args.map((argument, i) => {
    const parameter = parameterAt(signature.parameters, signature.repeating, i);
    if (argument.node === 'blank' && parameter?.optional === true) return undefined;
    return planArgument(argument, parameter, signature.name, reader);
  });
  return scalarKernel(
    reader.model,
    kernels,
    args.map((argument) => argument.type),
    body.compute,
    { blanks: body.blanks, errors: body.errors ?? 'pass' },
  );
}
