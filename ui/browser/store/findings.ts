// What the checks found in the workbook on screen, gravest first, kept current as it changes.

import { computed } from '@preact/signals';
import { type Finding, type FindingLevel, Findings, type Workbook } from '../../../engine/index.ts';
import { isOpen, workbook } from './workbook.ts';

export const LEVELS: Readonly<Record<FindingLevel, string>> = { error: 'Error', warning: 'Warning', note: 'Note' };

let keeper: { readonly of: Workbook; readonly findings: Findings } | undefined;

export const findings = computed<readonly Finding[]>(() => {
  if (!isOpen.value) return [];
  const book = workbook();
  if (keeper?.of !== book) keeper = { of: book, findings: new Findings(book) };
  return keeper.findings.all();
});

/** What was found in a row. */
export function findingsIn(sheet: string, row: string): readonly Finding[] {
  return findings.value.filter((found) => found.sheet === sheet && found.rowId === row);
}

/** What was found in a cell, and of its whole column. */
export function findingsAt(sheet: string, row: string, column: string): readonly Finding[] {
  return findings.value.filter(
    (found) => found.sheet === sheet && found.column === column && (found.row === undefined || found.rowId === row),
  );
}

/** 'Plantings / Amber early / Stations'. */
export function placeWords({ sheetName, rowName, columnName }: Finding): string {
  return [sheetName, rowName, columnName].filter((part) => part !== '').join(' / ');
}
