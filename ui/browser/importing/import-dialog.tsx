// Before a file goes into a sheet: how it was read, where its columns go, what it would add, change and pass over, and which
// rows can't be taken and why. The good ones are taken as one step, or none is.

import { useLayoutEffect, useRef } from 'preact/hooks';
import { refusalInWords, type TakenRow } from '../../../engine/index.ts';
import { type PendingImport, pendingImport } from './import-state.ts';
import { countsOf, rowsInWords } from './import-words.ts';
import { leaveImport, takeImport } from './import-work.ts';
import type { Preview } from './messages.ts';
import { ReadingChoices } from './reading-choices.tsx';

/** Rows shown of what is to come. */
const SHOWN = 8;

export function ImportDialog() {
  const pending = pendingImport.value;
  const box = useRef<HTMLDialogElement>(null);
  useLayoutEffect(() => {
    if (pending !== undefined && box.current?.open === false) box.current.showModal();
  }, [pending]);
  if (pending === undefined) return null;
  const { file, sheetName, reading } = pending;
  return (
    <dialog class="dialog import" ref={box} aria-labelledby="import-title" onClose={leaveImport}>
      <h2 id="import-title">{`${file} into ${sheetName}`}</h2>
      {reading === undefined ? null : <ReadingChoices pending={pending} reading={reading} />}
      <State pending={pending} />
    </dialog>
  );
}

function State({ pending }: { readonly pending: PendingImport }) {
  const { state } = pending;
  switch (state.at) {
    case 'reading':
      return <Busy words={state.of === 0 ? 'Reading the file ...' : 'Checking the rows ...'} {...state} />;
    case 'taking':
      if (state.of > 0 && state.done === state.of) return <Busy words="Working out the figures ..." done={0} of={0} />;
      return <Busy words="Taking the rows ..." {...state} />;
    case 'failed':
      return <Failed why={state.why} />;
    case 'preview':
      return <Shown preview={state.preview} />;
  }
}

function Busy({ words, done, of }: { readonly words: string; readonly done: number; readonly of: number }) {
  return (
    <>
      <p role="status">{words}</p>
      {of === 0 ? <progress aria-label={words} /> : <progress aria-label={words} value={done} max={of} />}
      <div class="dialog-acts">
        <button type="button" onClick={leaveImport}>
          Cancel
        </button>
      </div>
    </>
  );
}

function Failed({ why }: { readonly why: string }) {
  return (
    <>
      <p class="refusal" role="status">
        {why}
      </p>
      <p>Nothing was imported; the sheet is as it was.</p>
      <div class="dialog-acts">
        <button type="button" onClick={leaveImport}>
          Close
        </button>
      </div>
    </>
  );
}

function Shown({ preview }: { readonly preview: Preview }) {
  const { added, updated, refused, notes } = preview;
  const taken = added + updated;
  return (
    <>
      <p role="status">{countsOf(preview)}</p>
      {notes.map((note) => (
        <p key={note}>{note}</p>
      ))}
      <Faults preview={preview} />
      <Taken preview={preview} />
      <div class="dialog-acts">
        <button type="button" onClick={leaveImport}>
          {taken === 0 ? 'Close' : 'Leave it'}
        </button>
        {taken === 0 ? null : (
          <button type="button" class="primary" onClick={takeImport}>
            {refused === 0 ? 'Import' : `Import the ${rowsInWords(taken)} that can be taken`}
          </button>
        )}
      </div>
    </>
  );
}

/** The rows that can't be taken, each with its line and why. */
function Faults({ preview: { faults, refused } }: { readonly preview: Preview }) {
  if (refused === 0) return null;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a part that scrolls must be reachable by keyboard
    <section class="import-faults" aria-label="Rows that can’t be taken" tabIndex={0}>
      <ul>
        {faults.map((fault) => (
          <li key={`${fault.line} ${fault.column ?? ''}`} class="refusal">
            {refusalInWords(fault)}
          </li>
        ))}
      </ul>
      {refused > faults.length ? <p class="within">{`and ${refused - faults.length} more`}</p> : null}
    </section>
  );
}

function Taken({ preview: { added, updated, taken } }: { readonly preview: Preview }) {
  const shown = taken.slice(0, SHOWN);
  const more = added + updated - shown.length;
  return (
    <>
      <ul class="import-rows">
        {shown.map((row) => (
          <li key={row.line}>
            <span class="within">{`Line ${row.line}`}</span>
            <span>{rowInWords(row)}</span>
          </li>
        ))}
      </ul>
      {more > 0 && shown.length > 0 ? <p class="within">{`and ${more} more`}</p> : null}
    </>
  );
}

/** 'New: Bed 3, Length 60 ft', 'Bed 3: Length 60 ft'. */
function rowInWords({ what, name, entries }: TakenRow): string {
  const words = entries.map(([column, entry]) => `${column} ${entry === '' ? 'emptied' : entry}`).join(', ');
  return what === 'new' ? `New: ${words}` : `${name}: ${words}`;
}
