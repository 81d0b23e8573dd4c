// What Dibble's engine takes for a season of the template: opening, everything again, edits, an import and its undo, a branch,
// the attention list. CPU time in milliseconds. bench.ts prints it beside the floor.

import { Findings, readWorkbookFile, Workbook, writeWorkbookFile } from '../../../engine/index.ts';
import { type Cost, costOf, timed } from '../cpu.ts';
import type { CopiedBook } from './copies.ts';
import { commandsOf, type EditKind, edit, SPACING_EDIT } from './edits.ts';

export interface Figure {
  readonly what: string;
  readonly cost: Cost;
}

const once = (cost: number): Cost => ({ p50: cost, p95: cost });

/** A file's text to a workbook with everything worked out. */
export function opening({ text, world }: CopiedBook): Figure {
  const open = (): Workbook => {
    const read = readWorkbookFile(text, world.templates);
    const workbook = read.ok ? Workbook.open(read.data, world) : undefined;
    if (workbook === undefined) throw new Error('The season can’t be opened again.');
    return workbook;
  };
  return { what: 'open', cost: once(timed(open)[0]) };
}

export function editing(workbook: Workbook, kind: EditKind, warm: number, calls: number): Figure {
  const commands = commandsOf(kind, workbook, warm + calls);
  for (const command of commands.slice(0, warm)) edit(workbook, command);
  const measured = commands.slice(warm);
  const cost = costOf(measured.length, (call) => {
    const command = measured[call];
    if (command !== undefined) edit(workbook, command);
  });
  return { what: kind.name, cost };
}

/** As many plantings again as there are, as one import of rows, and then taken back in one step. */
export function importing(workbook: Workbook): readonly Figure[] {
  const given = workbook.data().rows.plantings ?? [];
  const columns = [...new Set(given.flatMap(({ cells }) => Object.keys(cells)))];
  const rows = given.map(({ cells }) => ({
    row: workbook.newId(),
    cells: columns.map((column) => (column === 'planting' ? `${cells[column]} again` : (cells[column] ?? null))),
  }));
  const [taken] = timed(() => {
    const done = workbook.do([{ command: 'put rows', sheet: 'plantings', columns, rows }], {
      code: 'import file',
      parts: { file: 'rows.csv', sheet: 'Plantings' },
    });
    if (done.refused) throw new Error(done.why);
  });
  const [undone] = timed(() => workbook.undo());
  return [
    { what: `import of ${rows.length} rows`, cost: once(taken) },
    { what: 'undo of that import', cost: once(undone) },
  ];
}

export function others(workbook: Workbook): readonly Figure[] {
  const spacing = commandsOf(SPACING_EDIT, workbook, 20);
  const findings = new Findings(workbook);
  findings.all();
  return [
    { what: 'everything again', cost: costOf(3, () => workbook.recalculateAll()) },
    { what: 'branch', cost: costOf(20, () => workbook.branch()) },
    {
      what: 'branch with a spacing edit',
      cost: costOf(spacing.length, (call) => {
        const command = spacing[call];
        if (command !== undefined) edit(workbook.branch(), command);
      }),
    },
    { what: 'attention list anew', cost: costOf(3, () => new Findings(workbook).all()) },
    {
      what: 'attention list after a spacing edit',
      cost: attention(workbook, findings),
    },
    { what: 'text for keeping', cost: costOf(3, () => writeWorkbookFile(workbook.data())) },
  ];
}

/** The list alone: the edit before it is not counted. */
function attention(workbook: Workbook, findings: Findings): Cost {
  const times = commandsOf(SPACING_EDIT, workbook, 20)
    .map((command) => {
      edit(workbook, command);
      return timed(() => findings.all())[0];
    })
    .sort((a, b) => a - b);
  return { p50: times[10] ?? 0, p95: times[19] ?? 0 };
}
