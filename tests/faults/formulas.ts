// Formulas of every kind, good, damaged and nonsense, typed at the small farm: each has a value, an error with its sentence, or a
// sentence that says what is wrong with it. None throws, none goes on for ever, none gives a figure that is none.

import { evaluate, SIGNATURES } from '../../engine/index.ts';
import { anyCall, anyOperation } from '../differential/any-call.ts';
import { type Random, randomFrom, seedOfRun } from '../differential/random.ts';
import { openFarm } from '../document/farm.ts';
import { HOSTILE_NAMES } from './damage.ts';
import { isSentence, Tally, type Trial } from './trial.ts';

const NAMES = [...SIGNATURES.keys()];
const PIECES: readonly string[] = [
  '(',
  ')',
  '[',
  ']',
  ';',
  ',',
  '+',
  '-',
  '*',
  '/',
  '^',
  '&',
  '=',
  '<>',
  '<=',
  '>',
  '%',
  '"',
  "'",
  '.',
  '#',
  '!',
  '@',
  '{',
  '}',
  '\\',
  '\n',
  ' ',
  '1',
  '0',
  '1e308',
  '1e999',
  '-0',
  '.5',
  '1.',
  '1,5',
  '"a"',
  '"*?~"',
  'TRUE',
  'FALSE',
  '2 ft',
  '3 lb',
  '5 degF',
  '12 1/h',
  'm^400',
  '[Length]',
  'Plantings[Length]',
  'Farm[Season]',
  "'Seed order'[Variety]",
  'Beds',
  '[#beds/length]',
  '😀',
  '\u202e',
  '\u0000',
  'DATE(2027; 1; 1)',
  ...HOSTILE_NAMES.slice(0, 6),
];

const soup = (random: Random): string =>
  Array.from({ length: random.whole(1, 14) }, () => random.pick(random.chance(0.2) ? NAMES : PIECES)).join(
    random.pick(['', ' ', '(']),
  );

function good(random: Random): string {
  const signature = SIGNATURES.get(random.pick(NAMES));
  const formula = signature === undefined || random.chance(0.3) ? anyOperation(random) : anyCall(signature, random);
  // The calls are written over a sheet called Wild; here its columns are those of plantings.
  return formula.replaceAll('Wild[', 'Plantings[');
}

function damaged(random: Random): string {
  const formula = good(random);
  const at = random.whole(0, formula.length);
  return formula.slice(0, at) + random.pick(PIECES) + formula.slice(at + random.whole(0, 4));
}

/** The same thing again and again, inside itself or beside itself. */
function repeated(random: Random): string {
  const times = random.pick([10, 100, 1000, 4000]);
  const [before, middle, behind] = random.pick([
    ['(', '1', ')'],
    ['-', '1', ''],
    ['1+', '1', ''],
    ['IF(TRUE; ', '1', ')'],
    ['SUM(1; ', '1', ')'],
    ['"a"&', '"b"', ''],
    ['', '1', '%'],
    ['2^', '2', ''],
    ['REPT("a"; 9)&', '""', ''],
    ['SUBSTITUTE(', '"a"', '; "a"; "aaaaaaaa")'],
    ['1 ft * ', '1 ft', ''],
    ['[', 'x', ']'],
  ]);
  return before.repeat(times) + middle + behind.repeat(times);
}

const KINDS: readonly ((random: Random) => string)[] = [soup, soup, good, good, damaged, damaged, damaged, repeated];

export const formulas: Trial = {
  name: 'formulas',
  about: 'formulas evaluated',
  full: 200_000,
  run: async (count, tell) => {
    const tally = new Tally(tell);
    const workbook = openFarm();
    const seed = seedOfRun();
    for (let i = 0; i < count; i++) {
      const random = randomFrom(seed + i);
      const kind = i % 40 === 0 ? repeated : random.pick(KINDS.slice(0, -1));
      const formula = kind(random);
      await tally.try(`formula ${seed + i}: ${formula.slice(0, 200)}`, () => {
        const answer = evaluate(workbook, formula);
        if (!answer.ok)
          return isSentence(answer.diagnostic.why) ? undefined : `refused without a sentence: ${answer.diagnostic.why}`;
        return typeof answer.value === 'number' && !Number.isFinite(answer.value) ? `gives ${answer.value}` : undefined;
      });
    }
    return tally.outcome();
  },
};
