// Small questions about the arguments of a call, shared by the files that plan calls.

import type { Parameter } from '../language/signature.ts';
import type { Typed } from '../language/typed.ts';

export type CallNode = Extract<Typed, { node: 'call' }>;

/** The parameter that the i-th argument stands for; the last `repeating` ones come round again. */
export function parameterAt(parameters: readonly Parameter[], repeating: number, i: number): Parameter | undefined {
  if (i < parameters.length || repeating === 0) return parameters[i];
  const start = parameters.length - repeating;
  return parameters[start + ((i - start) % repeating)];
}

/** Whether an argument was left out: written as nothing between separators, or past the end of the call. */
export function isLeftOut(argument: Typed | undefined): boolean {
  return argument === undefined || argument.node === 'blank';
}
