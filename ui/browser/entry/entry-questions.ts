// What a person is asked about an entry before it is taken. Pure; the entry box and the formula line call it.

import type { TriedEntry } from '../../../engine/index.ts';

/** What is asked about an entry, or what else it could have meant; undefined where neither is. */
export function questionOf(tried: TriedEntry): string | undefined {
  if (!tried.ok) return undefined;
  const { text, far, other } = tried;
  if (far !== undefined) return `${text} is ${far}. Enter again if it is meant.`;
  return other && `Read as ${text}. If ${other.text} is meant, write ${other.write}.`;
}

/** What is asked of a date far from all others around it, which is taken once somebody takes it again; undefined for any other entry. */
export function farQuestion(tried: TriedEntry): string | undefined {
  return tried.ok && tried.far !== undefined ? questionOf(tried) : undefined;
}
