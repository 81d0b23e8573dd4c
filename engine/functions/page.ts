// The page of documentation on functions, made from the signatures and the list of what is left out. A test keeps
// FUNCTIONS.md, which stands beside this file, the same as what this makes.

import { signatureText } from '../language/wording.ts';
import { FUNCTIONS } from './index.ts';
import { LEFT_OUT } from './left-out.ts';

const OPENING = `# Functions that formulas may call

Names, order of arguments, operators and rounding of the general functions follow OpenFormula (OASIS ODF 1.3 part 4); a
number such as 6.16.61 is its section there. The trade's own functions name the publication behind their model. Arguments
are separated by \`;\` or \`,\`; those in [brackets] may be left out; \`…\` repeats. \`LET(name; value; ...; formula)\`
names parts of a long formula, each to be written behind it.

Where sheets here differ from cells, because columns have types and a blank is unknown:

- Arithmetic and comparisons with a blank are blank; \`ISBLANK\` asks. Totals skip blanks. \`&\` takes a blank as nothing.
- Units are checked before anything runs: \`[Length] + [Mass]\` is refused, \`SQRT\` of an area is a length, \`ROUND\` of a length
  takes a step: \`ROUND([Length]; 1 ft)\`.
- A date minus a date is a time; a date plus a plain number is refused: write \`7 days\`.
- Rounding and comparing forgive binary dust: a number within 1e-14 of its size from a whole one is that whole one. A
  comparison forgives it at the size of what is added and subtracted in it, not of what is left: \`1 - 0.9 - 0.1 = 0\` holds,
  and \`[Needed] - [On hand] > 0\` asks what \`[Needed] > [On hand]\` does. What is left over in a column of its own has its own
  size: \`ROUND\` it there.
- \`&\`, \`CONCAT\` and \`TEXTJOIN\` write a number in full and without thousands marks, a quantity with its unit:
  \`20271234 & ""\` is 20271234. \`TEXT\` gives it a form.
- The text functions give at most 32,767 letters; a formula has at most 8,192, a call 255 parts.
- Conditions compare typed values: \`">=" & [Week]\`, \`">=8 in"\`. Texts compare ignoring case.
- A sheet of criteria (\`DSUM\` and its kin) has columns named like those it looks at. Its rows are alternatives, all filled
  cells of a row must hold, and without rows nothing is found. A cell holds a value to equal or, as text, a condition such
  as \`>8 in\`, \`<>early\`, \`=\` (blank) or \`<>\` (filled in); quantities name their unit, dates their year.
- Nothing is volatile: \`TODAY()\` is an input of the workbook.
`;

const escaped = (text: string): string => text.replaceAll('|', '\\|');

/** The whole page as Markdown. */
export function functionsPage(): string {
  const definitions = [...FUNCTIONS.values()].map(({ signature }) => signature).filter(({ former }) => former !== true);
  const groups = [...new Set(definitions.map(({ group }) => group))];
  const sections = groups.map((group) => {
    const rows = definitions
      .filter((signature) => signature.group === group)
      .sort((a, b) => (a.name < b.name ? -1 : 1))
      .map(
        (signature) =>
          `| \`${escaped(signatureText(signature))}\` | ${escaped(signature.doc)} | ${escaped(signature.source)} |`,
      );
    return `## ${group[0]?.toUpperCase()}${group.slice(1)}\n\n| function | gives | source |\n| --- | --- | --- |\n${rows.join('\n')}\n`;
  });
  const reasons = [...new Set(LEFT_OUT.map(({ why, use }) => `${why}\u0000${use}`))].map((key) => {
    const [why = '', use = ''] = key.split('\u0000');
    const names = LEFT_OUT.filter((one) => one.why === why && one.use === use).map(({ name }) => name);
    return `| ${names.join(', ')} | ${escaped(why)}. | ${escaped(use)} |`;
  });
  const leftOut = `## Left out, why, and what to use\n\n| name | why | use |\n| --- | --- | --- |\n${reasons.join('\n')}\n`;
  return [OPENING, ...sections, leftOut].join('\n');
}
