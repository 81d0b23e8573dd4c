// The browser workbook's entry: finds the workbook to open, keeps its working copy from then on, and draws the page.
// Nothing imports it; it may call what stands beside it in ui/browser.

import { render } from 'preact';
import { App } from './app.tsx';
import { startKeys } from './commands/keys.ts';
import { saveWorkbook } from './files/own-file.ts';
import { startKeeping } from './keeping/keeper.ts';
import { openAtStart } from './keeping/start.ts';
import { startAppearance } from './store/appearance.ts';
import { startDesk } from './store/device.ts';
import { tell } from './store/notices.ts';
import { startPassing } from './store/passing.ts';
import { followWindow } from './store/screen.ts';
import { startSun } from './store/sun.ts';
import './tokens.css';
import './page.css';
import './page/parts.css';
import './page/view-bar.css';
import './grid/grid.css';
import './grid/marks.css';
import './entry/entry.css';
import './formula-line/formula-line.css';
import './form/form.css';
import './panels/row/row-panel.css';
import './paper/print.css';

startAppearance();
startSun();
followWindow();
startDesk();
startPassing();
startKeys();
const place = document.getElementById('app');
if (place !== null) render(<App />, place);
startKeeping({ saveToFile: () => void saveWorkbook() });
// Not awaited by the file itself: what is fetched later imports what was built with it, and would wait for the opening it is part of.
void openAtStart().then(() =>
  import('./page/once-open.ts').then(
    ({ startTheRest }) => startTheRest(),
    () =>
      tell('A part of the page could not be fetched: open it again before dropping a file on it or printing a sheet.'),
  ),
);
