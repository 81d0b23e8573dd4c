// Ids of branches that are to be made: in the order in which they are made, for a workbook's file keeps and lists them by id.

import type { Workbook } from '../engine/index.ts';

/** Comes after those of all branches that there are, also of those with an id by chance alone, which begins with r. */
const COUNTED = /^s(\d{6})/;

export function branchId(workbook: Workbook): string {
  const counts = [...workbook.document.branches.keys()].map((id) => Number(COUNTED.exec(id)?.[1] ?? 0));
  // What chance gives besides keeps two apart that are made beside each other.
  return `s${String(Math.max(0, ...counts) + 1).padStart(6, '0')}${workbook.newId()}`;
}
