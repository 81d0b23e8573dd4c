// Units in general use, whose list is fetched only when one is met: what was refused for the want of it is done once more when it
// has come.

import { signal } from '@preact/signals';
import { loadGeneralUnits, wantsGeneralUnits } from '../../../engine/index.ts';

/** Raised when the list has come: what shows a refusal asks again. */
export const unitsCame = signal(0);

let fetching: Promise<boolean> | undefined;

/** Fetches the list where something was refused for the want of it; whether it has come by that. */
export function fetchUnitsWanted(): Promise<boolean> {
  if (!wantsGeneralUnits()) return Promise.resolve(false);
  fetching ??= loadGeneralUnits().then(
    () => {
      unitsCame.value += 1;
      return true;
    },
    () => {
      // Without a way to the list a word is no unit, as before; the next one tries again.
      fetching = undefined;
      return false;
    },
  );
  return fetching;
}

/** A word half typed may look like such a unit: while a person types, the list is fetched when they rest. */
const REST = 500;

let resting: ReturnType<typeof setTimeout> | undefined;

export function fetchUnitsAtRest(): void {
  clearTimeout(resting);
  if (wantsGeneralUnits()) resting = setTimeout(() => void fetchUnitsWanted(), REST);
}

/**
 * Does something and hands on what came of it, at once where it can: where it was refused, perhaps for the want of the list,
 * fetches that and does it once more.
 */
export function withUnits<T>(attempt: () => T, isRefused: (outcome: T) => boolean, then: (outcome: T) => void): void {
  const outcome = attempt();
  if (!isRefused(outcome) || !wantsGeneralUnits()) then(outcome);
  else void fetchUnitsWanted().then((came) => then(came ? attempt() : outcome));
}
