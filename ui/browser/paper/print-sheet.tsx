// Printing the sheet on screen: the grid draws only what is in sight, so just before the browser prints, all that its view shows is set as
// tables beside the page, and taken away afterwards. The page starts it once.

import { render } from 'preact';
import { sheetView } from '../../../engine/index.ts';
import { shownView } from '../glance/opening.ts';
import { viewNow } from '../store/looks.ts';
import { sheetOnScreen } from '../store/selection.ts';
import { view } from '../store/view.ts';
import { workbookNow } from '../store/workbook.ts';
import { lookNow } from './look-now.ts';
import { PaperTables } from './paper-tables.tsx';
import { sheetOnPaper } from './sheet-pages.ts';

const PRINTING = 'is-printing-sheet';

export function startPrinting(): void {
  let place: HTMLElement | undefined;
  window.addEventListener('beforeprint', () => {
    const book = workbookNow();
    const sheet = book === undefined ? undefined : sheetView(book, sheetOnScreen.peek());
    if (book === undefined || sheet === undefined || shownView(book, view.peek()).at !== 'sheet') return;
    place = document.createElement('div');
    place.className = 'print-only';
    document.body.append(place);
    document.documentElement.classList.add(PRINTING);
    render(<PaperTables paper={sheetOnPaper(book, sheet, lookNow(sheet, viewNow(sheet)))} isWhole />, place);
  });
  window.addEventListener('afterprint', () => {
    if (place === undefined) return;
    render(null, place);
    place.remove();
    place = undefined;
    document.documentElement.classList.remove(PRINTING);
  });
}
