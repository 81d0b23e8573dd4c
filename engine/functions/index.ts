// Everything a formula may call, by its name in capitals: the standard functions and the trade's own. The language checks calls
// against SIGNATURES; the recalculation takes the bodies from FUNCTIONS.

import type { Signature } from '../language/signature.ts';
import type { RecordType } from '../values/type.ts';
import type { FunctionDefinition } from './definition.ts';
import { FORMER } from './former/index.ts';
import { STANDARD } from './standard/index.ts';
import { TRADE } from './trade/index.ts';

export const FUNCTIONS: ReadonlyMap<string, FunctionDefinition> = new Map(
  [...STANDARD, ...TRADE, ...FORMER].map((definition) => [definition.signature.name, definition]),
);

export const SIGNATURES: ReadonlyMap<string, Signature> = new Map(
  [...FUNCTIONS].map(([name, { signature }]) => [name, signature]),
);

/** The records that functions answer with, by their ids. */
export const RECORDS: ReadonlyMap<string, RecordType> = new Map(
  [...SIGNATURES.values()].flatMap(({ result }) => (result.is === 'record' ? [[result.record.id, result.record]] : [])),
);
