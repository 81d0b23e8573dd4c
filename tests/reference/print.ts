// Prints every published check as a table: source, what, published, computed, difference, tolerance, verdict; then totals.
// Ends with exit code 1 if any fails. Run by `npm run checks`.
import { allChecks, passes } from './all-checks.ts';
import { calendarLines } from './calendars.checks.ts';

const HEADERS = ['Source', 'What', 'Published', 'Computed', 'Difference', 'Tolerance', 'Verdict'] as const;
/** The columns of figures, set to the right. */
const FIRST_FIGURE = 2;
const LAST_FIGURE = 5;

function figure(value: number): string {
  if (value === 0) return '0';
  const size = Math.abs(value);
  if (size >= 1e-3 && size < 1e7) return String(Number(value.toPrecision(7)));
  return value.toExponential(3);
}

function withUnit(value: number, unit: string): string {
  return unit === '' ? figure(value) : `${figure(value)} ${unit}`;
}

const results = allChecks.map((check) => {
  const computed = check.computed();
  return { check, computed, passed: passes(check, computed) };
});

const lines = results.map(({ check, computed, passed }) => [
  check.source,
  check.what,
  withUnit(check.published, check.unit),
  figure(computed),
  figure(computed - check.published),
  figure(check.tolerance),
  passed ? 'agrees' : 'FAILS',
]);

/** Long sources and descriptions run on below, so that the table fits a wide terminal. */
const WIDEST = 56;

function wrapped(text: string): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line !== '' && line.length + 1 + word.length > WIDEST) {
      lines.push(line);
      line = word;
    } else {
      line = line === '' ? word : `${line} ${word}`;
    }
  }
  return [...lines, line];
}

const widths = HEADERS.map((header, column) =>
  Math.max(header.length, ...lines.flatMap((line) => wrapped(line[column] ?? '').map((part) => part.length))),
);

function laidOut(cells: readonly string[]): readonly string[] {
  const parts = cells.map(wrapped);
  const height = Math.max(...parts.map((part) => part.length));
  return Array.from({ length: height }, (_, row) =>
    parts
      .map((part, column) => {
        const cell = part[row] ?? '';
        const width = widths[column] ?? 0;
        return column >= FIRST_FIGURE && column <= LAST_FIGURE ? cell.padStart(width) : cell.padEnd(width);
      })
      .join('  ')
      .trimEnd(),
  );
}

const failed = results.filter((result) => !result.passed).length;
const sources = new Set(allChecks.map((check) => check.source)).size;
const standings = new Map<string, number>();
for (const check of allChecks) standings.set(check.standing, (standings.get(check.standing) ?? 0) + 1);

// A reader such as `head` may close the pipe before the table ends; that is no fault of the checks.
process.stdout.on('error', () => undefined);
process.stdout.write(
  `${[
    ...laidOut(HEADERS),
    widths.map((width) => '-'.repeat(width)).join('  '),
    ...lines.flatMap(laidOut),
    '',
    'Printed calendars beside the dates told from monthly normals:',
    ...calendarLines(),
    '',
    `${results.length} checks from ${sources} sources: ${results.length - failed} agree, ${failed} fail.`,
    `By standing: ${[...standings].map(([standing, count]) => `${count} ${standing}`).join(', ')}.`,
  ].join('\n')}\n`,
);
process.exitCode = failed > 0 ? 1 : 0;
