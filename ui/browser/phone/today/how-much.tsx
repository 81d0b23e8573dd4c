// The last touch of a note: how much it was, typed and kept as a line of the sheet Records.

import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { message, sheetView, tryEntry } from '../../../../engine/index.ts';
import { questionOf } from '../../entry/entry-questions.ts';
import { change, UNDO } from '../../store/change.ts';
import { tell } from '../../store/notices.ts';
import { columnOf } from '../../store/sheets.ts';
import { workbook } from '../../store/workbook.ts';
import { countedTooMany, type Noted, type NoteKind, noteCommand, RECORDS } from './day.ts';

export interface HowMuchProps {
  readonly note: NoteKind;
  readonly planting: Noted;
  /** The civil day that is noted. */
  readonly on: number;
  readonly onLeave: () => void;
  /** What stands above the box. */
  readonly children?: ComponentChildren;
}

export function HowMuch({ note, planting, on, onLeave, children }: HowMuchProps) {
  const { kind, words } = note;
  const [figure, setFigure] = useState('');
  const [of, setOf] = useState('');
  const [weighed, setWeighed] = useState(note.weighed);
  const [why, setWhy] = useState('');
  const box = useRef<HTMLInputElement>(null);
  // The third touch is on the keys.
  useEffect(() => box.current?.focus(), []);
  const unit = columnOf(sheetView(workbook(), RECORDS), 'amount')?.unit ?? '';
  // A day without a figure says something of a sowing, but is mostly a slip: it is kept when it is asked for again.
  const isBlank = figure.trim() === '';
  const [blankTold, setBlankTold] = useState(false);
  const tried = tryEntry(workbook(), RECORDS, weighed ? 'amount' : 'count', figure);
  const question = isBlank ? undefined : questionOf(tried);
  const outOf = of.trim() === '' ? undefined : questionOf(tryEntry(workbook(), RECORDS, 'of', of));
  // Where it could be read in two ways the button says which is kept.
  const kept = question !== undefined && tried.ok ? `Keep ${tried.text}` : 'Keep it';
  const keep = (): void => {
    if (isBlank && !blankTold) {
      setBlankTold(true);
      setWhy('No figure is typed: type one, or keep the day without it.');
      return;
    }
    const tooMany = kind === 'stood' ? countedTooMany(workbook(), { figure, of }) : undefined;
    if (tooMany !== undefined) {
      setWhy(tooMany);
      return;
    }
    const said = message('add row', { row: `${words.toLowerCase()}, ${planting.name}`, sheet: 'Records' });
    const outcome = change([noteCommand(planting, kind, { figure, weighed, of, on })], said, { quietly: true });
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
      {children}
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
      <ReadAs question={question} />
      {kind === 'stood' ? (
        <label class="today-figure">
          Out of how many; blank: of the whole planting
          <input
            type="text"
            inputMode="decimal"
            value={of}
            onInput={({ currentTarget }) => setOf(currentTarget.value)}
          />
        </label>
      ) : null}
      <ReadAs question={outOf} />
      {why === '' ? null : <p class="finding level-error">{why}</p>}
      <div class="phone-acts">
        <button type="submit" class="primary">
          {isBlank && blankTold ? 'Keep without it' : kept}
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

/** What a figure was read as and what else it could mean, while it is typed. */
function ReadAs({ question }: { readonly question: string | undefined }) {
  return <div role="status">{question === undefined ? null : <p class="finding level-warning">{question}</p>}</div>;
}
