// The bar in which a person looks for values of the sheet or the workbook, walks through what was found, and puts another text in
// its place.

import { useLayoutEffect, useRef } from 'preact/hooks';
import { rowsOnScreen } from '../grid/grid-surface.ts';
import { finding } from '../store/find.ts';
import { closeFind, endLook, filterWords, look, lookFor, MOST_FOUND, share, stepFound } from '../store/looking.ts';
import { replaceAll, replaceOne } from '../store/replacing.ts';
import { sheetOnScreen } from '../store/selection.ts';

export function FindBar() {
  const { open, asked, text, instead, everywhere, found, looking } = finding.value;
  const box = useRef<HTMLInputElement>(null);
  // At once, so that the next key finds the box.
  useLayoutEffect(() => {
    box.current?.focus();
    box.current?.select();
  }, [open, asked]);
  // What is looked at is another sheet, or others of its rows; walking through all sheets brings one after the other on screen.
  const looked = everywhere ? '' : `${sheetOnScreen.value} ${rowsOnScreen.value.left}`;
  useLayoutEffect(() => void look(), [open, asked, looked]);
  const onKey = (event: KeyboardEvent): void => {
    if (event.key === 'Escape') closeFind();
    else if (event.key === 'Enter' && event.target === box.current) stepFound(event.shiftKey ? -1 : 1);
    else return;
    event.preventDefault();
  };
  const none = found.length === 0;
  return (
    <search class="find-bar" aria-label="Find in values" onKeyDown={onKey}>
      <label>
        Find
        <input
          ref={box}
          type="text"
          value={text}
          spellcheck={false}
          onInput={({ currentTarget }) => lookFor({ text: currentTarget.value })}
        />
      </label>
      <span class="find-count" role="status">
        {countWords()}
      </span>
      {share.value === undefined ? null : (
        <>
          <progress value={share.value} aria-label="Looked through" />
          <button
            type="button"
            class="quiet"
            onClick={() => {
              endLook();
              // The button goes, and would take the focus with it.
              box.current?.focus();
            }}
          >
            Stop looking
          </button>
        </>
      )}
      <button type="button" class="quiet" disabled={none} onClick={() => stepFound(-1)}>
        Before
      </button>
      <button type="button" class="quiet" disabled={none} onClick={() => stepFound(1)}>
        Next
      </button>
      <label>
        <input
          type="checkbox"
          checked={everywhere}
          onChange={({ currentTarget }) => lookFor({ everywhere: currentTarget.checked })}
        />
        In all sheets
      </label>
      {open === 'replace' ? (
        <>
          <label>
            Put instead
            <input
              type="text"
              value={instead}
              spellcheck={false}
              onInput={({ currentTarget }) => lookFor({ instead: currentTarget.value })}
            />
          </label>
          <button type="button" disabled={none} onClick={() => void replaceOne()}>
            Replace
          </button>
          <button type="button" disabled={none && !looking} onClick={() => void replaceAll()}>
            Replace all
          </button>
        </>
      ) : null}
      <button type="button" class="quiet" onClick={closeFind}>
        Close
      </button>
    </search>
  );
}

function countWords(): string {
  const { text, found, behind, cut, at, looking } = finding.value;
  if (looking) return 'looking ...';
  if (text.trim() === '') return '';
  const soFar = cut === 'ended' ? ' so far' : '';
  const more = behind === 0 ? '' : `, ${behind}${cut === undefined ? '' : ' and more'} behind ${filterWords()}`;
  if (found.length === 0) return `not found${soFar}${more}`;
  const count = cut === 'full' ? `${MOST_FOUND} and more` : String(found.length);
  return `${at < 0 ? `${count} found${soFar}` : `${at + 1} of ${count}${soFar}`}${more}`;
}
