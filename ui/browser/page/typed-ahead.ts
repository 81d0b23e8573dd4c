// What a person types while a part of the page that takes text is still on its way: a box out of sight takes it, input methods
// and all, and what stands in it is handed to the box that comes. later.tsx calls this file.

/** A key that does something, or a text between two of them. */
type Typed = { readonly text: string } | { readonly key: string };

const KEYS: readonly string[] = ['Enter', 'Escape', 'Tab'];

const STOPS = 'input, textarea, select, button, [tabindex]';

/** Begins to take what is typed. Whoever had the focus gets it back before the part is drawn, to have it again once that is shut. */
export class TypedAhead {
  private readonly before = document.activeElement;
  private readonly box = document.createElement('input');
  private readonly typed: Typed[] = [];
  private composing: { readonly done: Promise<void>; readonly end: () => void } | undefined;

  constructor() {
    const { box } = this;
    box.className = 'unseen';
    box.autocomplete = 'off';
    box.setAttribute('aria-label', 'On its way: what you type goes into it');
    box.addEventListener('keydown', (event) => {
      if (event.isComposing || !KEYS.includes(event.key)) return;
      event.preventDefault();
      this.cut();
      this.typed.push({ key: event.key });
    });
    box.addEventListener('compositionstart', () => {
      let end = (): void => undefined;
      const done = new Promise<void>((resolve) => {
        end = resolve;
      });
      this.composing = { done, end };
    });
    box.addEventListener('compositionend', () => {
      this.composing?.end();
      this.composing = undefined;
    });
    document.body.append(box);
    box.focus();
  }

  /** Waits until no word is half composed. */
  async atRest(): Promise<void> {
    while (this.composing !== undefined) await this.composing.done;
  }

  /** Gives the focus back, once, unless a person has gone elsewhere meanwhile; what was typed then is let go. */
  giveBack(): void {
    const { box, before } = this;
    if (!box.isConnected) return;
    const mine = document.activeElement === box;
    if (mine) this.cut();
    else this.typed.length = 0;
    box.remove();
    if (mine && before instanceof HTMLElement && before.isConnected) before.focus();
  }

  /** Types it all into what has the focus now. */
  async handOver(): Promise<void> {
    for (const each of this.typed.splice(0)) {
      if ('text' in each) typeInto(document.activeElement, each.text);
      else press(document.activeElement, each.key);
      // The page draws what follows before the next.
      await Promise.resolve();
    }
  }

  private cut(): void {
    if (this.box.value !== '') this.typed.push({ text: this.box.value });
    this.box.value = '';
  }
}

function typeInto(box: Element | null, text: string): void {
  if (!(box instanceof HTMLInputElement || box instanceof HTMLTextAreaElement)) return;
  if (box.selectionStart === null) box.value += text;
  else box.setRangeText(text, box.selectionStart, box.selectionEnd ?? box.selectionStart, 'end');
  box.dispatchEvent(new InputEvent('input', { bubbles: true, data: text, inputType: 'insertText' }));
}

/** A key as the page's own listeners take it, else as the browser does. */
function press(target: Element | null, key: string): void {
  if (!(target instanceof HTMLElement)) return;
  const asked = target.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
  if (!asked) return;
  if (key === 'Escape') target.closest('dialog')?.close();
  else if (key === 'Tab') nextStop(target)?.focus();
  else if (target instanceof HTMLButtonElement) target.click();
  else if (target instanceof HTMLTextAreaElement) typeInto(target, '\n');
  else target.closest('form')?.querySelector<HTMLButtonElement>('[type="submit"]')?.click();
}

function nextStop(from: HTMLElement): HTMLElement | undefined {
  const within = from.closest('dialog, search');
  const stops = [...(within?.querySelectorAll<HTMLElement>(STOPS) ?? [])].filter(
    (stop) => stop.tabIndex >= 0 && !stop.matches(':disabled') && stop.offsetParent !== null,
  );
  return stops[(stops.indexOf(from) + 1) % Math.max(1, stops.length)];
}
