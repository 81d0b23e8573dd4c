// Seasons that were drawn before anyone asked for them: of what is most likely to be asked, while a person still reads and chooses.
// They are the seasons of an order, which is drawn on from there once it is asked for. Called by draws-worker.ts.

import type { Draws } from '../../../engine/index.ts';
import type { SeasonsOrder } from './draws-messages.ts';

export class DrawnAhead {
  #kept: { readonly order: string; readonly draws: Draws } | undefined;

  keep(order: SeasonsOrder, draws: Draws): void {
    this.#kept = { order: nameOf(order), draws };
  }

  /** What was drawn of this very order, handed over once: whoever takes it draws on. Whatever else is asked, it is let go of. */
  take(order: SeasonsOrder): Draws | undefined {
    const kept = this.#kept;
    this.#kept = undefined;
    return kept?.order === nameOf(order) ? kept.draws : undefined;
  }
}

function nameOf({ figures, weekly, from, until, seed }: SeasonsOrder): string {
  return JSON.stringify([figures, weekly, from, until, seed]);
}
