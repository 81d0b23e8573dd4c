// What a long command is at, said meanwhile where a person reads along. Verbs call it.

import type { World } from './world.ts';

/** Says what is being done for as long as it is, and wipes that out again. */
export async function during<T>(world: World, line: string, work: () => T | Promise<T>): Promise<T> {
  world.progress?.(line);
  try {
    return await work();
  } finally {
    world.progress?.(undefined);
  }
}
