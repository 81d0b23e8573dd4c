// Which versions go as they grow old. Those with a name stay, and what was set aside stays; of the others all of the last two
// days, then the last of each day for a month, of each week for a year, of each month beyond that. Pure.

import type { VersionRecord } from './records.ts';

const DAY = 86_400_000;
const ALL = 2 * DAY;
const DAILY = 30 * DAY;
const WEEKLY = 365 * DAY;

/** The versions of one workbook that are to go, at a moment. A clock that was set back makes nothing older than it is. */
export function thinned(versions: readonly VersionRecord[], now: number): readonly VersionRecord[] {
  const spans = new Set<string>();
  const going: VersionRecord[] = [];
  // The latest of each span stays.
  for (const version of [...versions].sort((a, b) => b.at - a.at)) {
    if (staysAlways(version)) continue;
    const span = spanOf(version.at, now - version.at);
    if (span === undefined) continue;
    if (spans.has(span)) going.push(version);
    spans.add(span);
  }
  return going;
}

/** Those that go where room is wanted at once: all but the latest few that were kept by themselves. */
export function spared(versions: readonly VersionRecord[], few: number): readonly VersionRecord[] {
  return [...versions]
    .filter((version) => !staysAlways(version))
    .sort((a, b) => b.at - a.at)
    .slice(few);
}

function staysAlways({ kind }: VersionRecord): boolean {
  return kind === 'named' || kind === 'set aside';
}

/** The day, week or month of which one version is enough; undefined where each stays. */
function spanOf(at: number, age: number): string | undefined {
  if (age <= ALL) return undefined;
  if (age <= DAILY) return `day ${Math.floor(at / DAY)}`;
  if (age <= WEEKLY) return `week ${Math.floor(at / (7 * DAY))}`;
  return new Date(at).toISOString().slice(0, 7);
}
