// A process that changes a workbook file by the terminal's `set`, again and again, as trials of the terminal ask: it tells every
// figure that it was told is written, so that whoever kills it knows what must be there.
// `node ui/run.mjs tests/faults/terminal-writer.ts FILE ROW FIRST COUNT [OPTION ...]`

import { runWith } from '../terminal/terminal.ts';

const [file = '', row = '', first = '', count = '', ...options] = process.argv.slice(2);

process.stdout.write('ready\n');
for (let i = 0; i < Number(count); i++) {
  const figure = Number(first) + i;
  const { status, err } = await runWith(['set', file, 'Beds', row, 'Length', `${figure} ft`, ...options]);
  process.stdout.write(status === 0 ? `written ${figure}\n` : `refused ${figure} ${status} ${err}`);
}
