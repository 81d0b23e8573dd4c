// Scratch paper: free cells for sums on the side. The papers by name, the line, the cells. Fetched when first opened, with the
// engine that works the papers out.

import { useEffect, useRef, useState } from 'preact/hooks';
import type { Workbook } from '../../../engine/index.ts';
import { isFormula } from '../../scratch/formula-words.ts';
import { ScratchRoom } from '../../scratch/room.ts';
import { followFrames, workbook } from '../store/workbook.ts';
import { openPapers } from './open-papers.ts';
import { copyBlock, pastedRows } from './paper-clipboard.ts';
import { PaperGrid } from './paper-grid.tsx';
import {
  addPaper,
  choose,
  clearSelected,
  corner,
  entryAt,
  extentOf,
  fillSelected,
  goTo,
  hand,
  type PaperName,
  paperInHand,
  papersOf,
  putRows,
  removePaper,
  renamePaper,
  selected,
  turning,
} from './paper-hand.ts';
import { PaperLine } from './paper-line.tsx';
import { scratchOnScreen } from './scratch-surface.ts';
import { TurnDialog } from './turn-dialog.tsx';
import './scratch.css';

export function ScratchPage() {
  const book = workbook();
  const room = useRoom(book);
  const paper = paperInHand(book);
  useSurface(book, room);
  return (
    <div class="scratch-page">
      <Head book={book} paper={paper} />
      <PaperLine book={book} room={room} paper={paper} />
      <PaperGrid book={book} room={room} paper={paper} />
      {turning.value && paper !== undefined ? <TurnDialog book={book} room={room} paper={paper} /> : null}
    </div>
  );
}

/** The papers of the workbook on screen, worked out; another workbook or branch has a room of its own. */
function useRoom(book: Workbook): ScratchRoom {
  const held = useRef<{ readonly book: Workbook; readonly room: ScratchRoom } | undefined>(undefined);
  if (held.current?.book !== book) {
    held.current?.room.destroy();
    held.current = { book, room: new ScratchRoom(book) };
  }
  useEffect(() => {
    const stop = followFrames((change) => held.current?.room.update(change));
    return () => {
      stop();
      held.current?.room.destroy();
      held.current = undefined;
    };
  }, []);
  return held.current.room;
}

/** The table of commands asks the paper while it stands. */
function useSurface(book: Workbook, room: ScratchRoom): void {
  useEffect(() => {
    const copied = () => copyBlock(book, room, paperInHand(book)?.id ?? '', selected.peek());
    scratchOnScreen.value = {
      copied,
      cut: () => {
        const text = copied();
        clearSelected();
        return text;
      },
      paste: (text, html) => {
        const rows = pastedRows(text, html, selected.peek());
        if (rows !== undefined) putRows(rows);
      },
      clear: clearSelected,
      fill: fillSelected,
      selectAll: () => {
        goTo({ row: 0, column: 0 });
        corner.value = extentOf(book);
      },
      turn: () => {
        turning.value = true;
      },
      turnRefusal: () => (isFormula(entryAt(book, hand.value)) ? undefined : 'Choose a cell with a formula first.'),
    };
    return () => {
      scratchOnScreen.value = undefined;
    };
  }, [book, room]);
}

function Head({ book, paper }: { readonly book: Workbook; readonly paper: PaperName | undefined }) {
  const [renaming, rename] = useState(false);
  return (
    <header class="scratch-top">
      <h2>Scratch paper</h2>
      {renaming && paper !== undefined ? (
        <Naming paper={paper} onDone={() => rename(false)} />
      ) : (
        <nav class="scratch-names" aria-label="Scratch papers">
          {papersOf(book).map(({ id, name }) => (
            <button
              key={id}
              type="button"
              aria-current={id === paper?.id ? 'page' : undefined}
              onClick={() => choose(id)}
            >
              {name}
            </button>
          ))}
        </nav>
      )}
      {!renaming ? (
        <span class="scratch-acts">
          <button type="button" class="quiet" onClick={addPaper}>
            New paper
          </button>
          <button type="button" class="quiet" onClick={openPapers}>
            Open XLSX
          </button>
          {paper === undefined ? null : (
            <>
              <button type="button" class="quiet" onClick={() => rename(true)}>
                Rename
              </button>
              <button type="button" class="quiet" onClick={() => removePaper(paper)}>
                Throw away
              </button>
            </>
          )}
        </span>
      ) : null}
    </header>
  );
}

function Naming({ paper, onDone }: { readonly paper: PaperName; readonly onDone: () => void }) {
  const [name, write] = useState(paper.name);
  return (
    <form
      class="scratch-naming"
      onSubmit={(event) => {
        event.preventDefault();
        if (renamePaper(paper, name)) onDone();
      }}
    >
      <input
        aria-label="Name of the paper"
        value={name}
        ref={(box) => box?.focus()}
        onInput={({ currentTarget }) => write(currentTarget.value)}
      />
      <button type="submit">Take</button>
      <button type="button" class="quiet" onClick={onDone}>
        Leave it
      </button>
    </form>
  );
}
