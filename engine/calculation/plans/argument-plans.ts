// Plans one argument of a call: in the unit its parameter wants, refused outside the range in which a model holds. Called by
// call-plans.ts and the files it hands calls to, whatever the lane.

import type { Typed } from '../../language/typed.ts';
import type { Unit } from '../../units/unit.ts';
import type { CellError } from '../../values/error.ts';
import { isPlainNumber } from '../../values/type.ts';
import { inUnitKernel, limitKernel } from '../kernels/unit-kernels.ts';
import type { Kernel } from '../kernels/vector.ts';
import { type CallNode, parameterOf } from './call-nodes.ts';
import type { Reader } from './reader.ts';

/** The i-th argument of a call in its parameter's unit, refused outside the parameter's limit. */
export function planArgument(argument: Typed, i: number, call: CallNode, reader: Reader): Kernel {
  const parameter = parameterOf(call, i);
  const canonical = reader.plan(argument);
  const unit = parameter?.unit === undefined ? undefined : reader.unit(parameter.unit);
  // A plain number where a quantity is wanted already counts in the parameter's unit.
  const asGiven = parameter?.plain === true && isPlainNumber(argument.type);
  const kernel = unit === undefined || asGiven ? canonical : inUnit(canonical, unit);
  const limit = parameter?.limit;
  if (parameter === undefined || limit === undefined) return kernel;
  const { min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY, why } = limit;
  const error: CellError = {
    error: 'range',
    why: `${call.signature.name}: ${parameter.name.replaceAll('_', ' ')} is outside the range in which this holds (${why}). Give a value inside it.`,
  };
  return limitKernel(kernel, min, max, reader.words.faults.number(error));
}

function inUnit(kernel: Kernel, unit: Unit): Kernel {
  if (unit.numerator === unit.denominator && unit.offset === 0) return kernel;
  return inUnitKernel(kernel, unit);
}
