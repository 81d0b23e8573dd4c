// The one table of commands: what each is called, its keys and where they work, when it can be done, the menus it stands in.
// Keys (keys.ts), menus (menus.ts) and buttons (command-button.tsx) all read it. To add a command, add an entry here. Of
// entries with the same keys the first that applies is meant.

import { readImport } from '../dialogs/import-state.ts';
import { beginColumn } from '../dialogs/new-column-state.ts';
import { offerUpgrade } from '../dialogs/upgrade-state.ts';
import { downloadCsv, saveFile } from '../files/download.ts';
import { seasonToPlan } from '../files/fresh.ts';
import { openDemo, openFile, openFreshSeason } from '../files/open.ts';
import { pickFile, TABLE_FILES, WORKBOOK_FILES } from '../files/pick.ts';
import { newerTemplate } from '../files/read.ts';
import {
  active,
  beginLine,
  isTyping,
  leaveLine,
  markOffer,
  offered,
  takeLine,
  takeOffer,
} from '../formula-line/draft.ts';
import type { Move } from '../grid/ranges.ts';
import { toNextRegion } from '../page/regions.ts';
import { type Appearance, appearance } from '../store/appearance.ts';
import { redo, setUnits, undo } from '../store/change.ts';
import { hasFormula } from '../store/sheets.ts';
import { steps, units } from '../store/workbook.ts';
import { canTakeBack, clearCells, takeBack, takeTemplateFormula } from './cells.ts';
import { removeColumn } from './columns.ts';
import type { PageCommand } from './command.ts';
import { duplicateRow, removeRows } from './rows.ts';
import type { Situation } from './situation.ts';

/** Where undo is the workbook's: not in a text, which has an undo of its own. */
const OUTSIDE_TEXTS = ['grid', 'field', 'formula line', 'page'] as const;
const CELLS = ['grid', 'field'] as const;

const notTyping = ({ surface }: Situation): boolean => surface !== 'formula line' || !isTyping();
const hasOffers = (): boolean => offered.value !== undefined;

const DIRECTIONS: readonly (readonly [Move, string, string])[] = [
  ['up', 'ArrowUp', 'up'],
  ['down', 'ArrowDown', 'down'],
  ['left', 'ArrowLeft', 'to the left'],
  ['right', 'ArrowRight', 'to the right'],
];

const EDGES: readonly (readonly [Move, string, string])[] = [
  ['row start', 'Home', 'the start of the row'],
  ['row end', 'End', 'the end of the row'],
  ['sheet start', 'Ctrl Home', 'the first cell of the sheet'],
  ['sheet end', 'Ctrl End', 'the last cell of the sheet'],
];

const COLOURS: readonly (readonly [Appearance, string])[] = [
  ['system', 'Colours as the computer says'],
  ['light', 'Light colours'],
  ['dark', 'Dark colours'],
];

