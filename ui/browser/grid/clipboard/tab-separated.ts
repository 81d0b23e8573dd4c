// Cells as tab-separated text, as spreadsheets put them on the clipboard: fields that hold tabs, line ends or quotes are
// quoted, quotes inside doubled. Pure; the range layer calls it for copy and paste.

/** Rows of fields to text; no line end after the last row. */
export function toTabSeparated(rows: readonly (readonly string[])[]): string {
  return rows.map((row) => row.map(field).join('\t')).join('\r\n');
}

function field(text: string): string {
  return /[\t\r\n"]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** Text to rows of fields. A line end after the last row adds no row; an unclosed quote runs to the end of the text. */
export function fromTabSeparated(text: string): readonly (readonly string[])[] {
  const rows: string[][] = [];
  let row: string[] = [];
  let at = 0;
  while (at < text.length) {
    const { value, next } = readField(text, at);
    row.push(value);
    const mark = text[next];
    if (mark === '\t') {
      at = next + 1;
      if (at === text.length) row.push('');
      continue;
    }
    rows.push(row);
    row = [];
    at = mark === '\r' && text[next + 1] === '\n' ? next + 2 : next + 1;
  }
  if (row.length > 0) rows.push(row);
  return rows;
}

/** The field that begins at `from`, and the place of the tab or line end after it. */
function readField(text: string, from: number): { value: string; next: number } {
  if (text[from] !== '"') {
    let next = from;
    while (next < text.length && !/[\t\r\n]/.test(text.charAt(next))) next += 1;
    return { value: text.slice(from, next), next };
  }
  let value = '';
  let next = from + 1;
  while (next < text.length) {
    if (text[next] !== '"') value += text[next];
    else if (text[next + 1] === '"') {
      value += '"';
      next += 1;
    } else {
      next += 1;
      break;
    }
    next += 1;
  }
  // What a sloppy program left between the closing quote and the separator belongs to the field.
  while (next < text.length && !/[\t\r\n]/.test(text.charAt(next))) {
    value += text[next];
    next += 1;
  }
  return { value, next };
}
