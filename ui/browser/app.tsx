// The page: the list of sheets, the top and formula lines, the sheet, the panel of the row in hand, the bottom line. Below
// 700 px the cards stand in their place.

import { signal } from '@preact/signals';
import { rows, type SheetView, sheetView } from '../../engine/index.ts';
import { openMenu } from './commands/menu-state.ts';
import { keptList } from './dialogs/kept-state.ts';
import { keysPage } from './dialogs/keys-state.ts';
import { localeDialog } from './dialogs/locale-state.ts';
import { lookDialog } from './dialogs/look-state.ts';
import { newColumn } from './dialogs/new-column-state.ts';
import { noteInHand } from './dialogs/note-state.ts';
import { pendingPaste } from './dialogs/paste-state.ts';
import { pendingUpgrade } from './dialogs/upgrade-state.ts';
import { shownView } from './glance/opening.ts';
import { pendingImport } from './importing/import-state.ts';
import { choosing } from './keeping/start.ts';
import { formulaTried, ownSheets } from './own/own-open.ts';
import { BottomLine } from './page/bottom-line.tsx';
import { fetchFormulaLine, fetchGrid } from './page/fetch-grid.ts';
import { later, laterTyped } from './page/later.tsx';
import { NoticeCorner } from './page/notice-corner.tsx';
import { SheetHead } from './page/sheet-head.tsx';
import { SheetList } from './page/sheet-list.tsx';
import { TopLine } from './page/top-line.tsx';
import { ViewBar } from './page/view-bar.tsx';
import { desk, setDesk } from './store/device.ts';
import { finding } from './store/find.ts';
import { drawer, narrow } from './store/screen.ts';
import { sheetOnScreen } from './store/selection.ts';
import { type View, view } from './store/view.ts';
import { isOpen, screens, workbook } from './store/workbook.ts';
import { Bars } from './what-if/bars.tsx';
import { whatIf } from './what-if/what-if-state.ts';

const PhoneView = later(() => import('./phone/phone-view.tsx').then((part) => part.PhoneView));
const Menu = laterTyped(() => import('./commands/menu.tsx').then((part) => part.Menu));
const Grid = later(fetchGrid);
const FormulaLine = later(fetchFormulaLine);
const EmptySheet = later(() => import('./page/empty-sheet.tsx').then((part) => part.EmptySheet));
const FormSheet = later(() => import('./form/form-sheet.tsx').then((part) => part.FormSheet));
const RowPanel = later(() => import('./panels/row/row-panel.tsx').then((part) => part.RowPanel));
const ImportDialog = laterTyped(() => import('./importing/import-dialog.tsx').then((part) => part.ImportDialog));
const KeptDialog = laterTyped(() => import('./dialogs/kept/kept-dialog.tsx').then((part) => part.KeptDialog));
const NewColumnDialog = laterTyped(() =>
  import('./dialogs/new-column-dialog.tsx').then((part) => part.NewColumnDialog),
);
const PasteDialog = laterTyped(() => import('./dialogs/paste-dialog.tsx').then((part) => part.PasteDialog));
const NoteDialog = laterTyped(() => import('./dialogs/note-dialog.tsx').then((part) => part.NoteDialog));
const LookDialogs = laterTyped(() => import('./dialogs/look-dialogs.tsx').then((part) => part.LookDialogs));
const LocaleDialog = laterTyped(() => import('./dialogs/locale-dialog.tsx').then((part) => part.LocaleDialog));
const KeysPage = laterTyped(() => import('./dialogs/keys-page.tsx').then((part) => part.KeysPage));
const FindBar = laterTyped(() => import('./page/find-bar.tsx').then((part) => part.FindBar));
const UpgradeDialog = laterTyped(() => import('./dialogs/upgrade-dialog.tsx').then((part) => part.UpgradeDialog));
const OwnDialog = laterTyped(() => import('./own/own-dialog.tsx').then((part) => part.OwnDialog));
const FormulaDialog = laterTyped(() => import('./own/formula-dialog.tsx').then((part) => part.FormulaDialog));
const WhatIfDialog = laterTyped(() => import('./what-if/what-if-dialog.tsx').then((part) => part.WhatIfDialog));
const GlancePage = later(() => import('./glance/glance-page.tsx').then((part) => part.GlancePage));

const PicturePage = later(() => import('./pictures/picture-page.tsx').then((part) => part.PicturePage));
const PaperPage = later(() => import('./paper/paper-page.tsx').then((part) => part.PaperPage));
const ScratchPage = later(() => import('./scratch/scratch-page.tsx').then((part) => part.ScratchPage));
const FirstVisit = later(() => import('./first-visit/first-visit.tsx').then((part) => part.FirstVisit));

