// Stands in the page for former-at-hand.ts: no function of former templates is there until former-wanted.ts fetches them.

import type { FunctionDefinition } from './definition.ts';

export const AT_HAND: readonly FunctionDefinition[] = [];
