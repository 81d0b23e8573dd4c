// The page: the list of sheets, the top and formula lines, the sheet, the panel of the row in hand, the bottom line. Below
// 700 px the cards stand in their place.

import { signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { TableView } from '../../engine/index.ts';
import { FormSheet } from './form/form-sheet.tsx';
import { FormulaLine } from './formula-line/formula-line.tsx';
import { Grid } from './grid/grid.tsx';
import { BottomLine } from './parts/bottom-line.tsx';
import { ImportDialog } from './parts/import-dialog.tsx';
import { Menu } from './parts/menu.tsx';
import { MessageCorner } from './parts/message-corner.tsx';
import { NewColumnDialog } from './parts/new-column-dialog.tsx';
import { SheetHead } from './parts/sheet-head.tsx';
import { SheetList } from './parts/sheet-list.tsx';
import { TopLine } from './parts/top-line.tsx';
import { PhoneView } from './phone/phone-view.tsx';
import { RowPanel } from './row-panel/row-panel.tsx';
import { drawer, isOpen, narrow, openings, redo, tableOnScreen, undo, workbook } from './state.ts';
import { saveFile } from './working-copy/open.ts';

/** The whole page; empty until a workbook is open. */
export function App() {
  useEffect(() => {
    window.addEventListener('keydown', onPageKey, true);
    return () => window.removeEventListener('keydown', onPageKey, true);
  }, []);
  if (!isOpen.value) return <p class="opening">Opening the workbook ...</p>;
  return (
    <>
      {narrow.value ? <PhoneView /> : <Desk />}
      <ImportDialog />
      <NewColumnDialog />
      <Menu />
      <MessageCorner />
    </>
  );
}

/** The panel begins open where it has a column of its own, and shut where it would lie over the sheet. */
const columnIsOpen = signal(true);
const drawerIsOpen = signal(false);

function Desk() {
  const kind = drawer.value ? 'drawer' : 'column';
  const open = drawer.value ? drawerIsOpen.value : columnIsOpen.value;
  return (
    <div class={`desk panel-${kind} ${open ? 'panel-open' : 'panel-shut'}`}>
      <TopLine />
      <SheetList />
      <FormulaLine />
      <Sheet />
      <Panel />
      <BottomLine />
    </div>
  );
}

function Sheet() {
  const table = workbook().table(tableOnScreen.value);
  if (table === undefined) return <main class="sheet" />;
  return (
    <main class="sheet" aria-label={table.name}>
      <SheetHead table={table} />
      {table.oneRow ? (
        <FormSheet key={`${openings.value} ${table.name}`} table={table} />
      ) : (
        <GridOrEmpty table={table} />
      )}
    </main>
  );
}

/** Below the rows where there are none yet: what the sheet waits for. */
function GridOrEmpty({ table }: { readonly table: TableView }) {
  const empty = workbook().rows(table.name).length === 0;
  return (
    <>
      <Grid key={`${openings.value} ${table.name}`} table={table.name} />
      {empty ? <p class="empty">{emptyWords(table)}</p> : null}
    </>
  );
}

function emptyWords({ name, source, key }: TableView): string {
  switch (source.from) {
    case 'entry':
      return `No rows yet. Type ${key === undefined ? 'in the first line' : `a name under ${key}`}, paste from a spreadsheet, or import a CSV file.`;
    case 'single':
      return '';
    case 'each':
      return `A row appears here for every row of ${source.table} that needs one; none does yet.`;
    case 'pairs':
      return `A row appears here for every pair of ${source.tables[0]} and ${source.tables[1]} that needs one; none does yet.`;
    case 'events':
      return 'A row appears here for every date filled in on the other sheets; there is none yet.';
    case 'span':
      return `${name} has no days yet: its first and last day are not known.`;
  }
}

/** The panel of the row in hand: a column of its own, or a drawer over the sheet on narrower windows. */
function Panel() {
  const shown = drawer.value ? drawerIsOpen : columnIsOpen;
  const open = shown.value;
  const words = open ? 'Fold the panel away' : 'Show the row in hand';
  return (
    <aside class="panel" aria-label="The row in hand">
      <button
        type="button"
        class="fold"
        aria-expanded={open}
        title={words}
        onClick={() => {
          shown.value = !open;
        }}
      >
        <span aria-hidden="true">{open ? '\u203a' : '\u2039'}</span>
        <span class="spoken">{words}</span>
      </button>
      {open ? (
        <div class="panel-inside">
          <RowPanel />
        </div>
      ) : null}
    </aside>
  );
}

/** Regions that F6 walks through, as selectors of what takes the focus in them. */
const REGIONS = [
  '#go-to',
  '.sheet-list [aria-current]',
  '.formula-box textarea',
  '.ag-cell[tabindex], .field-value',
  '.panel-inside button, .panel-inside input',
  '.attention-button',
];

/** Keys that work everywhere: undo, redo, save, go to, and F6 from region to region. */
function onPageKey(event: KeyboardEvent): void {
  const control = event.ctrlKey || event.metaKey;
  const key = event.key.toLowerCase();
  if (event.key === 'F6') {
    event.preventDefault();
    toNextRegion(event.shiftKey ? -1 : 1);
    return;
  }
  if (!control || event.altKey) return;
  // Inside a text that is being typed, undo is the text's own.
  const typing = isTyping(event.target);
  if (key === 'z' && !typing) act(event, event.shiftKey ? redo : undo);
  else if (key === 'y' && !typing) act(event, redo);
  else if (key === 's') act(event, saveFile);
  else if (key === 'k') act(event, () => document.getElementById('go-to')?.focus());
}

function act(event: KeyboardEvent, run: () => void): void {
  event.preventDefault();
  event.stopPropagation();
  run();
}

/** Whether the key goes into a text with changes of its own: an untouched formula line doesn't count. */
function isTyping(target: EventTarget | null): boolean {
  if (target instanceof HTMLTextAreaElement) return target.closest('.is-typing') !== null;
  return target instanceof HTMLInputElement && target.type === 'text';
}

function toNextRegion(step: number): void {
  const stops = REGIONS.map((region) => document.querySelector<HTMLElement>(region)).filter((stop) => stop !== null);
  const focused = document.activeElement;
  const at = REGIONS.findIndex((region) => focused?.matches(region) === true);
  const from = at < 0 ? stops.findIndex((stop) => stop.parentElement?.contains(focused) === true) : at;
  stops[(from + step + stops.length) % stops.length]?.focus();
}