const EVERYWHERE: readonly PageCommand[] = [
  {
    id: 'undo',
    label: 'Undo',
    keys: ['Ctrl Z'],
    where: OUTSIDE_TEXTS,
    changes: true,
    applies: notTyping,
    refusal: () => (steps.value.undo === undefined ? 'Nothing to undo.' : undefined),
    run: undo,
  },
  {
    id: 'redo',
    label: 'Redo',
    keys: ['Ctrl Y', 'Ctrl Shift Z'],
    where: OUTSIDE_TEXTS,
    changes: true,
    applies: notTyping,
    refusal: () => (steps.value.redo === undefined ? 'Nothing to redo.' : undefined),
    run: redo,
  },
  { id: 'save', label: 'Save the workbook to a file', keys: ['Ctrl S'], run: saveFile },
  { id: 'open', label: 'Open a workbook file', run: () => pickFile(WORKBOOK_FILES, openFile) },
  {
    id: 'go to',
    label: 'Go to a sheet, row or column',
    keys: ['Ctrl K'],
    where: [...OUTSIDE_TEXTS, 'text'],
    run: () => document.getElementById('go-to')?.focus(),
  },
  { id: 'next region', label: 'To the next part of the page', keys: ['F6'], run: () => toNextRegion(1) },
  { id: 'previous region', label: 'To the part of the page before', keys: ['Shift F6'], run: () => toNextRegion(-1) },
  {
    id: 'us units',
    label: 'Show US customary units',
    changes: true,
    refusal: () => (units.value === 'us' ? 'They are shown already.' : undefined),
    run: () => setUnits('us'),
  },
  {
    id: 'si units',
    label: 'Show metric units',
    changes: true,
    refusal: () => (units.value === 'si' ? 'They are shown already.' : undefined),
    run: () => setUnits('si'),
  },
  {
    id: 'new season',
    label: 'New season',
    says: () => `New season ${seasonToPlan()}`,
    changes: true,
    menus: { workbook: 0 },
    run: () => void openFreshSeason(seasonToPlan()),
  },
  { id: 'demo farm', label: 'Demo farm', changes: true, menus: { workbook: 0 }, run: () => void openDemo() },
  {
    id: 'upgrade sheets',
    label: 'Bring the sheets up to date',
    changes: true,
    applies: ({ book }) => book !== undefined && newerTemplate(book) !== undefined,
    menus: { workbook: 1 },
    run: offerUpgrade,
  },
  ...COLOURS.map(
    ([choice, label]): PageCommand => ({
      id: `${choice} colours`,
      label,
      says: () => `${label}${appearance.value === choice ? ' (now)' : ''}`,
      menus: { workbook: 2 },
      run: () => {
        appearance.value = choice;
      },
    }),
  ),
];

const MOVES: readonly PageCommand[] = [
  ...DIRECTIONS.flatMap(([move, key, words]): readonly PageCommand[] => [
    {
      id: `stretch ${move}`,
      label: `Stretch the selection ${words}`,
      keys: [`Shift ${key}`],
      where: ['grid'],
      run: ({ grid }) => grid?.move(move, { stretch: true }),
    },
    {
      id: `stretch far ${move}`,
      label: `Stretch the selection all the way ${words}`,
      keys: [`Ctrl Shift ${key}`],
      where: ['grid'],
      run: ({ grid }) => grid?.move(move, { stretch: true, far: true }),
    },
  ]),
  ...EDGES.flatMap(([move, key, words]): readonly PageCommand[] => [
    { id: `to ${move}`, label: `Go to ${words}`, keys: [key], where: ['grid'], run: ({ grid }) => grid?.move(move) },
    {
      id: `stretch to ${move}`,
      label: `Stretch the selection to ${words}`,
      keys: [key.startsWith('Ctrl ') ? key.replace('Ctrl ', 'Ctrl Shift ') : `Shift ${key}`],
      where: ['grid'],
      run: ({ grid }) => grid?.move(move, { stretch: true }),
    },
  ]),
  {
    id: 'select rows',
    label: 'Select whole rows',
    keys: ['Shift Space'],
    where: ['grid'],
    run: ({ grid }) => grid?.selectRows(),
  },
  {
    id: 'select columns',
    label: 'Select whole columns',
    keys: ['Ctrl Space'],
    where: ['grid'],
    run: ({ grid }) => grid?.selectColumns(),
  },
  {
    id: 'select all',
    label: 'Select the whole sheet',
    keys: ['Ctrl A'],
    where: ['grid'],
    run: ({ grid }) => grid?.selectAll(),
  },
  {
    id: 'shrink',
    label: 'Back to the cell in hand alone',
    keys: ['Escape'],
    where: ['grid'],
    applies: ({ grid }) => grid?.isWide() === true,
    run: ({ grid }) => grid?.shrink(),
  },
];

