// What a formula is made of, for those who tell it in words: the parts by which it chooses, and the terms that want a sentence.

import { operandsOf, type Typed, walkTyped } from '../language/typed.ts';
import { isOfTheTrade } from './say-calls.ts';

export interface Term {
  readonly name: string;
  readonly means: string;
}

type Call = Extract<Typed, { readonly node: 'call' }>;

/** Whether the answer is a yes or no that is reasoned from others. */
export function isDecision(node: Typed): boolean {
  if (node.type.kind !== 'yesno') return false;
  if (node.node === 'call') return [...JOINED, 'ISBLANK'].includes(node.signature.name);
  return node.node === 'binary';
}

/** The parts of a formula by which it chooses: conditions, and what they are joined of. */
export function choices(tree: Typed): readonly Typed[] {
  const found = new Set<Typed>();
  const addCondition = (node: Typed): void => {
    found.add(node);
    if (node.node === 'call' && JOINED.includes(node.signature.name)) for (const part of node.args) addCondition(part);
  };
  const see = (node: Typed): void => {
    if (isDecision(node)) addCondition(node);
    if (node.node !== 'call') return;
    const { name } = node.signature;
    if (name === 'SWITCH') for (const each of [node.args[0], ...keysOf(node)]) if (each !== undefined) found.add(each);
    if (name === 'IF' && node.args[0] !== undefined) addCondition(node.args[0]);
    if (name === 'IFS') for (const each of node.args.filter((_, i) => i % 2 === 0)) addCondition(each);
  };
  walkTyped(tree, see, spoken);
  return [...found];
}

/** What SWITCH compares its first argument with. */
function keysOf({ args }: Call): readonly Typed[] {
  return args.filter((_, i) => i % 2 === 1 && i + 1 < args.length);
}

/** Which rows are looked up, and by which key, isn't told part by part. */
function spoken(node: Typed): readonly Typed[] {
  return node.node === 'condition' || node.node === 'key' ? [] : operandsOf(node);
}

const JOINED: readonly string[] = ['AND', 'OR', 'NOT'];

/** The trade's own functions in a formula, each once, with their doc lines. */
export function termsOf(tree: Typed): readonly Term[] {
  const found = new Map<string, Term>();
  const see = (node: Typed): void => {
    if (node.node !== 'call' || !isOfTheTrade(node.signature)) return;
    const { name, doc } = node.signature;
    found.set(name, { name, means: doc });
  };
  walkTyped(tree, see, spoken);
  return [...found.values()];
}
