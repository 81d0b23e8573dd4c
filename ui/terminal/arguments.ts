// Splits a command's words into its verb's arguments and options. Only words of small letters after -- are options, so that
// formulas and values may begin with a minus; after a bare -- nothing is an option any more.

import { nearestName } from '../../engine/index.ts';
import { refuse } from './world.ts';

/** An option by name: with a value to follow, or a mere yes. */
export type Options = Readonly<Record<string, 'value' | 'flag'>>;

export interface Given {
  readonly words: readonly string[];
  readonly values: ReadonlyMap<string, string>;
  readonly flags: ReadonlySet<string>;
}

export function readArguments(verb: string, given: readonly string[], options: Options): Given {
  const words: string[] = [];
  const values = new Map<string, string>();
  const flags = new Set<string>();
  for (let at = 0; at < given.length; at++) {
    const word = given[at] ?? '';
    if (word === '--') {
      words.push(...given.slice(at + 1));
      break;
    }
    const match = /^--([a-z][a-z-]*)(?:=(.*))?$/s.exec(word);
    if (match === null) {
      words.push(word);
      continue;
    }
    const [, name = '', attached] = match;
    const kind = Object.hasOwn(options, name) ? options[name] : undefined;
    if (kind === undefined) return refuseOption(verb, name, options);
    if (kind === 'flag') {
      if (attached !== undefined) refuse(`--${name} takes no value: leave out “=${attached}”.`);
      flags.add(name);
      continue;
    }
    const value = attached ?? given[++at];
    if (value === undefined || value === '') return refuse(`--${name} needs a value after it.`);
    values.set(name, value);
  }
  return { words, values, flags };
}

function refuseOption(verb: string, name: string, options: Options): never {
  const near = nearestName(name, Object.keys(options));
  const known = Object.keys(options).map((option) => `--${option}`);
  const takes = known.length === 0 ? `${verb} takes no options` : `${verb} takes ${known.join(', ')}`;
  return refuse(`There is no option --${name}: ${near === undefined ? takes : `did you mean --${near}?`}`);
}
