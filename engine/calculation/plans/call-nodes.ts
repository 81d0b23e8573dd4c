// Calls in the typed tree, and the parameters that their arguments stand for. Shared by the files that plan calls.

import type { Parameter } from '../../language/signature.ts';
import { parameterIndex } from '../../language/standing.ts';
import type { Typed } from '../../language/typed.ts';

export type CallNode = Extract<Typed, { node: 'call' }>;

/** The parameter that the i-th argument of a call stands for; undefined past the last. */
export function parameterOf({ signature }: CallNode, i: number): Parameter | undefined {
  return signature.parameters[parameterIndex(signature, i)];
}
