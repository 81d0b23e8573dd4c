// What needs attention, findings of one reason together: ten lettuces with one reason are one line. Pure; the season at a glance
// calls it.

import type { Finding } from '../../../engine/index.ts';

export interface FindingGroup {
  /** The first of them, which the line leads to. */
  readonly first: Finding;
  readonly count: number;
  /** Names of the rows, in the order of the sheet. */
  readonly rows: readonly string[];
  /** What it says: of several that differ in their figures, what the first says. */
  readonly says: string;
  readonly alike: boolean;
}

/** Groups in the order of their first findings: gravest first. */
export function groupFindings(findings: readonly Finding[]): readonly FindingGroup[] {
  const groups = new Map<string, Finding[]>();
  for (const finding of findings) {
    const reason = finding.check === '' ? withoutFigures(finding.says) : finding.check;
    const key = [finding.level, finding.sheet, finding.column, reason].join('\n');
    const there = groups.get(key);
    if (there === undefined) groups.set(key, [finding]);
    else there.push(finding);
  }
  return [...groups.values()].flatMap((within): readonly FindingGroup[] => {
    const [first] = within;
    if (first === undefined) return [];
    return [
      {
        first,
        count: within.length,
        rows: within.map(({ rowName }) => rowName).filter((name) => name !== ''),
        says: first.says,
        alike: within.every(({ says }) => says === first.says),
      },
    ];
  });
}

function withoutFigures(says: string): string {
  return says.replace(/\d[\d.,]*/g, '0');
}

/** 'Lettuce 1, Lettuce 2 and 8 more'. */
export function rowsInWords({ rows }: FindingGroup, most = 2): string {
  const named = rows.slice(0, rows.length === most + 1 ? most + 1 : most);
  const more = rows.length - named.length;
  return more > 0 ? `${named.join(', ')} and ${more} more` : named.join(', ');
}
