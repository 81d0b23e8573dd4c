// Reads a file for a sheet beside the page, so that the page stays in hand however large the file is: opens a copy of the
// workbook, checks every row against it, tells how far it is, and gives the commands once they are asked for. Taking it down is
// how reading is cancelled.

import {
  loadGeneralUnits,
  type RowsFailure,
  type RowsRead,
  readRowsOrStation,
  readTableFile,
  settings,
  sheetView,
  type TableRead,
  type Workbook,
  wantsGeneralUnits,
} from '../../../engine/index.ts';
import { formatTools } from '../../format-tools.ts';
import { openCopy } from '../files/open-copy.ts';
import { newId } from '../files/world.ts';
import { writingOf } from '../store/writing.ts';
import { cutAfter } from './cutting.ts';
import type { Asked, Choices, Reading, Told } from './messages.ts';

interface Work {
  readonly bytes: Uint8Array;
  readonly sheet: string;
  readonly open: () => Promise<Workbook | string>;
  workbook: Workbook;
  /** The table as it was read last, and how. */
  table: { readonly read: TableRead; readonly as: string } | undefined;
  rows: RowsRead | RowsFailure | undefined;
  generalUnits: boolean;
}

/** Rows and cells of a message. */
const IN_A_MESSAGE = 1_000;

let work: Work | undefined;

let turn = 0;

addEventListener('message', ({ data }: MessageEvent<Asked>) => {
  if (data.ask !== 'take') turn = data.turn;
  void answer(data).catch((fault: unknown) => {
    const said = fault instanceof Error ? fault.message : String(fault);
    tell({ told: 'failed', why: `The file could not be read (a fault in Dibble: ${said}).`, turn, reading: undefined });
  });
});

function tell(told: Told): void {
  postMessage(told);
}

async function answer(asked: Asked): Promise<void> {
  switch (asked.ask) {
    case 'read':
      work = await begin(asked);
      if (work !== undefined) await check(work, asked.choices);
      return;
    case 'again':
      if (work !== undefined) await check(work, asked.choices);
      return;
    case 'take': {
      let commands = work?.rows?.ok === true ? work.rows.commands : [];
      while (commands.length > 0) {
        const { part, rest } = cutAfter(commands, IN_A_MESSAGE);
        tell({ told: 'commands', commands: part });
        commands = rest;
      }
      tell({ told: 'all commands', generalUnits: work?.generalUnits === true });
    }
  }
}

/** undefined where the workbook could not be opened, which is told. */
async function begin({ bytes, data, sheet }: Extract<Asked, { ask: 'read' }>): Promise<Work | undefined> {
  const open = () => openCopy(data, 'import');
  const workbook = await open();
  if (typeof workbook !== 'string')
    return { bytes, sheet, open, workbook, table: undefined, rows: undefined, generalUnits: false };
  tell({ told: 'failed', why: workbook, turn, reading: undefined });
  return undefined;
}

async function check(work: Work, choices: Choices): Promise<void> {
  const view = sheetView(work.workbook, work.sheet);
  if (view === undefined) return;
  const as = JSON.stringify([choices.encoding, choices.delimiter, choices.table]);
  if (work.table?.as !== as) {
    work.table = { as, read: await readTableFile(work.bytes, view, formatTools, choices) };
  }
  const { read } = work.table;
  if (!read.ok) {
    tell({ told: 'failed', why: read.why, turn, reading: undefined });
    return;
  }
  const progress = (done: number, of: number) => tell({ told: 'progress', turn, done, of });
  // The workbook of the worker reads as files are written; what is told of it is looked at on the page.
  const writing = writingOf(settings(work.workbook).locale);
  let rows = readRowsOrStation(work.workbook, work.sheet, read, { ...choices, newId, progress, writing });
  const failed = !rows.ok || rows.refused > 0;
  if (failed && wantsGeneralUnits()) {
    // What was refused for the want of the list is read once more with it, in a workbook that knows it.
    await loadGeneralUnits();
    const again = await work.open();
    if (typeof again !== 'string') work.workbook = again;
    work.generalUnits = true;
    rows = readRowsOrStation(work.workbook, work.sheet, read, { ...choices, newId, progress, writing });
  }
  work.rows = rows;
  const { tables, table, text, records } = read;
  const { columns } = rows;
  const reading: Reading = {
    tables,
    table,
    text,
    rows: records.length,
    columns,
    decimal: rows.ok ? rows.decimal : undefined,
  };
  if (!rows.ok) {
    tell({ told: 'failed', why: rows.why, turn, reading });
    return;
  }
  const { commands: _, columns: __, ok: ___, decimal: ____, ...preview } = rows;
  tell({ told: 'preview', turn, reading, preview });
}
