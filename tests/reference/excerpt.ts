// The few lines of the table of checks that the README quotes, and its totals. A test keeps the README the same as this.

import { allChecks } from './all-checks.ts';
import type { Check } from './check.ts';

const QUOTED: readonly string[] = [
  'day length on 15 September 2008 at 43.30 N, 91.79 W',
  'day length on 2007-03-05 at 37.77 N, 122.42 W',
  'date with a 80 % chance of a later 32 F, from the 10, 50 and 90 % dates',
  'days per probit, rice, 10 % moisture, 5 C',
  'humidity over seed with 29 % oil at 5 % moisture of dry weight, 25 C',
  'Purnong Landing, general form, mass at 100 plants/m2',
  'Mead variety 1, reciprocal form, residual standard deviation',
  'medium onion 2.5 in across',
  'plants to the acre at 4 x 7 in',
  'example 28: dry bean, coefficient on day 95',
  '1000 kg of sweet onions cured, then six months in warm store',
];

function quoted(what: string): Check {
  const check = allChecks.find((one) => one.what === what);
  if (check === undefined) throw new Error(`No check of ${what}: quote another.`);
  return check;
}

/** As the README has it: a sentence of totals and a table. */
export function accuracyExcerpt(): string {
  const sources = new Set(allChecks.map(({ source }) => source)).size;
  const by = (standing: Check['standing']): number => allChecks.filter((check) => check.standing === standing).length;
  const rows = QUOTED.map((what) => {
    const { source, unit, published, computed } = quoted(what);
    const found = Number(computed().toPrecision(6));
    return `| ${what} | ${published} ${unit} | ${found} ${unit} | ${source} |`.replaceAll('  ', ' ');
  });
  return [
    `\`npm run checks\` prints ${allChecks.length} checks from ${sources} sources, all within their tolerance: ${by('published')} published figures, ${by('dataset')} from open`,
    `data sets, ${by('library')} against independent libraries, ${by('common practice')} of common practice. A few of them:`,
    '',
    '| what | published | Dibble | source |',
    '| --- | --- | --- | --- |',
    ...rows,
  ].join('\n');
}
