// What a command of the page is: one entry of the table (table.ts), from which keys, menus, buttons and what may be done are
// read. Adding a command with a shortcut is adding an entry.

import type { Situation, Surface } from './situation.ts';

export type MenuName = 'cell' | 'column' | 'view' | 'workbook';

export interface PageCommand {
  readonly id: string;
  /** What it does, as a list of commands says it. */
  readonly label: string;
  /** As a menu says it just now; the label where absent. */
  readonly says?: (now: Situation) => string;
  /** The keys that do it: 'Ctrl D', 'Alt Backspace'. Ctrl stands for the command key too. */
  readonly keys?: readonly string[];
  /** Where its keys work; everywhere where absent. */
  readonly where?: readonly Surface[];
  /** The browser's own event that its keys bring about: the clipboard's. */
  readonly clipboard?: 'copy' | 'cut' | 'paste';
  /** Whether there is anything here that it could be about; menus leave it out where not, and its keys mean something else. */
  readonly applies?: (now: Situation) => boolean;
  /** Why it can't be done just now, in a sentence; undefined where it can. */
  readonly refusal?: (now: Situation) => string | undefined;
  /** The menus it stands in, and in which set of them; sets are counted from 0. */
  readonly menus?: Readonly<Partial<Record<MenuName, number>>>;
  readonly run: (now: Situation, clipboard?: DataTransfer) => void;
}
