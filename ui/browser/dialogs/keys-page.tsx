// Every key of the page, in one place: read from the table of commands, as the menus are, and from those of the entry box and of
// scratch paper.

import type { PageCommand } from '../commands/command.ts';
import { COMMANDS } from '../commands/table.ts';
import { ENTRY_BOX_KEYS } from '../entry/entry-keys.ts';
import { PAPER_KEYS } from '../scratch/paper-keys.ts';
import { Dialog } from './dialog.tsx';
import { keysPage } from './keys-state.ts';

interface Key {
  readonly label: string;
  readonly keys?: readonly string[];
}

const TYPING = 'While an entry is typed in a cell';

const PLACES: readonly (readonly [string, (command: PageCommand) => boolean])[] = [
  ['Everywhere', ({ where }) => where === undefined || where.includes('page')],
  ['On the cells of a sheet', ({ where }) => where?.includes('grid') === true && !where.includes('page')],
  [TYPING, ({ where }) => where?.includes('entry') === true],
  ['In the formula line', ({ where }) => where?.length === 1 && where[0] === 'formula line'],
];

export function KeysPage() {
  return (
    <Dialog
      id="keys"
      title="Keys"
      class="keys-page"
      onLeave={() => {
        keysPage.value = false;
      }}
    >
      <p>On a Mac the command key does what Ctrl does. A letter typed on a cell begins an entry there.</p>
      <div class="keys-lists">
        {PLACES.map(([place, isHere]) => (
          <Keys key={place} place={place} all={keysOf(place, isHere)} />
        ))}
        <Keys place="On scratch paper" all={PAPER_KEYS} />
      </div>
    </Dialog>
  );
}

function keysOf(place: string, isHere: (command: PageCommand) => boolean): readonly Key[] {
  const commands = COMMANDS.filter((command) => command.keys !== undefined && isHere(command));
  return place === TYPING ? [...commands, ...ENTRY_BOX_KEYS] : commands;
}

interface KeysProps {
  readonly place: string;
  readonly all: readonly Key[];
}

function Keys({ place, all }: KeysProps) {
  return (
    <section>
      <h3>{place}</h3>
      <dl>
        {all.map(({ label, keys }) => (
          <div key={`${label} ${keys?.join(' ')}`}>
            <dt>{label}</dt>
            <dd>
              {keys?.map((each) => (
                <kbd key={each}>{each.replace('Arrow', '')}</kbd>
              ))}
            </dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
