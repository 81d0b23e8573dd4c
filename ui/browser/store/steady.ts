// What a part of the page asks of the workbook at every change, though the answer is another only now and then: the part draws again
// only when it is.

import { computed } from '@preact/signals';
import { useMemo } from 'preact/hooks';

/** What `ask` gives about `of`, as the same plain object for as long as it says the same in every field. */
export function useSteady<Of, Answer extends object>(of: Of, ask: (of: Of) => Answer): Answer {
  const answer = useMemo(() => {
    let last: Answer | undefined;
    return computed(() => {
      const now = ask(of);
      if (last === undefined || !isSame(last, now)) last = now;
      return last;
    });
  }, [of]);
  return answer.value;
}

function isSame<T extends object>(a: T, b: T): boolean {
  const fields = Object.entries(a);
  return fields.length === Object.keys(b).length && fields.every(([name, value]) => Reflect.get(b, name) === value);
}
