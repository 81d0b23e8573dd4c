// The edits that the benchmark of the season makes, each one thing that a grower changes. Which rows and to what follows from a
// fixed sequence, so that every run does the same work.

import { type Command, rowId, rows, type Workbook } from '../../../engine/index.ts';
import { sequence } from '../small/season.ts';

export interface EditKind {
  readonly name: string;
  /** One after another, each of another row than the one before wherever there are several. */
  commands(workbook: Workbook, count: number): readonly Command[];
}

const FIRST_DAY = Date.UTC(2027, 2, 1);

/** Sets a column of rows taken from all over a sheet to what `entry` gives for a number in [0, 1). */
function scattered(name: string, sheet: string, column: string, entry: (share: number) => string): EditKind {
  return {
    name,
    commands(workbook, count) {
      const next = sequence(7);
      const slots = rows(workbook, sheet);
      return Array.from({ length: count }, (): Command => {
        const slot = slots[Math.floor(next() * slots.length)] ?? 0;
        return { command: 'set cell', sheet, row: rowId(workbook, sheet, slot), column, entry: entry(next()) };
      });
    },
  };
}

export const SPACING_EDIT = scattered('spacing edit', 'plantings', 'in-row-spacing', (share) => {
  return `${(3 + Math.floor(share * 36) / 4).toFixed(2)} in`;
});

export const DATE_EDIT = scattered('date edit', 'plantings', 'planted-out', (share) =>
  new Date(FIRST_DAY + Math.floor(share * 120) * 86_400_000).toISOString().slice(0, 10),
);

export const VARIETY_EDIT = scattered('variety edit', 'varieties', 'germination', (share) => {
  return `${60 + Math.floor(share * 38)}%`;
});

/** A degree or two more or less in June. */
export const CLIMATE_EDIT: EditKind = {
  name: 'climate edit',
  commands: (_, count) =>
    Array.from({ length: count }, (__, call): Command => {
      return {
        command: 'set cell',
        sheet: 'monthly-climate',
        row: 'june',
        column: 'high',
        entry: `${76 + (call % 5)} degF`,
      };
    }),
};

export const EDITS: readonly EditKind[] = [SPACING_EDIT, DATE_EDIT, VARIETY_EDIT, CLIMATE_EDIT];

/** Does a command as a person would; throws what a refusal says. */
export function edit(workbook: Workbook, command: Command): void {
  const done = workbook.do([command], { code: 'type cell', parts: {} });
  if (done.refused) throw new Error(done.why);
}
