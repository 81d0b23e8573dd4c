// Whether a file can hold what a command brings: by the shape with which the file is read again.

import { Misfit, type Shape, WHOLE } from '../schema/shape.ts';

/** Why a file could not hold it, with the field that is not as it should be; undefined where it can. */
export function refuseUnkept<T>(shape: Shape<T>, value: T): string | undefined {
  try {
    shape.read(value, WHOLE);
    return undefined;
  } catch (fault) {
    if (fault instanceof Misfit) return fault.message;
    throw fault;
  }
}
