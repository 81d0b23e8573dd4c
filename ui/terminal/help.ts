// What `help` and `--version` print.

import { version } from '../../package.json';
import { usageOf, VERBS } from './verbs.ts';

export function helpText(): string {
  const verbs = VERBS.map((verb) => `  ${usageOf(verb)}\n      ${verb.does}`).join('\n');
  return `Dibble: a season workbook for market gardens.

Run as: npm run --silent dibble -- VERB ...

${verbs}
  help
      prints this page; --version prints the version

Names of tables, columns and rows with blanks go in quotes. After a bare -- nothing is read as an option.
What changes a workbook writes FILE itself where --out names no other, whole or not at all, and waits while another
command does. Nothing else is written over without --force. - stands for standard input and output. Bad input gives
one line on standard error and exit status 2, and nothing is written.
`;
}

export function versionText(): string {
  return `${version}\n`;
}
