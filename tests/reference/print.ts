// Prints the reference checks, a line a fact: kind, fact, what it rests on, points, the worst difference beside its tolerance, verdict;
// then facts, points and sources of each kind, and every date of the printed calendars. `npm run checks` prints that, `npm run checks -- --points` every point too, `npm run
// checks -- --readme` what the README quotes. Ends with exit code 1 if any fails.
import { calendarLines } from './calendar-lines.ts';
import { restsOn } from './check.ts';
import { accuracyExcerpt } from './excerpt.ts';
import { byKind, figure, type Judged, judgedFacts } from './summary.ts';

const HEADERS = ['Kind', 'Fact', 'Rests on', 'Points', 'Worst', 'Allowed', 'Verdict'] as const;
/** The columns of figures, set to the right. */
const FIRST_FIGURE = 3;
const LAST_FIGURE = 5;
/** Long texts run on below, so that the table fits a wide terminal. */
const WIDEST = 60;

function verdictOf({ points, passed }: Judged): string {
  if (!passed) return 'FAILS';
  const off = points.filter(({ verdict }) => verdict === 'known to be off').length;
  return off === 0 ? 'agrees' : `${off} known to be off`;
}

function withUnit(value: number, unit: string): string {
  return unit === '' ? figure(value) : `${figure(value)} ${unit}`;
}

function lineOf(one: Judged): readonly string[] {
  const { fact, points, worst } = one;
  return [
    fact.kind,
    fact.fact,
    restsOn(fact),
    String(points.length),
    withUnit(worst.difference, fact.unit),
    figure(worst.tolerance),
    verdictOf(one),
  ];
}

function pointLines({ fact, points }: Judged): readonly (readonly string[])[] {
  return points.map(({ what, given, computed, difference, tolerance, verdict, off }) => [
    '',
    `  ${what}`,
    `  ${withUnit(given, fact.unit)}, here ${figure(computed)}${off === undefined ? '' : `: ${off.why}`}`,
    '',
    figure(difference),
    figure(tolerance),
    verdict,
  ]);
}

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

function laidOut(rows: readonly (readonly string[])[]): readonly string[] {
  const widths = HEADERS.map((_, column) =>
    Math.max(...rows.flatMap((row) => wrapped(row[column] ?? '').map((part) => part.length))),
  );
  return rows.flatMap((row) => {
    const parts = row.map(wrapped);
    const height = Math.max(...parts.map((part) => part.length));
    return Array.from({ length: height }, (_, at) =>
      parts
        .map((part, column) => {
          const cell = part[at] ?? '';
          const width = widths[column] ?? 0;
          return column >= FIRST_FIGURE && column <= LAST_FIGURE ? cell.padStart(width) : cell.padEnd(width);
        })
        .join('  ')
        .trimEnd(),
    );
  });
}

function printed(all: readonly Judged[], withPoints: boolean): string {
  const rows = all.flatMap((one) => [lineOf(one), ...(withPoints ? pointLines(one) : [])]);
  const totals = byKind(all).map(
    ({ kind, facts, points, sources, knownOff, failed }) =>
      `${kind.padEnd(16)}${String(facts).padStart(6)} facts${String(points).padStart(7)} points${String(sources).padStart(5)} sources` +
      `${knownOff > 0 ? `, ${knownOff} points known to be off` : ''}${failed > 0 ? `, ${failed} FAIL` : ''}`,
  );
  return [...laidOut([HEADERS, ...rows]), '', ...totals, '', ...calendarLines()].join('\n');
}

// A reader such as `head` may close the pipe before the table ends; that is no fault of the checks.
process.stdout.on('error', () => undefined);
if (process.argv.includes('--readme')) process.stdout.write(`${accuracyExcerpt()}\n`);
else {
  const all = judgedFacts();
  process.stdout.write(`${printed(all, process.argv.includes('--points'))}\n`);
  process.exitCode = all.every(({ passed }) => passed) ? 0 : 1;
}
