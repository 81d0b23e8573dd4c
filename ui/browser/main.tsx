// The browser workbook's entry: draws the page. Nothing imports it; it may call what stands beside it in ui/browser.

import { render } from 'preact';

const place = document.getElementById('app');
if (place !== null) render(<h1>Dibble</h1>, place);
