// Any sheet as a page for paper: which sheet and which of its views are chosen above it, at first those that are looked at.

import { useState } from 'preact/hooks';
import { sheetView, sheetViews } from '../../../engine/index.ts';
import { Choice } from '../pictures/kit/choice.tsx';
import { viewOn, viewsOf } from '../store/looks.ts';
import { sheetOnScreen } from '../store/selection.ts';
import { workbook } from '../store/workbook.ts';
import { lookNow } from './look-now.ts';
import { PaperTables } from './paper-tables.tsx';
import { sheetOnPaper } from './sheet-pages.ts';

/** Reads the workbook itself: a part that keeps something is drawn again only for what it reads. */
export function SheetPage() {
  const book = workbook();
  const [chosenSheet, chooseSheet] = useState(sheetOnScreen.peek());
  const [chosenView, chooseView] = useState<string | undefined>(undefined);
  const sheet = sheetView(book, chosenSheet) ?? sheetViews(book)[0];
  if (sheet === undefined) return <p class="no-picture">This workbook has no sheets.</p>;
  const views = sheet.oneRow ? [] : viewsOf(sheet);
  const view = views.find(({ id }) => id === chosenView) ?? viewOn(sheet);
  return (
    <>
      <div class="paper-choices">
        <Choice
          label="Sheet"
          value={sheet.id}
          options={sheetViews(book).map(({ id, name }) => ({ value: id, words: name }))}
          onChoose={(id) => {
            chooseSheet(id);
            chooseView(undefined);
          }}
        />
        {views.length < 2 ? null : (
          <Choice
            label="Looked at through"
            value={view.id}
            options={views.map(({ id, name }) => ({ value: id, words: name }))}
            onChoose={chooseView}
          />
        )}
      </div>
      <PaperTables paper={sheetOnPaper(book, sheet, lookNow(sheet, view))} />
    </>
  );
}
