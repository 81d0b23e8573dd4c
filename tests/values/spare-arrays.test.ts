// Arrays kept to be used again.

import { expect, test } from 'vitest';
import { MOST_SPARE_BYTES, SpareArrays } from '../../engine/values/spare-arrays.ts';

test('a copy stands in a kept array of its kind and length, and in a new one where there is none', () => {
  const spare = new SpareArrays();
  const [doubles, whole, states] = [new Float64Array(4), new Int32Array(4), new Uint8Array(4)];
  for (const array of [doubles, whole, states]) spare.keep(array);
  expect(spare.bytes).toBe(4 * (8 + 4 + 1));
  expect(spare.copy(new Float64Array([1, 2, 3]))).toEqual(new Float64Array([1, 2, 3]));
  expect(spare.copy(new Float64Array([1, 2, 3, 4]))).toBe(doubles);
  expect(doubles).toEqual(new Float64Array([1, 2, 3, 4]));
  expect(spare.copy(new Int32Array([5, 6, 7, 8]))).toBe(whole);
  expect(spare.copy(new Uint8Array([0, 1, 2, 0]))).toBe(states);
  expect(spare.bytes).toBe(0);
  expect(spare.copy(new Float64Array(4))).not.toBe(doubles);
});

test('more than is worth keeping is not kept', () => {
  const spare = new SpareArrays();
  const large = new Float64Array(MOST_SPARE_BYTES / 8);
  spare.keep(large);
  spare.keep(new Uint8Array(1));
  expect(spare.bytes).toBe(MOST_SPARE_BYTES);
  expect(spare.copy(new Uint8Array(1))).toEqual(new Uint8Array(1));
  expect(spare.copy(large)).toBe(large);
});
