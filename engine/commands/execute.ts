// Carries out one command: finds the file that knows how. The list of commands is the union in command.ts; a command without
// a hand here does not compile.

import { addBranch, changeBranch, removeBranch, renameBranch, takeOver } from './branches.ts';
import { putCell, setCell, takeBack } from './cells.ts';
import { addColumn, addFormula, moveColumn, removeColumn, renameColumn, setFormula } from './columns.ts';
import type { Command, CommandOf } from './command.ts';
import type { Draft } from './draft.ts';
import { removeColour, removeView, setColour, setLocale, setNote, setView, takeViewBack } from './looks.ts';
import { addPaper, removePaper, renamePaper, typeOnPaper } from './papers.ts';
import type { Refused } from './refusal.ts';
import { insertRow, keepRow, moveRows, putRows, removeRows } from './rows.ts';
import { setTitle, setToday, setUnits, useTemplate } from './settings.ts';
import { addSheet, moveSheet, putSheet, removeCheck, removeSheet, renameSheet, setCheck } from './sheets.ts';

type Hands = { readonly [K in Command['command']]: (command: CommandOf<K>, draft: Draft) => Refused };

const HANDS: Hands = {
  'set cell': setCell,
  'put cell': putCell,
  'take back': takeBack,
  'insert row': insertRow,
  'put rows': putRows,
  'remove rows': removeRows,
  'move rows': moveRows,
  'keep row': keepRow,
  'set formula': setFormula,
  'add formula': addFormula,
  'add column': addColumn,
  'remove column': removeColumn,
  'rename column': renameColumn,
  'move column': moveColumn,
  'add sheet': addSheet,
  'put sheet': putSheet,
  'remove sheet': removeSheet,
  'rename sheet': renameSheet,
  'move sheet': moveSheet,
  'set check': setCheck,
  'remove check': removeCheck,
  'set view': setView,
  'remove view': removeView,
  'take view back': takeViewBack,
  'set colour': setColour,
  'remove colour': removeColour,
  'set note': setNote,
  'set locale': setLocale,
  'set units': setUnits,
  'set today': setToday,
  'set title': setTitle,
  'add branch': addBranch,
  'rename branch': renameBranch,
  'remove branch': removeBranch,
  'change branch': changeBranch,
  'take over': takeOver,
  'add paper': addPaper,
  'rename paper': renamePaper,
  'remove paper': removePaper,
  'type on paper': typeOnPaper,
  restore: ({ data, hand }, draft) => hand(data, draft),
  'use template': useTemplate,
};

/** What these bring is compiled when another command wants it or all are done: many come at once. */
const WAIT: readonly Command['command'][] = ['add formula', 'add column', 'add sheet', 'put sheet'];

/** Does what a command asks for by operations; gives why not where it can't be. */
export function execute(command: Command, draft: Draft): Refused {
  if (!WAIT.includes(command.command)) draft.settle();
  // The table pairs each kind with the hand for just that kind, which the compiler can't follow through the index.
  const hand = HANDS[command.command] as (command: Command, draft: Draft) => Refused;
  return hand(command, draft);
}
