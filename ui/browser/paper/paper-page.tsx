// Pages for paper in the page: which pages, which week, which labels are chosen, how they will look, and the button that prints them.

import { useState } from 'preact/hooks';
import { type Book, civilDayOfIso, isoDate, settings } from '../../../engine/index.ts';
import { Choice } from '../pictures/kit/choice.tsx';
import '../pictures/kit/pictures.css';
import '../pictures/picture-page.css';
import { desk, setDesk } from '../store/device.ts';
import { view } from '../store/view.ts';
import { workbook } from '../store/workbook.ts';
import { Beds, Calendar } from './bed-drawings.tsx';
import {
  LABEL_GRIDS,
  type Label,
  type LabelGrid,
  type LabelKind,
  labelGrid,
  labelSheets,
  labelsInWords,
  rowLabels,
  trayLabels,
} from './labels.ts';
import { ordersOnPaper } from './order-pages.ts';
import { PaperTables } from './paper-tables.tsx';
import { SheetPage } from './sheet-page.tsx';
import { sowingOnPaper } from './sowing-pages.ts';
import { weekOnPaper } from './week-pages.ts';

const PAGES = [
  { id: 'week', name: 'Jobs of a week' },
  { id: 'sowing', name: 'Sowing list' },
  { id: 'orders', name: 'Orders' },
  { id: 'labels', name: 'Labels' },
  { id: 'beds', name: 'Beds of a week' },
  { id: 'calendar', name: 'Calendar of beds' },
  { id: 'sheet', name: 'Any sheet' },
] as const;

export function PaperPage({ pages }: { readonly pages: string }) {
  const book = workbook();
  const shown = PAGES.find(({ id }) => id === pages) ?? PAGES[0];
  const [day, setDay] = useState(settings(book).today);
  return (
    <div class="paper-page">
      <div class="paper-choices">
        <h2>Paper</h2>
        <nav class="picture-names" aria-label="Pages">
          {PAGES.map(({ id, name }) => (
            <button
              key={id}
              type="button"
              aria-current={id === shown.id ? 'page' : undefined}
              onClick={() => {
                view.value = { at: 'paper', pages: id };
              }}
            >
              {name}
            </button>
          ))}
        </nav>
        <p class="no-paper">A sheet also prints where it is open, through the view that is looked at.</p>
        <div class="picture-choices">
          {shown.id === 'week' || shown.id === 'beds' ? (
            <label>
              A day of the week{' '}
              <input
                type="date"
                value={isoDate(day)}
                onChange={({ currentTarget }) => setDay(civilDayOfIso(currentTarget.value) ?? day)}
              />
            </label>
          ) : null}
          <button type="button" class="primary" onClick={() => window.print()}>
            Print
          </button>
        </div>
      </div>
      <Shown id={shown.id} book={book} day={day} />
    </div>
  );
}

interface ShownProps {
  readonly id: (typeof PAGES)[number]['id'];
  readonly book: Book;
  readonly day: number;
}

function Shown({ id, book, day }: ShownProps) {
  switch (id) {
    case 'week':
      return <OrNothing paper={weekOnPaper(book, day)} without="This workbook has no sheet of jobs." />;
    case 'sowing':
      return <OrNothing paper={sowingOnPaper(book)} without="This workbook has no sowing list." />;
    case 'orders':
      return <Orders book={book} />;
    case 'labels':
      return <Labels />;
    case 'beds':
      return <Beds book={book} day={day} />;
    case 'sheet':
      return <SheetPage />;
    case 'calendar':
      return <Calendar book={book} />;
  }
}

function OrNothing({ paper, without }: { readonly paper: ReturnType<typeof weekOnPaper>; readonly without: string }) {
  return paper === undefined ? <p class="no-picture">{without}</p> : <PaperTables paper={paper} />;
}

function Orders({ book }: { readonly book: Book }) {
  const orders = ordersOnPaper(book);
  if (orders.length === 0) return <p class="no-picture">Nothing is to be ordered.</p>;
  return (
    <>
      {orders.map((order) => (
        <PaperTables key={order.title} paper={order} />
      ))}
    </>
  );
}

const KINDS: readonly { readonly value: LabelKind; readonly words: string }[] = [
  { value: 'trays', words: 'a label a tray' },
  { value: 'rows', words: 'a label a planting' },
];

/** Reads the workbook itself: a part that keeps something is drawn again only for what it reads. */
function Labels() {
  const book = workbook();
  const [kind, setKind] = useState<LabelKind>('trays');
  const grid = labelGrid(book, desk.value.labels);
  const labels = kind === 'trays' ? trayLabels(book) : rowLabels(book);
  if (grid === undefined) return null;
  const sheets = labelSheets(labels, grid);
  return (
    <>
      <div class="paper-choices">
        <Choice
          label="For"
          value={kind}
          options={KINDS}
          onChoose={(value) => setKind(value === 'rows' ? 'rows' : 'trays')}
        />
        <Choice
          label="Sheet of labels"
          value={grid.id}
          options={LABEL_GRIDS.map(({ id, name }) => ({ value: id, words: name }))}
          onChoose={(labels) => setDesk({ labels })}
        />
        <p>
          {labels.length === 0
            ? 'There is nothing to label yet.'
            : `${labelsInWords(labels.length, sheets.length)}. Print at full size, without margins.`}
        </p>
      </div>
      {sheets.map((sheet, index) => (
        <LabelSheet key={`${grid.id} ${index}`} labels={sheet} grid={grid} />
      ))}
    </>
  );
}

/** A hair less tall than the sheets of paper: a page is rounded to whole pixels, and what is taller by a part of one spills over. */
const SHEETS = { letter: { width: 215.9, height: 279 }, A4: { width: 210, height: 296.6 } } as const;

function LabelSheet({ labels, grid }: { readonly labels: readonly Label[]; readonly grid: LabelGrid }) {
  const { across, width, height, left, top, gap } = grid;
  const page = SHEETS[grid.page];
  return (
    <div class={`label-sheet on-${grid.page}`} style={{ width: `${page.width}mm`, height: `${page.height}mm` }}>
      {labels.map(({ head, lines }, index) => (
        <div
          key={`${head} ${index}`}
          class="label"
          style={{
            left: `${left + (index % across) * (width + gap)}mm`,
            top: `${top + Math.floor(index / across) * height}mm`,
            width: `${width}mm`,
            height: `${height}mm`,
          }}
        >
          <b>{head}</b>
          {lines.map((line) => (
            <span key={line}>{line}</span>
          ))}
        </div>
      ))}
    </div>
  );
}
