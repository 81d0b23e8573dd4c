// The line above a scratch paper: which cell is in hand, what is typed in it, and below what it gives, what is wrong, or help
// with what is being typed.

import type { Workbook } from '../../../engine/index.ts';
import { blockName, cellName } from '../../scratch/addresses.ts';
import { isFormula } from '../../scratch/formula-words.ts';
import type { ScratchRoom, ShownCell } from '../../scratch/room.ts';
import { CommandButton } from '../commands/command-button.tsx';
import { callSaid, completed, offersFor } from './offers.ts';
import { onEntryKey, PaperEntry } from './paper-entry.tsx';
import { beginTyping, entryAt, hand, type PaperName, selected, typing } from './paper-hand.ts';

interface LineProps {
  readonly book: Workbook;
  readonly room: ScratchRoom;
  readonly paper: PaperName | undefined;
}

export function PaperLine({ book, room, paper }: LineProps) {
  const name = cellName(hand.value);
  const now = typing.value;
  const shown = paper === undefined ? undefined : room.cell(paper.id, name);
  return (
    <section class="scratch-line" aria-label="Formula line">
      <p class="scratch-address">{blockName(selected.value)}</p>
      {now?.where === 'line' ? (
        <PaperEntry class="scratch-line-box" label={`Entry of ${name}`} />
      ) : (
        <input
          class="scratch-line-box"
          aria-label={`Entry of ${name}`}
          spellcheck={false}
          autocomplete="off"
          value={now?.text ?? entryAt(book, hand.value)}
          onFocus={() => {
            beginTyping(typing.peek()?.text ?? entryAt(book, hand.peek()), 'line');
          }}
          onKeyDown={onEntryKey}
        />
      )}
      <div class="scratch-answer">
        {now === undefined ? (
          <Standing shown={shown} formula={isFormula(entryAt(book, hand.value))} />
        ) : (
          <Helping room={room} text={now.text} />
        )}
      </div>
    </section>
  );
}

function Standing({ shown, formula }: { readonly shown: ShownCell | undefined; readonly formula: boolean }) {
  return (
    <>
      <p role="status" class={shown?.is === 'fault' ? 'is-fault' : ''}>
        {shown?.is === 'fault' ? shown.why : (shown?.text ?? '')}
      </p>
      {formula ? (
        <CommandButton id="sum to column" class="quiet">
          Turn into a column
        </CommandButton>
      ) : null}
    </>
  );
}

function Helping({ room, text }: { readonly room: ScratchRoom; readonly text: string }) {
  const said = callSaid(room, text);
  return (
    <>
      {said === '' ? null : <p class="scratch-call">{said}</p>}
      <ul class="scratch-offers" aria-label="Names to write">
        {offersFor(room, text).map((offer) => (
          <li key={offer.name}>
            <button
              type="button"
              class="quiet"
              title={offer.about}
              onMouseDown={(event) => event.preventDefault()}
              onClick={() => {
                const open = typing.peek();
                if (open !== undefined) typing.value = { ...open, text: completed(open.text, offer) };
              }}
            >
              {offer.name}
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}
