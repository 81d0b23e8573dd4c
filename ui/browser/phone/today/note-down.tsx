// Noting what happened in three touches: what, of which planting, how much. It becomes a line of the sheet Records, dated today.

import { useSignal } from '@preact/signals';
import { useState } from 'preact/hooks';
import { settings } from '../../../../engine/index.ts';
import { workbook } from '../../store/workbook.ts';
import { leaveNote, phonePlace, visit } from '../places.ts';
import { SearchBox } from '../search-box.tsx';
import { KINDS, type Noted, type NoteKind, notedWithId } from './day.ts';
import { HowMuch } from './how-much.tsx';
import { plantingsFor } from './which-planting.ts';

const SHOWN = 8;

export function NoteDown() {
  const book = workbook();
  // Its steps are places of the phone, so that the browser's own way back goes from one to the one before.
  const place = phonePlace.value;
  const step = place.at === 'today' ? place.note : undefined;
  const note = KINDS.find((each) => each.kind === step?.kind);
  if (note === undefined) {
    return (
      <fieldset class="today-note">
        <legend>Note down</legend>
        {KINDS.map((each) => (
          <button key={each.kind} type="button" onClick={() => visit({ at: 'today', note: { kind: each.kind } })}>
            {each.words}
          </button>
        ))}
      </fieldset>
    );
  }
  const { kind, words } = note;
  const { today } = settings(book);
  const planting = step?.planting === undefined ? undefined : notedWithId(book, step.planting);
  if (planting === undefined) {
    const choose = ({ id }: Noted): void => visit({ at: 'today', note: { kind, planting: id } });
    return <Which note={note} onChoose={choose} onLeave={leaveNote} />;
  }
  return (
    <HowMuch note={note} planting={planting} on={today} onLeave={leaveNote}>
      <h2>
        {words} of {planting.name}
      </h2>
    </HowMuch>
  );
}

interface WhichProps {
  readonly note: NoteKind;
  readonly onChoose: (planting: Noted) => void;
  readonly onLeave: () => void;
}

function Which({ note: { kind, words }, onChoose, onLeave }: WhichProps) {
  const [all, setAll] = useState(false);
  const book = workbook();
  const wanted = useSignal('');
  const plantings = plantingsFor(book, kind, settings(book).today);
  const named = wanted.value.trim().toLowerCase();
  const found = plantings.filter(({ name, bed }) => `${name} ${bed}`.toLowerCase().includes(named));
  return (
    <section class="today-step" aria-label={`${words} of which planting`}>
      <h2>{words} of ...</h2>
      {all ? <SearchBox label="Name or bed" wanted={wanted} /> : null}
      {found.length === 0 ? <p>{named === '' ? 'There are no plantings yet.' : 'No planting is called so.'}</p> : null}
      <ul class="phone-list">
        {found.slice(0, all ? found.length : SHOWN).map((planting) => (
          <li key={planting.id}>
            <button type="button" onClick={() => onChoose(planting)}>
              <span class="phone-name">{planting.name}</span>
              <span class="phone-count">{planting.bed}</span>
            </button>
          </li>
        ))}
      </ul>
      <div class="phone-acts">
        {all || plantings.length <= SHOWN ? null : (
          <button type="button" onClick={() => setAll(true)}>
            All {plantings.length}
          </button>
        )}
        <button type="button" onClick={onLeave}>
          Leave it
        </button>
      </div>
    </section>
  );
}
