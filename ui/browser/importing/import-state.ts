// A file on its way into a sheet, not yet done: the dialog shows it, import-work.ts reads it and takes it.

import { signal } from '@preact/signals';
import type { ByHand } from '../../../engine/index.ts';
import type { Choices, Preview, Reading } from './messages.ts';

export interface PendingImport {
  readonly sheet: string;
  readonly sheetName: string;
  readonly file: string;
  readonly choices: Choices;
  /** What the person matched by hand here, to be remembered once the file is taken. */
  readonly byHand: ByHand;
  /** How the file was read; undefined until it was. */
  readonly reading: Reading | undefined;
  /** What it would do; or why it can't be taken as it is; or how far the check is. */
  readonly state:
    | { readonly at: 'reading'; readonly done: number; readonly of: number }
    | { readonly at: 'preview'; readonly preview: Preview }
    | { readonly at: 'failed'; readonly why: string }
    | { readonly at: 'taking'; readonly done: number; readonly of: number };
}

/** The file that waits for a yes; undefined where none does. */
export const pendingImport = signal<PendingImport | undefined>(undefined);
