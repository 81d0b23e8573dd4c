// How wide a part of the page is, followed as it changes, so that a picture can be drawn in the screen's own pixels and
// its words keep their size. Pictures call it.

import type { RefObject } from 'preact';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';

/** The element to put in the page and its width in pixels; 0 until it is there. */
export function useWidth<E extends HTMLElement>(): { readonly ref: RefObject<E | null>; readonly width: number } {
  const ref = useRef<E>(null);
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const element = ref.current;
    if (element === null) return undefined;
    setWidth(element.clientWidth);
    const observer = new ResizeObserver(() => setWidth(element.clientWidth));
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return { ref, width };
}
