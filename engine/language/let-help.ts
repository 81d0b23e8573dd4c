// Help while a LET is typed: how it is called, and which names stand for values at the cursor. Called by assist.ts.

import type { Token } from './lexer.ts';
import type { Signature } from './signature.ts';
import { LET } from './tree.ts';

/** LET as help shows it; the checker takes it apart itself (let.ts). */
export const LET_SIGNATURE: Signature = {
  name: LET,
  group: 'logic',
  parameters: [
    { name: 'name', pattern: { is: 'anything' } },
    { name: 'value', pattern: { is: 'anything' } },
  ],
  repeating: 2,
  otherwise: true,
  result: { is: 'letter', letter: 'a', among: 'anything' },
  doc: 'Gives names to parts of a long formula, and last the formula written with them: LET(width; 30 in; width * [Length]).',
  source: 'own',
};

interface Open {
  readonly isLet: boolean;
  readonly names: string[];
  argument: number;
}

/** Names whose value stands before the end of these tokens, in the LETs that are open there; the innermost last. */
export function namesGiven(tokens: readonly Token[]): readonly string[] {
  const open: Open[] = [];
  for (const [at, token] of tokens.entries()) {
    const inner = open.at(-1);
    const before = tokens[at - 1];
    if (token.token === 'word' && inner?.isLet === true && inner.argument % 2 === 0 && isSeparator(tokens[at + 1])) {
      inner.names[inner.argument / 2] = token.word;
    }
    if (isSeparator(token) && inner !== undefined) inner.argument += 1;
    if (token.token !== 'sign') continue;
    if (token.sign === ')') open.pop();
    if (token.sign !== '(') continue;
    open.push({ isLet: before?.token === 'word' && before.word.toUpperCase() === LET, names: [], argument: 0 });
  }
  return open.flatMap(({ names, argument }) => names.slice(0, Math.floor(argument / 2)).filter((name) => name !== ''));
}

function isSeparator(token: Token | undefined): boolean {
  return token?.token === 'sign' && (token.sign === ';' || token.sign === ',');
}
