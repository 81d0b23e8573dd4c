// Writes plain data as JSON that people can read and compare line by line: what fits stands on one line, what doesn't has
// a line for each part, but for the cells of a row, which fill lines. The same data always gives the same text.

const WIDTH = 120;

/** JSON text of plain data; the last line has no line break. */
export function layout(value: unknown): string {
  return laidOut(value, '');
}

function laidOut(value: unknown, indent: string): string {
  const line = onOneLine(value, WIDTH - indent.length);
  if (line !== undefined) return line;
  const deeper = `${indent}  `;
  if (Array.isArray(value)) {
    if (value.length === 0) return '[]';
    const filled = inFilledLines(value, deeper);
    if (filled !== undefined) return `[\n${filled}\n${indent}]`;
    return `[\n${value.map((one) => deeper + laidOut(one, deeper)).join(',\n')}\n${indent}]`;
  }
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const parts = Object.entries(value).map(([key, one]) => `${deeper}${JSON.stringify(key)}: ${laidOut(one, deeper)}`);
  return parts.length === 0 ? '{}' : `{\n${parts.join(',\n')}\n${indent}}`;
}

/** The cells of a row, as many on a line as fit; undefined for a list of rows, and where a cell takes more than a line. */
function inFilledLines(values: readonly unknown[], indent: string): string | undefined {
  if (values.every((value) => typeof value === 'object' && value !== null)) return undefined;
  const lines: string[] = [];
  let line = '';
  for (const value of values) {
    const part = onOneLine(value, WIDTH - indent.length);
    if (part === undefined) return undefined;
    if (line !== '' && indent.length + line.length + 2 + part.length > WIDTH) {
      lines.push(line);
      line = part;
    } else line = line === '' ? part : `${line}, ${part}`;
  }
  lines.push(line);
  return lines.map((one) => indent + one).join(',\n');
}

/** The text where it takes no more letters than there is room for; as soon as it does, undefined. */
function onOneLine(value: unknown, room: number): string | undefined {
  // Of each part one letter stands there at least, and two between two of them.
  if (Array.isArray(value) && value.length * 3 > room) return undefined;
  if (Array.isArray(value))
    return joined(
      '[',
      value.map((one: unknown) => ['', one] as const),
      ']',
      room,
    );
  if (typeof value === 'object' && value !== null) {
    const entries = Object.entries(value);
    if (entries.length === 0) return room < 2 ? undefined : '{}';
    return joined(
      '{ ',
      entries.map(([key, one]) => [`${JSON.stringify(key)}: `, one] as const),
      ' }',
      room,
    );
  }
  if (typeof value === 'string' && value.length > room) return undefined;
  const text = JSON.stringify(value);
  return text.length > room ? undefined : text;
}

function joined(
  open: string,
  parts: readonly (readonly [before: string, value: unknown])[],
  close: string,
  room: number,
): string | undefined {
  let text = open;
  for (const [before, value] of parts) {
    text += text === open ? before : `, ${before}`;
    const part = onOneLine(value, room - text.length - close.length);
    if (part === undefined) return undefined;
    text += part;
  }
  text += close;
  return text.length > room ? undefined : text;
}
