// The workbook file: one JSON document that holds a whole workbook as declared, with its format and version. Writing what
// was read gives the same bytes again. Reading never throws: it gives the declaration or one sentence that says where the
// file is not as it should be. Fields this version doesn't know are refused, never dropped.

import type { RowEntries, WorkbookDeclaration } from '../workbook/declaration.ts';
import { jsonFault } from './json-fault.ts';
import { layout } from './layout.ts';
import { workbookShape } from './schema.ts';
import { isFields, Misfit } from './shape.ts';

export const FORMAT = 'dibble-workbook';
export const VERSION = 1;

export type WorkbookFileRead =
  | { readonly ok: true; readonly declaration: WorkbookDeclaration }
  | { readonly ok: false; readonly why: string };

/** The file's text, ending with a line break: fields in a fixed order, rows in the order of sheets, cells of columns. */
export function writeWorkbookFile(declaration: WorkbookDeclaration): string {
  const { rows, ...rest } = workbookShape(declaration, []);
  return `${layout({ format: FORMAT, version: VERSION, ...rest, rows: inOrder(rows, declaration) })}\n`;
}

/** The same workbook on one line, in the order it comes in: quick to write for a copy that only programs read. */
export function packWorkbook(declaration: WorkbookDeclaration): string {
  return JSON.stringify({ format: FORMAT, version: VERSION, ...declaration });
}

function inOrder(
  rows: WorkbookDeclaration['rows'],
  { sheets }: WorkbookDeclaration,
): Readonly<Record<string, readonly RowEntries[]>> {
  const tables = [...new Set([...sheets.map((sheet) => sheet.name), ...Object.keys(rows)])];
  return Object.fromEntries(
    tables.flatMap((table): [string, readonly RowEntries[]][] => {
      if (!Object.hasOwn(rows, table)) return [];
      const columns = sheets.find((sheet) => sheet.name === table)?.columns.map((column) => column.name) ?? [];
      return [[table, (rows[table] ?? []).map((row) => cellsInOrder(row, columns))]];
    }),
  );
}

/** Columns that a row source makes stand in front: they name the row. */
function cellsInOrder(row: RowEntries, columns: readonly string[]): RowEntries {
  const rank = (name: string): number => columns.indexOf(name);
  return Object.fromEntries(Object.entries(row).sort(([a], [b]) => rank(a) - rank(b)));
}

/** The workbook that a file's text declares, or why it can't be read and what to do. */
export function readWorkbookFile(text: string): WorkbookFileRead {
  const document = readDocument(text.replace(/^\uFEFF/, ''));
  if (!document.ok) return document;
  if (!isFields(document.value)) return notOne();
  const { format, version, ...rest } = document.value;
  if (format !== FORMAT) return notOne();
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    return { ok: false, why: `Its “version” should be ${VERSION}: mend it, or take a whole copy of the file.` };
  }
  if (version > VERSION) {
    return {
      ok: false,
      why: `It was saved by a newer Dibble (file version ${version}, and this one reads version ${VERSION}): update Dibble, then open it.`,
    };
  }
  try {
    return { ok: true, declaration: workbookShape(rest, []) };
  } catch (thrown) {
    if (thrown instanceof Misfit) return { ok: false, why: thrown.message };
    throw thrown;
  }
}

function notOne(): WorkbookFileRead {
  return {
    ok: false,
    why: `This is not a Dibble workbook: a workbook file says "format": "${FORMAT}" at its start. Choose another file.`,
  };
}

function readDocument(
  text: string,
): { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly why: string } {
  if (text.trim() === '') return { ok: false, why: 'The file is empty: take another copy of it.' };
  try {
    return { ok: true, value: JSON.parse(text) };
  } catch {
    const fault = jsonFault(text);
    if (fault === undefined || !text.trimStart().startsWith('{')) {
      return { ok: false, why: 'This is not a Dibble workbook: a workbook file begins with {. Choose another file.' };
    }
    if (fault.cutShort) {
      return {
        ok: false,
        why: `The file ends in the middle, at line ${fault.line}: it was cut short. Take a whole copy of it.`,
      };
    }
    return {
      ok: false,
      why: `The file is damaged at line ${fault.line}, where “${fault.found}” stands: mend that line, or take a whole copy of the file.`,
    };
  }
}
