// Noting what happened in three touches: what, of which planting, how much. It becomes a line of the sheet Records, dated today.

import { useEffect, useRef, useState } from 'preact/hooks';
import { message, settings, sheetView } from '../../../../engine/index.ts';
import { change, UNDO } from '../../store/change.ts';
import { tell } from '../../store/notices.ts';
import { columnOf } from '../../store/sheets.ts';
import { workbook } from '../../store/workbook.ts';
import { KINDS, type Kind, type Noted, noteCommand, plantingsFor } from './day.ts';

const SHOWN = 8;

export function NoteDown() {
  const [kind, setKind] = useState<Kind | undefined>(undefined);
  const [planting, setPlanting] = useState<Noted | undefined>(undefined);
  const leave = (): void => {
    setKind(undefined);
    setPlanting(undefined);
  };
  if (kind === undefined) {
    return (
      <fieldset class="today-note">
        <legend>Note down</legend>
        {KINDS.map((each) => (
          <button key={each.kind} type="button" onClick={() => setKind(each.kind)}>
            {each.words}
          </button>
        ))}
      </fieldset>
    );
  }
  const words = KINDS.find((each) => each.kind === kind)?.words ?? '';
  if (planting === undefined) return <Which kind={kind} words={words} onChoose={setPlanting} onLeave={leave} />;
  return <HowMuch kind={kind} words={words} planting={planting} onLeave={leave} />;
}

interface WhichProps {
  readonly kind: Kind;
  readonly words: string;
  readonly onChoose: (planting: Noted) => void;
  readonly onLeave: () => void;
}

function Which({ kind, words, onChoose, onLeave }: WhichProps) {
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

interface HowMuchProps {
  readonly kind: Kind;
  readonly words: string;
  readonly planting: Noted;
  readonly onLeave: () => void;
}

function HowMuch({ kind, words, planting, onLeave }: HowMuchProps) {
  const book = workbook();
  const { today } = settings(book);
  const [figure, setFigure] = useState('');
  const [weighed, setWeighed] = useState(KINDS.find((each) => each.kind === kind)?.weighed ?? false);
  const [why, setWhy] = useState('');
  const box = useRef<HTMLInputElement>(null);
  // The third touch is on the keys.
  useEffect(() => box.current?.focus(), []);
  const unit = columnOf(sheetView(book, 'records'), 'amount')?.unit ?? '';
  // A day without a figure says something of a sowing, but is mostly a slip: it is kept when it is asked for again.
  const isBlank = figure.trim() === '';
  const [blankTold, setBlankTold] = useState(false);
  const keep = (): void => {
    if (isBlank && !blankTold) {
      setBlankTold(true);
      setWhy('No figure is typed: type one, or keep the day without it.');
      return;
    }
    const said = message('add row', { row: `${words.toLowerCase()}, ${planting.name}`, sheet: 'Records' });
    const outcome = change([noteCommand(planting, kind, { figure, weighed, today })], said, { quietly: true });
    if (outcome.refused) {
      setWhy(outcome.why);
      return;
    }
    tell(`${words} of ${planting.name} is noted${isBlank ? ', without a figure' : ''}.`, 'done', UNDO);
    onLeave();
  };
  return (
    <form
      class="today-step"
      aria-label={`${words} of ${planting.name}`}
      onSubmit={(event) => {
        event.preventDefault();
        keep();
      }}
    >
      <h2>
        {words} of {planting.name}
      </h2>
      <label class="today-figure">
        {weighed ? `Weight, ${unit}` : 'How many'}
        <input
          type="text"
          inputMode="decimal"
          ref={box}
          value={figure}
          onInput={({ currentTarget }) => setFigure(currentTarget.value)}
        />
      </label>
      {why === '' ? null : <p class="finding level-error">{why}</p>}
      <div class="phone-acts">
        <button type="submit" class="primary">
          {isBlank && blankTold ? 'Keep without it' : 'Keep it'}
        </button>
        {kind === 'picked' ? (
          <button type="button" onClick={() => setWeighed(!weighed)}>
            {weighed ? 'Counted instead' : 'Weighed instead'}
          </button>
        ) : null}
        <button type="button" onClick={onLeave}>
          Leave it
        </button>
      </div>
    </form>
  );
}
