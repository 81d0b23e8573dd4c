// The season as the questions in the order they come up, each with its sheets: how many rows a sheet has and how many
// things in it need attention.

import { type Finding, type FindingLevel, rows, sheetViews } from '../../../engine/index.ts';
import { shownView } from '../glance/opening.ts';
import { desk, setDesk } from '../store/device.ts';
import { findings } from '../store/findings.ts';
import { goTo, sheetOnScreen } from '../store/selection.ts';
import { questionsOf } from '../store/sheets.ts';
import { view } from '../store/view.ts';
import { workbook } from '../store/workbook.ts';
import { fetchGrid } from './fetch-grid.ts';
import { ViewsList } from './views-list.tsx';

/** Someone reaches for the sheets: what they need is on its way by the time they choose one. A failure shows when they do. */
const onReach = (): void => void fetchGrid().catch(() => undefined);

export function SheetList() {
  const book = workbook();
  const here = shownView(book, view.value).at === 'sheet' ? sheetOnScreen.value : undefined;
  const counts = countBySheet(findings.value);
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
      {listFolded ? null : <Questions here={here} counts={counts} />}
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

interface QuestionsProps {
  readonly here: string | undefined;
  readonly counts: ReadonlyMap<string, Count>;
}

function Questions({ here, counts }: QuestionsProps) {
  const book = workbook();
  return (
    <>
      {questionsOf(sheetViews(book)).map(({ name: question, within }) => (
        <section key={question}>
          <h2>{question}</h2>
          <ul>
            {within.map(({ id, name, oneRow }) => (
              <li key={id}>
                <button type="button" aria-current={id === here ? 'page' : undefined} onClick={() => goTo(id)}>
                  <span class="sheet-name">{name}</span>
                  <Found count={counts.get(id)} />
                  <span class="row-count">{oneRow ? '' : rows(book, id).length}</span>
                </button>
              </li>
            ))}
          </ul>
        </section>
      ))}
    </>
  );
}

interface Count {
  readonly level: FindingLevel;
  readonly count: number;
}

/** Errors and warnings by sheet; notes ask for nothing. */
function countBySheet(list: readonly Finding[]): ReadonlyMap<string, Count> {
  const counts = new Map<string, Count>();
  for (const { sheet, level } of list) {
    if (level === 'note') continue;
    const before = counts.get(sheet);
    counts.set(sheet, { level: before?.level ?? level, count: (before?.count ?? 0) + 1 });
  }
  return counts;
}

function Found({ count }: { readonly count: Count | undefined }) {
  if (count === undefined) return null;
  const words = `${count.count} ${count.count === 1 ? 'thing' : 'things'} to look at`;
  return (
    <span class={`attention-mark level-${count.level}`} title={words}>
      <span aria-hidden="true">{count.count}</span>
      <span class="spoken">, {words},</span>
    </span>
  );
}
