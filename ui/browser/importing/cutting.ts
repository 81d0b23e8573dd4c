// Many commands cut into parts, each so many rows and cells: for taking them part by part, and for handing them over so.

import type { Command } from '../../../engine/index.ts';

/** How many rows or cells a command concerns. */
export function sizeOf(command: Command): number {
  return command.command === 'put rows' ? command.rows.length : 1;
}

/** How many all of them concern. */
export function sizeOfAll(commands: readonly Command[]): number {
  return commands.reduce((sum, command) => sum + sizeOf(command), 0);
}

/** So many rows and cells of the commands, and what is left of them. */
export function cutAfter(commands: readonly Command[], size: number): { part: Command[]; rest: readonly Command[] } {
  const part: Command[] = [];
  let room = size;
  for (const [at, command] of commands.entries()) {
    if (room <= 0) return { part, rest: commands.slice(at) };
    if (command.command === 'put rows' && command.rows.length > room) {
      part.push({ ...command, rows: command.rows.slice(0, room) });
      return { part, rest: [{ ...command, rows: command.rows.slice(room) }, ...commands.slice(at + 1)] };
    }
    part.push(command);
    room -= sizeOf(command);
  }
  return { part, rest: [] };
}
