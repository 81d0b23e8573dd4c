// A file's bytes, whatever they are, on their way in: told apart by what they are and not by their name, and one of another kind
// is named as what it is. Faces ask here before anything else.

import type { SheetView } from '../queries/sheets.ts';
import { fileKind } from './file-kind.ts';
import type { FormatTools } from './format.ts';
import { FORMATS } from './list.ts';
import type { ReadingChoices, TableFailure, TableRead } from './table-file.ts';
import { decodeText } from './text-encoding.ts';

/** The table in a file, for a sheet. */
export function readTableFile(
  bytes: Uint8Array,
  view: SheetView,
  tools: FormatTools,
  choices: ReadingChoices = {},
): Promise<TableRead> {
  if (bytes.length === 0) return failed('The file is empty: it needs a header and a row or more.');
  const kind = fileKind(bytes);
  if (kind.kind === 'other') return failed(`This is ${kind.called}, and no table. ${kind.advice}`);
  const format = FORMATS.find((one) => one.kind === kind.kind);
  if (format?.readTable !== undefined) return format.readTable(bytes, view, tools, choices);
  return failed(
    'This is a workbook, or another file that begins with {, and no table: a workbook is opened, not imported.',
  );
}

function failed(why: string): Promise<TableFailure> {
  return Promise.resolve({ ok: false, why });
}

/** The text of a workbook file; what to do instead where the bytes are something else. */
export function workbookText(
  bytes: Uint8Array,
): { readonly ok: true; readonly text: string } | { readonly ok: false; readonly why: string } {
  if (bytes.length === 0) return { ok: false, why: 'The file is empty: take another copy of it.' };
  const kind = fileKind(bytes);
  if (kind.kind === 'spreadsheet') {
    return { ok: false, why: 'This is a spreadsheet (XLSX), and no workbook of Dibble: import its rows into a sheet.' };
  }
  if (kind.kind === 'other') return { ok: false, why: `This is ${kind.called}, and no workbook. Choose another file.` };
  const decoded = decodeText(bytes);
  if (!decoded.ok)
    return { ok: false, why: 'This isn’t a text file: choose another file, or take a whole copy of it.' };
  if (decoded.encoding !== 'windows-1252') return { ok: true, text: decoded.text };
  // A workbook is always written in UTF-8: bytes that are none are damage.
  const strict = decodeText(bytes, 'utf-8');
  return strict.ok
    ? { ok: true, text: strict.text }
    : { ok: false, why: strict.why.replace(/: choose.*$/, ': the file is damaged there. Take a whole copy of it.') };
}
