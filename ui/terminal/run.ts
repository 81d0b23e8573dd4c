// Runs one command: finds its verb, reads its words, and turns a refusal into one line and exit status 2.

import { nearestName } from '../../engine/index.ts';
import { readArguments } from './arguments.ts';
import { helpText, versionText } from './help.ts';
import { usageOf, VERBS, type Verb } from './verbs.ts';
import { onOneLine, Refusal, refuse, type World } from './world.ts';

/** Exit status: 0, or 1 where `check` found errors, or 2 for bad input. */
export async function run(words: readonly string[], world: World): Promise<number> {
  try {
    return await runVerb(words, world);
  } catch (thrown) {
    if (!(thrown instanceof Refusal)) throw thrown;
    world.warn(onOneLine(thrown.message));
    return 2;
  }
}

async function runVerb([name, ...rest]: readonly string[], world: World): Promise<number> {
  if (name === undefined) return refuse('Say what to do: “help” lists everything.');
  if (name === 'help' || name === '--help' || name === '-h') {
    world.out(helpText());
    return 0;
  }
  if (name === '--version' || name === 'version') {
    world.out(versionText());
    return 0;
  }
  const verb = VERBS.find((one) => one.name === name);
  if (verb === undefined) {
    const near = nearestName(
      name,
      VERBS.map((one) => one.name),
    );
    return refuse(
      `There is no verb “${name}”: ${near === undefined ? '“help” lists them all.' : `did you mean “${near}”?`}`,
    );
  }
  if (rest[0] === '--help') {
    world.out(`${usageOf(verb)}\n    ${verb.does}\n`);
    return 0;
  }
  const given = readArguments(name, rest, verb.options);
  refuseCount(verb, given.words);
  return verb.run(given, world);
}

function refuseCount(verb: Verb, words: readonly string[]): void {
  const needed = verb.takes.filter((argument) => !argument.startsWith('['));
  const missing = needed[words.length];
  if (missing !== undefined) refuse(`${missing} is missing: ${usageOf(verb)}`);
  const extra = words[verb.takes.length];
  if (extra !== undefined) refuse(`“${extra}” is one word too many; put names with blanks in quotes: ${usageOf(verb)}`);
}