const CELL_COMMANDS: readonly PageCommand[] = [
  {
    id: 'edit',
    label: 'Edit the cell',
    keys: ['Enter', 'F2'],
    where: ['grid'],
    changes: true,
    refusal: ({ column }) => (column?.role === 'made' ? 'This cell comes from other sheets.' : undefined),
    menus: { cell: 0 },
    run: ({ grid }) => grid?.startEditing(),
  },
  {
    id: 'take back',
    label: 'Take back to the formula',
    says: ({ cells }) => (cells.length > 1 ? 'Take cells back to their formulas' : 'Take back to the formula'),
    keys: ['Alt Backspace'],
    where: CELLS,
    changes: true,
    refusal: ({ book, cells }) =>
      book !== undefined && cells.some((cell) => canTakeBack(book, cell))
        ? undefined
        : 'Nothing was typed over a formula here.',
    menus: { cell: 0 },
    run: ({ cells }) => takeBack(cells),
  },
  {
    id: 'clear',
    label: 'Clear',
    keys: ['Delete', 'Backspace'],
    where: CELLS,
    changes: true,
    menus: { cell: 0 },
    run: ({ cells }) => clearCells(cells),
  },
  {
    id: 'fill down',
    label: 'Fill down',
    keys: ['Ctrl D'],
    where: ['grid'],
    changes: true,
    menus: { cell: 0 },
    run: ({ grid }) => grid?.fillDown(),
  },
  {
    id: 'copy',
    label: 'Copy',
    keys: ['Ctrl C'],
    where: ['grid'],
    clipboard: 'copy',
    menus: { cell: 1 },
    run: ({ grid }, clipboard) => copyTo(clipboard, grid?.copied()),
  },
  {
    id: 'cut',
    label: 'Cut',
    keys: ['Ctrl X'],
    where: ['grid'],
    clipboard: 'cut',
    changes: true,
    run: ({ grid, cells }, clipboard) => {
      copyTo(clipboard, grid?.copied());
      clearCells(cells);
    },
  },
  {
    id: 'paste',
    label: 'Paste',
    keys: ['Ctrl V'],
    where: ['grid'],
    clipboard: 'paste',
    changes: true,
    run: ({ grid }, clipboard) => grid?.paste(clipboard?.getData('text/plain') ?? ''),
  },
  {
    id: 'begin formula',
    label: 'Begin a formula for the column',
    keys: ['='],
    where: CELLS,
    changes: true,
    applies: ({ column }) => column !== undefined && hasFormula(column),
    run: () => beginLine('='),
  },
];

/** A menu's copy has no clipboard event to hand the text to. */
function copyTo(clipboard: DataTransfer | undefined, text: string | undefined): void {
  if (text === undefined) return;
  if (clipboard === undefined) void navigator.clipboard.writeText(text);
  else clipboard.setData('text/plain', text);
}

const isEntered = ({ sheet }: Situation): boolean => sheet?.entered === true;

const ROW_COMMANDS: readonly PageCommand[] = [
  {
    id: 'add row',
    label: 'Add a row',
    changes: true,
    applies: isEntered,
    refusal: ({ grid }) => (grid === undefined ? 'The rows are still on their way.' : undefined),
    menus: { cell: 2 },
    run: ({ grid }) => grid?.startNewRow(),
  },
  {
    id: 'duplicate row',
    label: 'Duplicate the row',
    changes: true,
    applies: isEntered,
    refusal: ({ rows }) => (rows.length === 1 ? undefined : 'Select one row to duplicate it.'),
    menus: { cell: 2 },
    run: ({ place, rows: [first] }) => {
      if (first !== undefined) duplicateRow(place.sheet, first);
    },
  },
  {
    id: 'remove rows',
    label: 'Remove the rows',
    says: ({ rows }) => (rows.length > 1 ? `Remove ${rows.length} rows` : 'Remove the row'),
    changes: true,
    applies: isEntered,
    refusal: ({ rows }) => (rows.length === 0 ? 'Select a row to remove it.' : undefined),
    menus: { cell: 2 },
    run: ({ sheet, rows }) => {
      if (sheet !== undefined) removeRows(sheet, rows);
    },
  },
  {
    id: 'import',
    label: 'Import CSV',
    changes: true,
    applies: isEntered,
    run: ({ place }) => pickFile(TABLE_FILES, (file) => void readImport(place.sheet, file)),
  },
  { id: 'download', label: 'Download CSV', run: ({ place }) => downloadCsv(place.sheet) },
];

