// The browser workbook's entry: finds the workbook to open, keeps its working copy from then on, and draws the page.
// Nothing imports it; it may call what stands beside it in ui/browser.

import { render } from 'preact';
import { App } from './app.tsx';
import { startAppearance } from './appearance.ts';
import { startKeeping } from './working-copy/keeper.ts';
import { becomeWriter } from './working-copy/one-writer.ts';
import { openAtStart } from './working-copy/open.ts';
import './tokens.css';
import './page.css';
import './parts/parts.css';
import './grid/grid.css';
import './entry/entry.css';
import './formula-line/formula-line.css';
import './form/form.css';

startAppearance();
const place = document.getElementById('app');
if (place !== null) render(<App />, place);
await becomeWriter(openAtStart);
await openAtStart();
startKeeping();
