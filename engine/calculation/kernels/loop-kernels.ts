// Kernels around loops that go over a whole batch at once: numeric functions and folds of two that bring one. A batch in
// which every argument is filled goes through the loop; any other goes value by value, as for functions without a loop.

import type { Loop } from '../../functions/definition.ts';
import { allFinite } from './states.ts';
import { blankKernel, type Kernel, scratch, takeAll, type Vector } from './vector.ts';

/** `carefully` makes the kernel that works value by value, from kernels of the same arguments. */
export function loopKernel(
  kernels: readonly Kernel[],
  loop: Loop,
  carefully: (kernels: readonly Kernel[]) => Kernel,
): Kernel {
  const out = scratch();
  const vectors: Vector[] = [];
  const careful = carefully(kernels.map((_, k) => (batch) => vectors[k] ?? blankKernel(batch)));
  return (batch) => {
    const count = takeAll(kernels, batch, vectors, out);
    if (!out.clean) return careful(batch);
    loop(out.values, count, vectors);
    return allFinite(out.values, count) ? out : careful(batch);
  };
}
