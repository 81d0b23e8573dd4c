// Opens a spreadsheet file as scratch papers: picks it, reads it beside the page, brings its sheets in as one step.

import { askOnce } from '../files/ask-once.ts';
import { pickFile } from '../files/pick.ts';
import { tell } from '../store/notices.ts';
import { bringPapers } from './paper-hand.ts';
import type { PapersRead } from './xlsx-papers.ts';

const XLSX = '.xlsx,application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

export function openPapers(): void {
  pickFile(XLSX, (file) => void bring(file));
}

async function bring(file: File): Promise<void> {
  const read = await readBeside(new Uint8Array(await file.arrayBuffer()));
  if (!read.ok) {
    tell(`${file.name}: ${read.why}`, 'refusal');
    return;
  }
  if (!bringPapers(read.sheets, file.name)) return;
  const papers = read.sheets.length === 1 ? 'one paper' : `${read.sheets.length} papers`;
  const off = read.leftOff === 0 ? '' : ` ${read.leftOff} cells beyond column ZZ or the last row were left off.`;
  const names = new Intl.ListFormat('en').format(read.namesLeft);
  const left =
    names === '' ? '' : ` ${names} in its formulas stand for nothing that a paper can read: put cells in their place.`;
  tell(`${file.name} is ${papers} now: formulas and figures, without the looks of cells.${off}${left}`);
}

function readBeside(bytes: Uint8Array): Promise<PapersRead> {
  const worker = new Worker(new URL('./xlsx-papers-worker.ts', import.meta.url), { type: 'module' });
  const why = 'The part that reads XLSX files could not be fetched: open the page again.';
  return askOnce<PapersRead>(worker, bytes, why).catch(() => ({ ok: false, why }));
}
