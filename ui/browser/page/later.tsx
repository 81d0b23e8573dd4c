// Parts of the page whose code is fetched when they are first shown: pictures and dialogs, so that the page itself is there at once.

import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';

/** A component that stands empty until its code has come; what can't be fetched says so. */
export function later<P extends object>(fetch: () => Promise<ComponentType<P>>): ComponentType<P> {
  let known: ComponentType<P> | undefined;
  return function Later(props: P) {
    const [Part, show] = useState<ComponentType<P> | undefined>(() => known);
    const [missing, miss] = useState(false);
    useEffect(() => {
      if (Part !== undefined) return undefined;
      let gone = false;
      fetch().then(
        (part) => {
          known = part;
          if (!gone) show(() => part);
        },
        () => {
          if (!gone) miss(true);
        },
      );
      return () => {
        gone = true;
      };
    }, [Part]);
    if (missing) return <p class="no-picture">This part could not be fetched: open the page again.</p>;
    return Part === undefined ? null : <Part {...props} />;
  };
}
