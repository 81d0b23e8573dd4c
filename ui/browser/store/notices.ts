// What the page says to a person: short notices in a corner, which go away by themselves, and the live region that screen
// readers read out. Anything in ui/browser may call it; it calls nothing.

import { signal } from '@preact/signals';

export interface Notice {
  readonly id: number;
  readonly text: string;
  readonly tone: 'done' | 'refusal';
  /** Ways back or on: 'Undo'. */
  readonly acts: readonly NoticeAct[];
}

export interface NoticeAct {
  readonly label: string;
  readonly run: () => void;
  /** It takes the last step back: good only until another is done. */
  readonly undoes?: true;
}

/** Notices on screen; the latest takes the place of the one before. */
export const notices = signal<readonly Notice[]>([]);

/** The sentence in the live region. */
export const announced = signal('');

let lastId = 0;

/** Reads a sentence out without showing it: for what is to be seen on the screen anyway. */
export function announce(sentence: string): void {
  // The same sentence twice is read twice only where the text differs.
  announced.value = announced.peek() === sentence ? `${sentence}\u00a0` : sentence;
}

/** Shows a notice and reads it out. A refusal stays until it is closed or another notice takes its place. */
export function tell(text: string, tone: Notice['tone'] = 'done', ...acts: readonly NoticeAct[]): void {
  lastId += 1;
  const notice: Notice = { id: lastId, text, tone, acts };
  notices.value = [notice];
  announce(text);
  if (tone === 'done') setTimeout(() => dismiss(notice.id), 8_000);
}

/** Something was done, or another sheet is on screen: what was refused before, and ways back from a step that is no longer the
 * last, have had their time. What offers another way on stays. */
export function dismissPast(): void {
  const isPast = ({ tone, acts }: Notice): boolean =>
    acts.some(({ undoes }) => undoes === true) || (tone === 'refusal' && acts.length === 0);
  if (notices.peek().some(isPast)) notices.value = notices.peek().filter((notice) => !isPast(notice));
}

export function dismiss(id: number): void {
  notices.value = notices.peek().filter((notice) => notice.id !== id);
}
