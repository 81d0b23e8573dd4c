// Work that is done with a part of the page which is fetched for it. The tables of commands call it.

import { tell } from '../store/notices.ts';

/** Does the work once the part is there; shows a refusal where the part doesn't come or the work fails. */
export function withPart<T>(part: Promise<T>, work: (part: T) => Promise<void> | void): void {
  part.then(work).catch((fault: unknown) => {
    tell(fault instanceof Error ? fault.message : String(fault), 'refusal');
  });
}
