// What a file is by its first bytes, whatever it is called, so that one of another kind is named as what it is. The faces ask
// before they read; knows magic numbers and nothing of tables.

export type FileKind =
  | { readonly kind: 'workbook' | 'table' | 'spreadsheet' }
  /** Something else: 'a PDF', and what to do instead. */
  | { readonly kind: 'other'; readonly called: string; readonly advice: string };

const SAVE_AS = 'Open it in the program that made it, and save it as CSV or XLSX.';
const ANOTHER = 'Choose another file.';

/** First bytes, what such a file is called, and what to do. Lists of magic numbers: the formats' own specifications. */
const MAGIC: readonly (readonly [bytes: readonly number[], called: string, advice: string])[] = [
  [[0xd0, 0xcf, 0x11, 0xe0], 'a spreadsheet of the older kind (XLS) or another older office document', SAVE_AS],
  [[0x25, 0x50, 0x44, 0x46], 'a PDF', 'A table inside a PDF can’t be taken over; ask for it as CSV or XLSX.'],
  [[0x89, 0x50, 0x4e, 0x47], 'a picture (PNG)', ANOTHER],
  [[0xff, 0xd8, 0xff], 'a picture (JPEG)', ANOTHER],
  [[0x47, 0x49, 0x46, 0x38], 'a picture (GIF)', ANOTHER],
  [[0x1f, 0x8b], 'a compressed file (gzip)', 'Unpack it first.'],
  [[0x37, 0x7a, 0xbc, 0xaf], 'a compressed file (7z)', 'Unpack it first.'],
  [[0x52, 0x61, 0x72, 0x21], 'a compressed file (RAR)', 'Unpack it first.'],
  [[0x53, 0x51, 0x4c, 0x69, 0x74, 0x65, 0x20], 'a database (SQLite)', SAVE_AS],
  [[0x7b, 0x5c, 0x72, 0x74, 0x66], 'a text document (RTF)', SAVE_AS],
  [[0x7f, 0x45, 0x4c, 0x46], 'a program', ANOTHER],
  [[0x4d, 0x5a, 0x90], 'a program', ANOTHER],
];

const ZIP = [0x50, 0x4b, 0x03, 0x04];
const EMPTY_ZIP = [0x50, 0x4b, 0x05, 0x06];
/** How far into a zip the names of its parts are looked for. */
const NAMES_WITHIN = 65_536;

/** What the bytes are. A text is a table until reading it says otherwise; one that begins with { is a workbook. */
export function fileKind(bytes: Uint8Array): FileKind {
  if (beginsWith(bytes, ZIP)) return zipKind(bytes);
  if (beginsWith(bytes, EMPTY_ZIP)) return { kind: 'other', called: 'an empty compressed file (ZIP)', advice: ANOTHER };
  const known = MAGIC.find(([magic]) => beginsWith(bytes, magic));
  if (known !== undefined) return { kind: 'other', called: known[1], advice: known[2] };
  const start = new TextDecoder('windows-1252').decode(bytes.subarray(0, 600)).replace(/^\u00ef\u00bb\u00bf/, '');
  if (/^\s*\{/.test(start)) return { kind: 'workbook' };
  if (/^\s*<(?:!doctype html|html|table|head|body)\b/i.test(start))
    return { kind: 'other', called: 'a web page, though it may end in .xls', advice: SAVE_AS };
  if (/^\s*<\?xml\b/i.test(start)) return { kind: 'other', called: 'an XML document', advice: SAVE_AS };
  return { kind: 'table' };
}

function beginsWith(bytes: Uint8Array, magic: readonly number[]): boolean {
  return magic.every((byte, i) => bytes[i] === byte);
}

/** Office documents are zips; the names of their parts tell them apart. */
function zipKind(bytes: Uint8Array): FileKind {
  const start = namesIn(bytes.subarray(0, NAMES_WITHIN));
  const end = bytes.length > NAMES_WITHIN ? namesIn(bytes.subarray(-NAMES_WITHIN)) : '';
  const names = start + end;
  if (names.includes('xl/')) return { kind: 'spreadsheet' };
  if (names.includes('opendocument.spreadsheet'))
    return { kind: 'other', called: 'an OpenDocument spreadsheet (ODS)', advice: SAVE_AS };
  if (names.includes('word/') || names.includes('opendocument.text'))
    return { kind: 'other', called: 'a text document', advice: SAVE_AS };
  if (names.includes('ppt/')) return { kind: 'other', called: 'a presentation', advice: ANOTHER };
  if (names.includes('Index/')) return { kind: 'other', called: 'a spreadsheet of Apple Numbers', advice: SAVE_AS };
  return { kind: 'other', called: 'a compressed file (ZIP)', advice: 'Unpack it first.' };
}

function namesIn(bytes: Uint8Array): string {
  return new TextDecoder('windows-1252').decode(bytes);
}
