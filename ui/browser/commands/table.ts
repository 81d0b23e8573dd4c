// The one table of commands: what each is called, its keys and where they work, when it can be done, the menus it stands in.
// Keys (keys.ts), menus (menus.ts) and buttons (command-button.tsx) all read it. To add a command, add an entry to the list it
// belongs to. Of entries with the same keys the first that applies is meant.

import { CELL_COMMANDS } from './cell-commands.ts';
import type { PageCommand } from './command.ts';
import { ENTRY } from './entry-commands.ts';
import { EVERYWHERE } from './everywhere.ts';
import { LINE } from './line-commands.ts';
import { LOOKS } from './look-commands.ts';
import { MOVES } from './moves.ts';
import { PLAN_COMMANDS } from './plan-commands.ts';
import { SCRATCH_COMMANDS } from './scratch-commands.ts';
import { SEASON_COMMANDS } from './season-commands.ts';
import { COLUMN_COMMANDS, ROW_COMMANDS } from './sheet-commands.ts';

export const COMMANDS: readonly PageCommand[] = [
  ...EVERYWHERE,
  ...ENTRY,
  ...MOVES,
  ...CELL_COMMANDS,
  ...ROW_COMMANDS,
  ...LOOKS,
  ...COLUMN_COMMANDS,
  ...PLAN_COMMANDS,
  ...SEASON_COMMANDS,
  ...LINE,
  ...SCRATCH_COMMANDS,
];

/** The command of a name; throws where the table has none, which is a slip of whoever asks. */
export function commandNamed(id: string): PageCommand {
  const found = COMMANDS.find((command) => command.id === id);
  if (found === undefined) throw new Error(`The table has no command called ${id}.`);
  return found;
}
