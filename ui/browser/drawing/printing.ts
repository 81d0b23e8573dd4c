// Whether the browser is about to print: what is drawn for paper otherwise than for the screen asks it. Pictures and pages for paper
// call it.

import { options } from 'preact';
import { useLayoutEffect, useState } from 'preact/hooks';

/** True from just before the page is set for paper until it has been. */
export function usePrinting(): boolean {
  const [printing, setPrinting] = useState(false);
  useLayoutEffect(() => {
    const before = (): void => atOnce(() => setPrinting(true));
    const after = (): void => setPrinting(false);
    window.addEventListener('beforeprint', before);
    window.addEventListener('afterprint', after);
    return () => {
      window.removeEventListener('beforeprint', before);
      window.removeEventListener('afterprint', after);
    };
  }, []);
  return printing;
}

/** Draws what an act changes before it returns: the browser waits for nothing before it prints. */
function atOnce(act: () => void): void {
  const { debounceRendering } = options;
  options.debounceRendering = (draw) => draw();
  act();
  if (debounceRendering === undefined) delete options.debounceRendering;
  else options.debounceRendering = debounceRendering;
}
