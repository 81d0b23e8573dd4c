// Between the clipboard and the grid: by the browser's own event where keys brought it about, else, from a menu, by asking for
// the clipboard.

import type { Copied } from '../grid/clipboard/copied.ts';
import { tell } from '../store/notices.ts';
import type { Situation } from './situation.ts';

/** Puts what was copied there, as text and as a table. */
export function putOnClipboard(copied: Copied | undefined, event: DataTransfer | undefined): void {
  if (copied === undefined) return;
  const { text, html } = copied;
  if (event !== undefined) {
    event.setData('text/plain', text);
    event.setData('text/html', html);
    return;
  }
  const item = new ClipboardItem({
    'text/plain': new Blob([text], { type: 'text/plain' }),
    'text/html': new Blob([html], { type: 'text/html' }),
  });
  navigator.clipboard
    .write([item])
    .catch(() => tell('The browser keeps the clipboard shut: copy with Ctrl C.', 'refusal'));
}

/** Pastes what is there. `keepFormulas`: never over a formula. */
export function pasteInto({ grid }: Situation, event: DataTransfer | undefined, keepFormulas: boolean): void {
  if (grid === undefined) return;
  if (event !== undefined) {
    grid.paste(event.getData('text/plain'), event.getData('text/html'), keepFormulas);
    return;
  }
  readClipboard().then(
    ({ text, html }) => grid.paste(text, html, keepFormulas),
    () => tell('The browser keeps the clipboard shut: paste with Ctrl V.', 'refusal'),
  );
}

async function readClipboard(): Promise<Copied> {
  const [item] = await navigator.clipboard.read();
  const part = async (type: string): Promise<string> =>
    item?.types.includes(type) === true ? (await item.getType(type)).text() : '';
  return { text: await part('text/plain'), html: await part('text/html') };
}
