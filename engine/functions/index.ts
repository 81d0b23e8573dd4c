// Everything a formula may call, by its name in capitals: the standard functions and the trade's own. The language checks calls
// against SIGNATURES; the recalculation takes the bodies from FUNCTIONS.

import type { Signature } from '../language/signature.ts';
import type { FunctionDefinition } from './definition.ts';
import { STANDARD } from './standard/index.ts';
import { TRADE } from './trade/index.ts';

export const FUNCTIONS: ReadonlyMap<string, FunctionDefinition> = new Map(
  [...STANDARD, ...TRADE].map((definition) => [definition.signature.name, definition]),
);

export const SIGNATURES: ReadonlyMap<string, Signature> = new Map(
  [...FUNCTIONS].map(([name, { signature }]) => [name, signature]),
);
