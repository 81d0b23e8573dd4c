// What the checks found in the workbook on screen, gravest first, kept current as it changes: once
// changes have come to rest, so that no edit waits for the checks.

import { computed } from '@preact/signals';
import { type Finding, type FindingLevel, Findings, type Workbook } from '../../../engine/index.ts';
import { isOpen, workbookAtRest } from './workbook.ts';

export const LEVELS: Readonly<Record<FindingLevel, string>> = { error: 'Error', warning: 'Warning', note: 'Note' };

let keeper: { readonly of: Workbook; readonly findings: Findings } | undefined;

export const findings = computed<readonly Finding[]>(() => {
  if (!isOpen.value) return [];
  const book = workbookAtRest();
  if (keeper?.of !== book) keeper = { of: book, findings: new Findings(book) };
  return keeper.findings.all();
});

const NOTHING: readonly Finding[] = [];

/** The same list by sheet, and by row within a sheet ('' for what concerns no one row). */
const placed = computed(() => {
  const sheets = new Map<string, Finding[]>();
  const rows = new Map<string, Finding[]>();
  for (const found of findings.value) {
    putTo(sheets, found.sheet, found);
    putTo(rows, `${found.sheet} ${found.rowId}`, found);
  }
  return { sheets, rows };
});

function putTo(lists: Map<string, Finding[]>, key: string, found: Finding): void {
  const list = lists.get(key);
  if (list === undefined) lists.set(key, [found]);
  else list.push(found);
}

/** What was found on a sheet. */
export function findingsOf(sheet: string): readonly Finding[] {
  return placed.value.sheets.get(sheet) ?? NOTHING;
}

/** What was found in a row. */
export function findingsIn(sheet: string, row: string): readonly Finding[] {
  return placed.value.rows.get(`${sheet} ${row}`) ?? NOTHING;
}

/** What was found in a cell. */
export function findingsAt(sheet: string, row: string, column: string): readonly Finding[] {
  return findingsIn(sheet, row).filter((found) => found.column === column);
}

/** What was found in a cell, and of its whole column. */
export function findingsFor(sheet: string, row: string, column: string): readonly Finding[] {
  const ofColumns = findingsIn(sheet, '').filter((found) => found.column === column);
  return ofColumns.length === 0 ? findingsAt(sheet, row, column) : [...findingsAt(sheet, row, column), ...ofColumns];
}

/** 'Plantings / Amber early / Stations'. */
export function placeWords({ sheetName, rowName, columnName }: Finding): string {
  return [sheetName, rowName, columnName].filter((part) => part !== '').join(' / ');
}
