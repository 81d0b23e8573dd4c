// Parts of the page whose code is fetched when they are first shown: pictures and dialogs, so that the page itself is there at once.

import type { ComponentType } from 'preact';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { TypedAhead } from './typed-ahead.ts';

/** A component that stands empty until its code has come; what can't be fetched says so. */
export function later<P extends object>(fetch: () => Promise<ComponentType<P>>): ComponentType<P> {
  return fetched(fetch, false);
}

/** The same for what takes the keys as soon as it is asked for: what is typed before its code has come goes into it. */
export function laterTyped<P extends object>(fetch: () => Promise<ComponentType<P>>): ComponentType<P> {
  return fetched(fetch, true);
}

function fetched<P extends object>(fetch: () => Promise<ComponentType<P>>, takesKeys: boolean): ComponentType<P> {
  let known: ComponentType<P> | undefined;
  return function Later(props: P) {
    const [Part, show] = useState<ComponentType<P> | undefined>(() => known);
    const [missing, miss] = useState(false);
    const ahead = useRef<TypedAhead | undefined>(undefined);
    useLayoutEffect(() => {
      if (Part !== undefined) {
        void ahead.current?.handOver();
        ahead.current = undefined;
        return undefined;
      }
      let gone = false;
      const typed = takesKeys ? new TypedAhead() : undefined;
      ahead.current = typed;
      fetch().then(
        async (part) => {
          known = part;
          await typed?.atRest();
          if (gone) return;
          typed?.giveBack();
          show(() => part);
        },
        () => {
          if (gone) return;
          typed?.giveBack();
          miss(true);
        },
      );
      return () => {
        gone = true;
        typed?.giveBack();
      };
    }, [Part]);
    if (missing) return <p class="no-picture">This part could not be fetched: open the page again.</p>;
    return Part === undefined ? null : <Part {...props} />;
  };
}