const FirstChoice = later(() => import('./first-visit/first-choice.tsx').then((part) => part.FirstChoice));

const WHOLE_NAMES = {
  glance: 'The season at a glance',
  pictures: 'Pictures',
  paper: 'Paper',
  scratch: 'Scratch paper',
  'first visit': 'A new season',
} as const;

/** The whole page; empty until a workbook is open. */
export function App() {
  if (!isOpen.value) return choosing.value ? <FirstChoice /> : <p class="opening">Opening the workbook ...</p>;
  return (
    <>
      {narrow.value ? <PhoneView /> : <Desk />}
      {pendingImport.value === undefined ? null : <ImportDialog />}
      {newColumn.value === undefined ? null : <NewColumnDialog />}
      {pendingUpgrade.value === undefined ? null : <UpgradeDialog />}
      {pendingPaste.value === undefined ? null : <PasteDialog />}
      {noteInHand.value === undefined ? null : <NoteDialog />}
      {lookDialog.value === undefined ? null : <LookDialogs />}
      {keysPage.value ? <KeysPage /> : null}
      {localeDialog.value ? <LocaleDialog /> : null}
      {keptList.value === undefined ? null : <KeptDialog />}
      {whatIf.value === undefined ? null : <WhatIfDialog />}
      {ownSheets.value === undefined ? null : <OwnDialog />}
      {formulaTried.value === undefined ? null : <FormulaDialog />}
      {openMenu.value === undefined ? null : <Menu />}
      <NoticeCorner />
    </>
  );
}

/** Where the panel lies over the sheet it begins shut, whatever a person has set up for wider windows. */
const drawerIsOpen = signal(false);

function Desk() {
  const shown = shownView(workbook(), view.value);
  if (shown.at !== 'sheet') return <Whole shown={shown} />;
  const kind = drawer.value ? 'drawer' : 'column';
  const { listFolded, panelFolded } = desk.value;
  const open = drawer.value ? drawerIsOpen.value : !panelFolded;
  const list = listFolded ? 'list-shut' : 'list-open';
  return (
    <div class={`desk panel-${kind} ${open ? 'panel-open' : 'panel-shut'} ${list}`}>
      <TopLine />
      <SheetList />
      <div class="line-place">
        <FormulaLine />
      </div>
      <Sheet />
      <Panel />
      <BottomLine />
    </div>
  );
}

function WholeView({ shown }: { readonly shown: Exclude<View, { readonly at: 'sheet' }> }) {
  if (shown.at === 'pictures') return <PicturePage picture={shown.picture} />;
  if (shown.at === 'paper') return <PaperPage pages={shown.pages} />;
  if (shown.at === 'scratch') return <ScratchPage />;
  if (shown.at === 'first visit') return <FirstVisit />;
  return <GlancePage />;
}

/** What shows the season as a whole takes the room of formula line, sheet and panel. */
function Whole({ shown }: { readonly shown: Exclude<View, { readonly at: 'sheet' }> }) {
  return (
    <div class="desk desk-whole">
      <TopLine />
      <SheetList />
      <main class="whole" aria-label={WHOLE_NAMES[shown.at]}>
        <Bars />
        <WholeView shown={shown} />
      </main>
      <BottomLine />
    </div>
  );
}

function Sheet() {
  const sheet = sheetView(workbook(), sheetOnScreen.value);
  if (sheet === undefined) return <main class="sheet" />;
  const key = `${screens.value} ${sheet.id}`;
  return (
    <main class="sheet" aria-label={sheet.name}>
      <Bars />
      <SheetHead key={key} sheet={sheet} />
      {sheet.oneRow ? null : <ViewBar sheet={sheet} />}
      {finding.value.open === undefined ? null : <FindBar />}
      {sheet.oneRow ? <FormSheet key={key} sheet={sheet} /> : <GridOrEmpty key={key} sheet={sheet} />}
    </main>
  );
}

/** Below the rows where there are none yet: what the sheet waits for. */
function GridOrEmpty({ sheet }: { readonly sheet: SheetView }) {
  return (
    <>
      <Grid sheet={sheet.id} />
      {rows(workbook(), sheet.id).length === 0 ? <EmptySheet sheet={sheet} /> : null}
    </>
  );
}

/** The panel of the row in hand: a column of its own, or a drawer over the sheet on narrower windows. */
function Panel() {
  const open = drawer.value ? drawerIsOpen.value : !desk.value.panelFolded;
  const words = open ? 'Fold the panel away' : 'Show the row in hand';
  return (
    <aside class="panel" aria-label="The row in hand">
      <button
        type="button"
        class="fold"
        aria-expanded={open}
        title={words}
        onClick={() => {
          if (drawer.peek()) drawerIsOpen.value = !open;
          else setDesk({ panelFolded: open });
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
