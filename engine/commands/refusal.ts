// How a command is refused.

import type { Diagnostic } from '../language/tree.ts';

/** Why a command could not be carried out, and where; nothing of its transaction was. */
export interface Refusal {
  readonly refused: true;
  /** Which command of those wished together, from 0. */
  readonly index: number;
  readonly sheet?: string;
  readonly row?: string;
  readonly column?: string;
  readonly why: string;
  /** For a formula: the marked part. */
  readonly diagnostic?: Diagnostic;
}

/** A refusal before its place among the commands is known; undefined where all went well. */
export type Refused = Omit<Refusal, 'refused' | 'index'> | undefined;
