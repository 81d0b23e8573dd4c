// How the lists of what is kept put sizes and reasons.

import { sayMessage } from '../../../../engine/index.ts';
import type { VersionRecord } from '../../keeping/records.ts';

/** '420 KB', '5.4 GB'. */
export function size(letters: number): string {
  if (letters < 1_000_000) return `${Math.ceil(letters / 1_000)} KB`;
  return letters < 1_000_000_000 ? `${(letters / 1e6).toFixed(1)} MB` : `${(letters / 1e9).toFixed(1)} GB`;
}

const REASONS: Readonly<Record<VersionRecord['kind'], string>> = {
  opened: 'When it was opened',
  day: 'Before the first change of the day',
  import: 'Before an import',
  upgrade: 'Before the sheets were brought up to date',
  restore: 'Before an earlier state was brought back',
  branch: 'Before a branch was taken over',
  other: 'Kept by hand',
  named: 'Kept by hand',
  'set aside': 'Set aside, as it was found',
};

/** A version's name, or why it was kept. */
export function reason({ kind, name }: VersionRecord): string {
  return name ?? REASONS[kind];
}

/** '12 changes since the one before: Length: 61; Add Barn 3 to Beds; and others'. */
export function changesIn({ changes, said }: VersionRecord): string {
  if (changes === 0) return '';
  const count = changes === 1 ? 'One change' : `${changes} changes`;
  const rest = said.length < changes ? '; and others' : '';
  return `${count} since the one before: ${said.map(sayMessage).join('; ')}${rest}`;
}
