// Noting what happened in three touches: what, of which planting, how much. It becomes a line of the sheet Records, dated today.

import { useState } from 'preact/hooks';
import { settings } from '../../../../engine/index.ts';
import { workbook } from '../../store/workbook.ts';
import { KINDS, type Noted, type NoteKind, plantingsFor } from './day.ts';
import { HowMuch } from './how-much.tsx';

const SHOWN = 8;

export function NoteDown() {
  const [note, setNote] = useState<NoteKind | undefined>(undefined);
  const [planting, setPlanting] = useState<Noted | undefined>(undefined);
  const leave = (): void => {
    setNote(undefined);
    setPlanting(undefined);
  };
  if (note === undefined) {
    return (
      <fieldset class="today-note">
        <legend>Note down</legend>
        {KINDS.map((each) => (
          <button key={each.kind} type="button" onClick={() => setNote(each)}>
            {each.words}
          </button>
        ))}
      </fieldset>
    );
  }
  if (planting === undefined) return <Which note={note} onChoose={setPlanting} onLeave={leave} />;
  return (
    <HowMuch note={note} planting={planting} on={settings(workbook()).today} onLeave={leave}>
      <h2>
        {note.words} of {planting.name}
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
  const plantings = plantingsFor(book, kind, settings(book).today);
  return (
    <section class="today-step" aria-label={`${words} of which planting`}>
      <h2>{words} of ...</h2>
      <ul class="phone-list">
        {plantings.slice(0, all ? plantings.length : SHOWN).map((planting) => (
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
