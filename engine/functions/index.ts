// Everything a formula may call, by its name in capitals: the standard functions and the trade's own. The language checks calls
// against SIGNATURES; the recalculation takes the bodies from FUNCTIONS.

import type { Signature } from '../language/signature.ts';
import type { RecordType } from '../values/type.ts';
import type { FunctionDefinition } from './definition.ts';
import { AT_HAND } from './former-at-hand.ts';
import { STANDARD } from './standard/index.ts';
import { TRADE } from './trade/index.ts';

const functions = new Map<string, FunctionDefinition>();
const signatures = new Map<string, Signature>();
const records = new Map<string, RecordType>();

export const FUNCTIONS: ReadonlyMap<string, FunctionDefinition> = functions;
export const SIGNATURES: ReadonlyMap<string, Signature> = signatures;
/** The records that functions answer with, by their ids. */
export const RECORDS: ReadonlyMap<string, RecordType> = records;

addFunctions([...STANDARD, ...TRADE, ...AT_HAND]);

/** From now on formulas may call these, too. */
export function addFunctions(definitions: readonly FunctionDefinition[]): void {
  for (const definition of definitions) {
    const { signature } = definition;
    functions.set(signature.name, definition);
    signatures.set(signature.name, signature);
    if (signature.result.is === 'record') records.set(signature.result.record.id, signature.result.record);
  }
}
