// What the README says of the checks: how many facts of which kind, and a table of published ones with the worst error found, those
// where the models are known to be off among them. A test keeps the README the same as this; `npm run checks -- --readme` prints it.

import { byKind, type Judged, judgedFacts } from './summary.ts';

/** Published facts that the README shows, by their names. */
const SHOWN: readonly string[] = [
  'day length at Decorah, Iowa',
  'sunrise on 1 January 2002 by latitude, local mean time',
  'first autumn freeze at Raleigh by its chances',
  'last spring freeze at Madison by its chances',
  'days to emergence of onion by thermal time',
  'plants to the acre at a distance',
  'stand of a drilled bed',
  'mean crop coefficient of dry beans over ten days',
  'water drawn by a tomato drying out',
  'nutrients that 60 t of onions remove',
  'mass of a medium tomato from the shape of a large one',
  'mass of heads of cabbage from the shape of a medium one',
  'values of Student’s t with a share above them',
];

function shown(name: string, all: readonly Judged[]): Judged {
  const one = all.find(({ fact }) => fact.fact === name);
  if (one?.fact.kind !== 'published') throw new Error(`${name} is no published fact: show another.`);
  return one;
}

/** How far off at most, and why where the model is known to be: the README hides nothing that the table says. */
function finding({ fact, points, worst }: Judged): string {
  const [first, ...others] = points.filter(({ verdict }) => verdict === 'known to be off');
  const size = (difference: number): string => `${Number(Math.abs(difference).toPrecision(2))} ${fact.unit}`.trim();
  if (first === undefined) return worst.difference === 0 ? 'exact' : `within ${size(worst.difference)}`;
  const most = others.reduce((a, b) => (Math.abs(b.difference) > Math.abs(a.difference) ? b : a), first);
  return `off by up to ${size(most.difference)}: ${most.off?.why ?? ''}`;
}

function row(one: Judged): string {
  const { fact, points } = one;
  if (fact.kind !== 'published') throw new Error(`${fact.fact} is not published`);
  const { author, year, title } = fact.source;
  const dated = typeof year === 'number' ? String(year) : 'undated';
  const source = `${author} ${dated}, ${title}, ${fact.at}`;
  return `| ${fact.fact} | ${points.length} | ${finding(one)} | ${source} |`.replaceAll(/ +/g, ' ');
}

/** As the README has it: two sentences of totals and a table. */
export function accuracyExcerpt(): string {
  const all = judgedFacts();
  const kinds = byKind(all).map(({ kind, facts, points }) => `${facts} ${kind} (${points} figures)`);
  const published = all.filter(({ fact }) => fact.kind === 'published');
  const sources = byKind(all).find(({ kind }) => kind === 'published')?.sources ?? 0;
  return [
    `\`npm run checks\` prints ${all.length} facts, each tried at one figure or many: ${kinds.join(', ')}.`,
    `A fact counts as published only where the page is named and the model did not take its constants from it: ${published.length} facts from`,
    `${sources} publications. Some of them, with the worst error over their figures:`,
    '',
    '| fact | figures | Dibble | published in |',
    '| --- | --- | --- | --- |',
    ...SHOWN.map((name) => row(shown(name, all))),
  ].join('\n');
}
