// LET(name; value; ...; formula): names for parts of a long formula. A name stands for its value wherever it is written behind it,
// as if the value itself were written there; it hides a sheet of the same name. Called by checker.ts.

import type { CheckContext } from './context.ts';
import { refuse } from './refuse.ts';
import { nameGiven, type Tree } from './tree.ts';
import { operandsOf, type Typed } from './typed.ts';

type CallTree = Extract<Tree, { readonly tree: 'call' }>;

/** Parts that a formula may have once every name is put in its place: names of names could make it grow without end. */
const MOST_PARTS = 4000;

const USAGE = 'LET(name; value; name; value; ...; formula)';

export function letNode(
  tree: CallTree,
  context: CheckContext,
  check: (of: Tree, context: CheckContext) => Typed,
): Typed {
  const { args } = tree;
  const body = args.at(-1);
  if (args.length < 3 || args.length % 2 === 0 || body === undefined)
    return refuse(tree, `LET wants names with their values, then a formula: ${USAGE}.`);
  const given = new Map(context.given);
  for (let at = 0; at + 1 < args.length; at += 2) {
    const [part, value] = [args[at], args[at + 1]];
    const name = nameGiven(part);
    if (part === undefined || name === undefined)
      return refuse(part ?? tree, `A name is wanted here, such as width: ${USAGE}.`);
    if (!/^[\p{L}_][\p{L}\p{N}_]*$/u.test(name))
      return refuse(part, 'A name in LET is one word of letters and digits, such as width or width2.');
    if (context.vocabulary.find(name) !== undefined)
      return refuse(part, `${name} is a unit, so it can't name a value: choose another word.`);
    if (value === undefined || value.tree === 'missing')
      return refuse(value ?? part, `${name} has no value: write one.`);
    given.set(name, check(value, { ...context, given }));
  }
  if (body.tree === 'missing') return refuse(tree, `LET has no formula behind its names: ${USAGE}.`);
  const typed = check(body, { ...context, given });
  if (partsOf(typed) > MOST_PARTS)
    return refuse(tree, 'With every name in its place this is too long: put some of it in a column of its own.');
  return { ...typed, from: tree.from, to: tree.to };
}

/** Parts of a tree, each as often as it is worked out; stops counting past the most. */
function partsOf(typed: Typed): number {
  let count = 0;
  const waiting: Typed[] = [typed];
  for (let next = waiting.pop(); next !== undefined && count <= MOST_PARTS; next = waiting.pop()) {
    count += 1;
    waiting.push(...operandsOf(next));
  }
  return count;
}
