// The menus of the page, read from the table of commands.

import { carryOut, refusalOf } from './carry-out.ts';
import type { MenuName } from './command.ts';
import type { MenuItem } from './menu-state.ts';
import type { Situation } from './situation.ts';
import { COMMANDS } from './table.ts';

/** What a menu offers just now, in sets. */
export function menuItems(menu: MenuName, now: Situation): readonly (readonly MenuItem[])[] {
  const sets: MenuItem[][] = [];
  for (const command of COMMANDS) {
    const set = command.menus?.[menu];
    if (set === undefined || command.applies?.(now) === false) continue;
    const why = refusalOf(command, now);
    const items = sets[set] ?? [];
    sets[set] = items;
    items.push({
      label: command.says?.(now) ?? command.label,
      keys: command.keys?.[0],
      why,
      run: () => carryOut(command, now),
    });
  }
  return sets.filter((items) => items !== undefined);
}
