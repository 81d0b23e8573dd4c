// Where a person put the columns of a file by hand, remembered by sheet and header, so that next month's file from the same
// source needs no hand. Kept in the browser; where it can't be, nothing is remembered and nothing else is different.

import type { ByHand } from '../../../engine/index.ts';
import { remember, remembered } from '../store/single-words.ts';

const NAME = 'dibble: columns by hand';
/** Headers remembered of a sheet; the oldest go first. */
const MOST = 200;

export function rememberedColumns(sheet: string): ByHand {
  const kept = all()[sheet];
  return isByHand(kept) ? kept : {};
}

export function rememberColumns(sheet: string, byHand: ByHand): void {
  const entries = Object.entries({ ...rememberedColumns(sheet), ...byHand }).slice(-MOST);
  remember(NAME, JSON.stringify({ ...all(), [sheet]: Object.fromEntries(entries) }));
}

function all(): Readonly<Record<string, unknown>> {
  try {
    const kept: unknown = JSON.parse(remembered(NAME) ?? '{}');
    return typeof kept === 'object' && kept !== null && !Array.isArray(kept) ? { ...kept } : {};
  } catch {
    return {};
  }
}

function isByHand(kept: unknown): kept is ByHand {
  if (typeof kept !== 'object' || kept === null) return false;
  return Object.values(kept).every((column) => column === null || typeof column === 'string');
}