const SORTS: readonly (readonly ['asc' | 'desc' | null, string])[] = [
  ['asc', 'Least first'],
  ['desc', 'Greatest first'],
  [null, 'In the order entered'],
];

const COLUMN_COMMANDS: readonly PageCommand[] = [
  ...SORTS.map(
    ([order, label]): PageCommand => ({
      id: `sort ${order ?? 'not'}`,
      label,
      menus: { column: 0 },
      run: ({ grid, column }) => grid?.sort(column?.id ?? '', order),
    }),
  ),
  {
    id: 'change formula',
    label: 'Change the formula of the column',
    says: ({ column }) => `Change the formula of ${column?.name ?? ''}`,
    changes: true,
    applies: ({ column }) => column !== undefined && hasFormula(column),
    menus: { cell: 3, column: 1 },
    run: ({ place, column }) => beginLine(`=${column?.formula ?? ''}`, { ...place, column: column?.id }),
  },
  {
    id: 'template formula',
    label: "Take the sheet's own formula back",
    changes: true,
    applies: ({ column }) => column?.templateFormula !== undefined,
    menus: { cell: 3, column: 1 },
    run: ({ place, column }) => takeTemplateFormula(place.sheet, column?.id ?? ''),
  },
  {
    id: 'add column',
    label: 'Add a column',
    changes: true,
    menus: { cell: 3, column: 2 },
    run: ({ place }) => beginColumn(place.sheet),
  },
  {
    id: 'remove column',
    label: 'Remove the column',
    says: ({ column }) => `Remove ${column?.name ?? 'the column'}`,
    changes: true,
    menus: { column: 2 },
    run: ({ place, column }) => {
      if (column !== undefined) removeColumn(place.sheet, column);
    },
  },
];

const LINE: readonly PageCommand[] = [
  {
    id: 'next word',
    label: 'To the next word offered',
    keys: ['ArrowDown'],
    where: ['formula line'],
    applies: hasOffers,
    run: () => markOffer(1),
  },
  {
    id: 'previous word',
    label: 'To the word offered before',
    keys: ['ArrowUp'],
    where: ['formula line'],
    applies: hasOffers,
    run: () => markOffer(-1),
  },
  {
    id: 'take word',
    label: 'Take the word offered',
    keys: ['Tab'],
    where: ['formula line'],
    applies: hasOffers,
    run: () => takeOffer(Math.max(0, active.peek())),
  },
  {
    id: 'take marked word',
    label: 'Take the word that is marked',
    keys: ['Enter'],
    where: ['formula line'],
    applies: () => hasOffers() && active.value >= 0,
    run: () => takeOffer(active.peek()),
  },
  {
    id: 'hide words',
    label: 'Put the words offered away',
    keys: ['Escape'],
    where: ['formula line'],
    applies: hasOffers,
    run: () => {
      offered.value = undefined;
    },
  },
  { id: 'take line', label: 'Take what is typed', keys: ['Enter'], where: ['formula line'], run: takeLine },
  { id: 'leave line', label: 'Leave the cell as it was', keys: ['Escape'], where: ['formula line'], run: leaveLine },
];

export const COMMANDS: readonly PageCommand[] = [
  ...EVERYWHERE,
  ...MOVES,
  ...CELL_COMMANDS,
  ...ROW_COMMANDS,
  ...COLUMN_COMMANDS,
  ...LINE,
];

/** The command of a name; throws where the table has none, which is a slip of whoever asks. */
export function commandNamed(id: string): PageCommand {
  const found = COMMANDS.find((command) => command.id === id);
  if (found === undefined) throw new Error(`The table has no command called ${id}.`);
  return found;
}
