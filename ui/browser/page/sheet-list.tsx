// The season as the questions in the order they come up, each with its sheets: how many rows a sheet has, or that none were
// entered yet, and how many things in it need attention.

import { untracked } from '@preact/signals';
import { type SheetView, sheetViews } from '../../../engine/index.ts';
import { shownView } from '../glance/opening.ts';
import { desk, setDesk } from '../store/device.ts';
import { findingsOf, workbookFollowed } from '../store/findings.ts';
import { goTo, sheetOnScreen } from '../store/selection.ts';
import { questionsOf } from '../store/sheets.ts';
import { useSteady } from '../store/steady.ts';
import { view } from '../store/view.ts';
import { workbookAtRest } from '../store/workbook.ts';
import { fetchGrid } from './fetch-grid.ts';
import { type Needs, needsOf, rowsInWords } from './sheet-needs.ts';
import { ViewsList } from './views-list.tsx';

/** Someone reaches for the sheets: what they need is on its way by the time they choose one. A failure shows when they do. */
const onReach = (): void => void fetchGrid().catch(() => undefined);

export function SheetList() {
  const book = workbookAtRest();
  const here = shownView(book, view.value).at === 'sheet' ? sheetOnScreen.value : undefined;
  const { listFolded } = desk.value;
  const words = listFolded ? 'Show the list of sheets' : 'Fold the list away';
  return (
    <nav class="sheet-list" aria-label="Sheets" onPointerEnter={onReach} onFocusCapture={onReach}>
      <button
        type="button"
        class="fold-list"
        aria-expanded={!listFolded}
        title={words}
        onClick={() => setDesk({ listFolded: !listFolded })}
      >
        <span aria-hidden="true">{listFolded ? '\u203a' : '\u2039'}</span>
        <span class="spoken">{words}</span>
      </button>
      <ViewsList />
      {listFolded ? null : <Questions here={here} />}
      {listFolded ? null : <ScratchEntry />}
    </nav>
  );
}

/** Below the sheets: sums on the side, which no sheet reads. */
function ScratchEntry() {
  const here = view.value.at === 'scratch';
  return (
    <ul class="scratch-place">
      <li>
        <button
          type="button"
          aria-current={here ? 'page' : undefined}
          onClick={() => {
            view.value = { at: 'scratch' };
          }}
        >
          <span class="sheet-name">Scratch paper</span>
        </button>
      </li>
    </ul>
  );
}

function Questions({ here }: { readonly here: string | undefined }) {
  const book = workbookAtRest();
  return (
    <>
      {questionsOf(sheetViews(book)).map(({ name: question, within }) => (
        <section key={question}>
          <h2>{question}</h2>
          <ul>
            {within.map((sheet) => (
              <SheetPlace key={sheet.id} sheet={sheet} isHere={sheet.id === here} />
            ))}
          </ul>
        </section>
      ))}
    </>
  );
}

function SheetPlace({ sheet, isHere }: { readonly sheet: SheetView; readonly isHere: boolean }) {
  const { rows } = useSteady(sheet, counted);
  const needs = useSteady(sheet, needed);
  return (
    <li>
      <button type="button" aria-current={isHere ? 'page' : undefined} onClick={() => goTo(sheet.id)}>
        <span class="sheet-name">{sheet.name}</span>
        <Found {...needs} />
        <span class="row-count">{rows}</span>
      </button>
    </li>
  );
}

/** How many rows it has: those that people put in a moment after the cells; those that are made follow what they are made of. */
function counted(sheet: SheetView): { readonly rows: string } {
  return { rows: rowsInWords(sheet.entered ? workbookAtRest() : workbookFollowed(), sheet) };
}

/** What it needs, another only where something else was found. */
function needed(sheet: SheetView): Needs {
  const found = findingsOf(sheet.id);
  const book = untracked(workbookAtRest);
  return needsOf(book, sheet, found) ?? NOTHING_NEEDED;
}

const NOTHING_NEEDED: Needs = { level: 'note', count: 0, words: '' };

function Found({ level, count, words }: Needs) {
  if (count === 0) return null;
  return (
    <span class={`attention-mark level-${level}`} title={words}>
      <span aria-hidden="true">{count}</span>
      <span class="spoken">, {words},</span>
    </span>
  );
}
