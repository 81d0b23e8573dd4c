// What is fetched only when it is met: the list of units in general use, the functions of former templates. What was refused for
// the want of it is done once more when it has come.

import { signal } from '@preact/signals';
import { isWanting, loadWanted } from '../../wanted.ts';

/** Raised when something has come: what shows a refusal asks again. */
export const wantedCame = signal(0);

let fetching: Promise<boolean> | undefined;

/** Fetches what something was refused for the want of; whether it has come by that. */
export function fetchWanted(): Promise<boolean> {
  if (!isWanting()) return Promise.resolve(false);
  fetching ??= loadWanted()
    .then(
      () => {
        wantedCame.value += 1;
        return true;
      },
      // Without a way to it a word is nothing here, as before; the next one tries again.
      () => false,
    )
    .finally(() => {
      fetching = undefined;
    });
  return fetching;
}

/** A word half typed may look like such a unit or function: while a person types, they are fetched when they rest. */
const REST = 500;

let resting: ReturnType<typeof setTimeout> | undefined;

export function fetchAtRest(): void {
  clearTimeout(resting);
  if (isWanting()) resting = setTimeout(() => void fetchWanted(), REST);
}

/**
 * Does something and hands on what came of it, at once where it can: where it was refused, perhaps for the want of something,
 * fetches that and does it once more, and again where that lets it ask for something else.
 */
export function withFetched<T>(attempt: () => T, isRefused: (outcome: T) => boolean, then: (outcome: T) => void): void {
  const outcome = attempt();
  if (!isRefused(outcome) || !isWanting()) then(outcome);
  else void fetchWanted().then((came) => (came ? withFetched(attempt, isRefused, then) : then(outcome)));
}
