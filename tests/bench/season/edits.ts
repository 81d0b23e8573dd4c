// The edits that the benchmark of the season makes, each one thing that a grower changes, in a workbook and on the floor. Which rows and
// to what follows from a fixed sequence, so that every run does the same work.

import { type Command, civilDay, rowId, rows, type Workbook } from '../../../engine/index.ts';
import { sequence } from '../small/season.ts';
import type { SeasonFloor } from './floor/floor.ts';

export interface Edit {
  readonly command: Command;
  /** The same on the floor. */
  readonly onFloor: (floor: SeasonFloor) => void;
}

export interface EditKind {
  readonly name: string;
  /** One after another, all over the sheet; another `run` gives others, so that none is done twice. */
  edits(workbook: Workbook, count: number, run?: number): readonly Edit[];
}

export function commandsOf(kind: EditKind, workbook: Workbook, count: number, run?: number): readonly Command[] {
  return kind.edits(workbook, count, run).map(({ command }) => command);
}

/** Sets a column of rows taken from all over a sheet to what follows from a number in [0, 1). */
function scattered(
  name: string,
  [sheet, column]: readonly [sheet: string, column: string],
  entry: (share: number) => string,
  onFloor: (floor: SeasonFloor, slot: number, share: number) => void,
): EditKind {
  return {
    name,
    edits(workbook, count, run = 1) {
      const next = sequence(7 * run);
      const slots = rows(workbook, sheet);
      return Array.from({ length: count }, (): Edit => {
        const slot = slots[Math.floor(next() * slots.length)] ?? 0;
        const share = next();
        return {
          command: { command: 'set cell', sheet, row: rowId(workbook, sheet, slot), column, entry: entry(share) },
          onFloor: (floor) => onFloor(floor, slot, share),
        };
      });
    },
  };
}

const quarterInches = (share: number): number => 12 + Math.floor(share * 36);

export const SPACING_EDIT = scattered(
  'spacing edit',
  ['plantings', 'in-row-spacing'],
  (share) => `${quarterInches(share) / 4} in`,
  (floor, planting, share) => floor.spacing(planting, (quarterInches(share) / 4) * 0.0254),
);

const FIRST_DAY = civilDay(2027, 3, 1);
/** Early enough that all is harvested within the season: the floor reckons with no harvest that another season counts. */
const dayOf = (share: number): number => FIRST_DAY + Math.floor(share * 60);

export const DATE_EDIT = scattered(
  'date edit',
  ['plantings', 'planted-out'],
  (share) => new Date(dayOf(share) * 86_400_000).toISOString().slice(0, 10),
  (floor, planting, share) => floor.plantedOut(planting, dayOf(share)),
);

const percent = (share: number): number => 60 + Math.floor(share * 38);

export const VARIETY_EDIT = scattered(
  'variety edit',
  ['varieties', 'germination'],
  (share) => `${percent(share)}%`,
  (floor, variety, share) => floor.germination(variety, percent(share) / 100),
);

const JUNE = 5;

/** A degree or two more or less in June. */
export const CLIMATE_EDIT: EditKind = {
  name: 'climate edit',
  edits: (_, count) =>
    Array.from({ length: count }, (__, call): Edit => {
      const degrees = 76 + (call % 5);
      const at = { sheet: 'monthly-climate', row: 'june', column: 'high' };
      return {
        command: { command: 'set cell', ...at, entry: `${degrees} degF` },
        onFloor: (floor) => floor.high(JUNE, ((degrees + 459.67) * 5) / 9),
      };
    }),
};

export const EDITS: readonly EditKind[] = [SPACING_EDIT, DATE_EDIT, VARIETY_EDIT, CLIMATE_EDIT];

/** Does a command as a person would; throws what a refusal says. */
export function edit(workbook: Workbook, command: Command): void {
  const done = workbook.do([command], { code: 'type cell', parts: {} });
  if (done.refused) throw new Error(done.why);
}
