// One figure of a function that answers with several, as a function of its own: what earlier templates called by a name each.

import type { Result } from '../../language/signature.ts';
import { sameDimension } from '../../units/dimension.ts';
import type { Unit } from '../../units/unit.ts';
import type { Scalar } from '../../values/error.ts';
import { Figures } from '../../values/figures.ts';
import type { RecordType, ValueType } from '../../values/type.ts';
import type { Answer, FunctionDefinition } from '../definition.ts';

/** `figure` by its name in the record that the function answers with; masses of plants in the unit they were shown in. */
export function figureOf(
  name: string,
  { signature, body }: FunctionDefinition,
  figure: string,
  massUnit: Unit,
): FunctionDefinition {
  const { result } = signature;
  if (result.is !== 'record' || body.lane !== 'matching rows') throw new Error(`${signature.name} fits no plots`);
  const at = placeOf(result.record, figure);
  const type = result.record.figures[at]?.type;
  const only = (answer: Answer): Scalar => (answer instanceof Figures ? (answer.values[at] ?? null) : answer);
  return {
    signature: {
      ...signature,
      name,
      result: resultOf(shownIn(type, massUnit)),
      doc: `${figure} of ${signature.name}.`,
      former: true,
    },
    body: {
      ...body,
      compute: (scalars: readonly Scalar[], columns: readonly (readonly Scalar[])[]) =>
        only(body.compute(scalars, columns)),
    },
  };
}

function placeOf({ figures, name }: RecordType, figure: string): number {
  const at = figures.findIndex((one) => one.name === figure);
  if (at < 0) throw new Error(`A ${name} has no ${figure}`);
  return at;
}

function shownIn(type: ValueType | undefined, massUnit: Unit): ValueType | undefined {
  return type?.kind === 'number' && sameDimension(type.dimension, massUnit.dimension)
    ? { ...type, unit: massUnit }
    : type;
}

function resultOf(type: ValueType | undefined): Result {
  return { is: 'rule', rule: () => type ?? 'This figure is not known any more.' };
}
