// Writes plain data as JSON that people can read and compare line by line: what fits stands on one line, what doesn't has
// a line for each part. The same data always gives the same text.

const WIDTH = 120;

/** JSON text of plain data; the last line has no line break. */
export function layout(value: unknown): string {
  return laidOut(value, '');
}

function laidOut(value: unknown, indent: string): string {
  const line = onOneLine(value);
  if (indent.length + line.length <= WIDTH) return line;
  const deeper = `${indent}  `;
  if (Array.isArray(value)) {
    if (value.length === 0) return '[]';
    return `[\n${value.map((one) => deeper + laidOut(one, deeper)).join(',\n')}\n${indent}]`;
  }
  if (typeof value !== 'object' || value === null) return line;
  const parts = Object.entries(value).map(([key, one]) => `${deeper}${JSON.stringify(key)}: ${laidOut(one, deeper)}`);
  return `{\n${parts.join(',\n')}\n${indent}}`;
}

function onOneLine(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(onOneLine).join(', ')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const parts = Object.entries(value).map(([key, one]) => `${JSON.stringify(key)}: ${onOneLine(one)}`);
  return parts.length === 0 ? '{}' : `{ ${parts.join(', ')} }`;
}
