// What was copied last in this page: where the clipboard gives back its text alone, what else was said of it is known here.

import type { Copied } from './copied.ts';

let last: Copied | undefined;

export function keepCopied(copied: Copied): Copied {
  last = copied;
  return copied;
}

/** The HTML to a text of the clipboard: that which came with it, else that which was copied with the same text here; '' for none. */
export function htmlTo(text: string, html: string): string {
  return html === '' && last !== undefined && sameText(last.text, text) ? last.html : html;
}

/** Some systems write the ends of lines otherwise than they were put on the clipboard. */
export function sameText(a: string, b: string): boolean {
  return a.replaceAll('\r\n', '\n') === b.replaceAll('\r\n', '\n');
}
