// How reading and checking stop at the first thing that is wrong: a diagnostic is thrown within the language and caught
// at its two doors, parseFormula and checkFormula. Nothing of it leaves them as an exception.

import type { Diagnostic, Span } from './tree.ts';

export class Refused extends Error {
  readonly diagnostic: Diagnostic;
  constructor(diagnostic: Diagnostic) {
    super(diagnostic.why);
    this.diagnostic = diagnostic;
  }
}

/** Stops with a diagnostic at `span`; `fix` replaces the same span, or its own where it names one. */
export function refuse(span: Span, why: string, fix?: string | NonNullable<Diagnostic['fix']>): never {
  const place = { from: span.from, to: span.to };
  if (fix === undefined) throw new Refused({ ...place, why });
  throw new Refused({ ...place, why, fix: typeof fix === 'string' ? { text: fix, span: place } : fix });
}

/** What `work` gives, or the diagnostic it stopped with. */
export function caught<T>(work: () => T): { ok: true; value: T } | { ok: false; diagnostic: Diagnostic } {
  try {
    return { ok: true, value: work() };
  } catch (reason) {
    if (reason instanceof Refused) return { ok: false, diagnostic: reason.diagnostic };
    throw reason;
  }
}
