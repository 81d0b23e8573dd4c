// The terminal's verbs in one list: what each is called, takes and does. Help is printed from it, and run.ts runs by it.

import { FORMATS } from '../../engine/index.ts';
import { choosePlantings, laySuccessions, placePlantings, plantTheWay } from './acts.ts';
import type { Given, Options } from './arguments.ts';
import { branchOut, compareBranches } from './branches.ts';
import { checkWorkbook } from './check.ts';
import { drawSeasons } from './draws.ts';
import { setCell, setFormula } from './edits.ts';
import { evaluateFormulas } from './evaluate.ts';
import { explainCell } from './explain.ts';
import { listJournal, undoLast } from './history.ts';
import { printJobs, saveCalendar } from './jobs.ts';
import { makeNew } from './new.ts';
import { order } from './order.ts';
import { rollSeasonOver, showLearned } from './seasons-end.ts';
import { exportTable, importRows } from './table-files.ts';
import { listTables, printTable } from './tables.ts';
import { gridOfFigures, seekValue } from './trials.ts';
import { upgradeSheets } from './upgrade.ts';
import { CHANGING, CHANGING_IN_WORDS, WRITING, WRITING_IN_WORDS } from './workbook-files.ts';
import type { World } from './world.ts';

export interface Verb {
  readonly name: string;
  /** Names of its arguments in order; one in brackets may be left out. */
  readonly takes: readonly string[];
  readonly options: Options;
  /** As help shows them. */
  readonly optionsInWords: string;
  readonly does: string;
  /** Gives the exit status. */
  readonly run: (given: Given, world: World) => number | Promise<number>;
}

const OFFERED = FORMATS.filter(({ holds }) => holds !== 'workbook');
const WRITTEN = OFFERED.map(({ id }) => id);
const MANY = OFFERED.filter(({ holds }) => holds === 'sheets').map(({ name }) => name);
const READ = FORMATS.flatMap(({ name, readTable }) => (readTable === undefined ? [] : [name])).join(' or ');

export const VERBS: readonly Verb[] = [
  {
    name: 'new',
    takes: ['[TEMPLATE]'],
    options: { out: 'value', units: 'value', currency: 'value', season: 'value', force: 'flag', 'dry-run': 'flag' },
    optionsInWords: '--out FILE [--units us|si] [--currency CODE] [--season YEAR] [--force] [--dry-run]',
    does: 'writes a fresh workbook file: season where no template is named, onions, seedlings, or demo for the demo farm',
    run: makeNew,
  },
  {
    name: 'eval',
    takes: ['FORMULA'],
    options: { in: 'value', json: 'flag' },
    optionsInWords: '[--in FILE] [--json]',
    does: 'prints the value of a formula with its unit; eval - reads a formula a line from standard input',
    run: evaluateFormulas,
  },
  {
    name: 'tables',
    takes: ['FILE'],
    options: {},
    optionsInWords: '',
    does: 'lists tables with their columns, types and units',
    run: listTables,
  },
  {
    name: 'table',
    takes: ['FILE', 'TABLE'],
    options: { csv: 'flag', json: 'flag' },
    optionsInWords: '[--csv or --json]',
    does: 'prints a table',
    run: printTable,
  },
  {
    name: 'set',
    takes: ['FILE', 'TABLE', 'KEY', 'COLUMN', 'VALUE'],
    options: CHANGING,
    optionsInWords: CHANGING_IN_WORDS,
    does: 'types one cell: "6 in", 85%, 2027-03-15; KEY names the row, and any KEY will do in a one-row table',
    run: setCell,
  },
  {
    name: 'formula',
    takes: ['FILE', 'TABLE', 'COLUMN', 'FORMULA'],
    options: CHANGING,
    optionsInWords: CHANGING_IN_WORDS,
    does: "replaces a computed column's formula, or adds a computed column",
    run: setFormula,
  },
  {
    name: 'import',
    takes: ['FILE', 'TABLE', 'ROWS'],
    options: {
      ...CHANGING,
      'good-rows': 'flag',
      columns: 'value',
      encoding: 'value',
      delimiter: 'value',
      decimal: 'value',
      sheet: 'value',
    },
    optionsInWords: `[--good-rows] [--columns "HEADER=COLUMN; ..."] [--encoding ENCODING] [--delimiter ;] [--decimal point|comma] [--sheet NAME] ${CHANGING_IN_WORDS}`,
    does: `adds or updates rows from ${READ} by their key, all or none, or with --good-rows those that can be taken (exit status 1 where some can't); headers may carry a unit: Length (ft)`,
    run: importRows,
  },
  {
    name: 'export',
    takes: ['FILE', '[TABLE]'],
    options: { out: 'value', format: 'value', force: 'flag', 'dry-run': 'flag' },
    optionsInWords: `[--format ${WRITTEN.join('|')}] [--out FILE] [--force] [--dry-run]`,
    does: `writes a table to a file whose ending tells the format, or to standard output; ${MANY.join(', ')} holds all tables where none is named`,
    run: exportTable,
  },
  {
    name: 'explain',
    takes: ['FILE', 'TABLE', 'KEY', 'COLUMN'],
    options: { steps: 'value' },
    optionsInWords: '[--steps NUMBER]',
    does: 'shows what a cell comes of, two steps down or as many as are asked for: with enough of them, to its inputs',
    run: explainCell,
  },
  {
    name: 'lay',
    takes: ['FILE', '[SUCCESSION]'],
    options: CHANGING,
    optionsInWords: CHANGING_IN_WORDS,
    does: 'lays the plantings of a succession, or of all, so that harvests come evenly',
    run: laySuccessions,
  },
  {
    name: 'place',
    takes: ['FILE'],
    options: { ...CHANGING, seed: 'value' },
    optionsInWords: `[--seed NUMBER] ${CHANGING_IN_WORDS}`,
    does: 'proposes a bed for every planting that has none typed',
    run: placePlantings,
  },
  {
    name: 'plant',
    takes: ['FILE', 'BED', 'WAY'],
    options: CHANGING,
    optionsInWords: CHANGING_IN_WORDS,
    does: 'turns a way of Ways to plant into the planting; BED names a row of Beds to try',
    run: plantTheWay,
  },
  {
    name: 'order',
    takes: ['FILE'],
    options: { ...CHANGING, supplier: 'value', csv: 'flag' },
    optionsInWords: `[--supplier NAME [--csv]] ${CHANGING_IN_WORDS}`,
    does: "works out the cheapest whole order across all suppliers and keeps it; with --supplier prints that supplier's order, as text or CSV",
    run: order,
  },
  {
    name: 'check',
    takes: ['FILE'],
    options: {},
    optionsInWords: '',
    does: 'lists what needs attention; exit status 1 if any of it is an error',
    run: checkWorkbook,
  },
  {
    name: 'jobs',
    takes: ['FILE'],
    options: { week: 'value' },
    optionsInWords: '[--week 2027-W18]',
    does: "prints a week's sheet of jobs, with the late ones and the hours; this week where none is named",
    run: printJobs,
  },
  {
    name: 'calendar',
    takes: ['FILE'],
    options: { out: 'value', force: 'flag', 'dry-run': 'flag' },
    optionsInWords: '--out X.ics [--force] [--dry-run]',
    does: 'writes all jobs as a calendar file that phones and other programs read',
    run: saveCalendar,
  },
  {
    name: 'learned',
    takes: ['FILE'],
    options: { ...CHANGING, take: 'value' },
    optionsInWords: `[--take NAME] ${CHANGING_IN_WORDS}`,
    does: 'lists the figures that the records taught; --take makes one of them the farm’s own',
    run: showLearned,
  },
  {
    name: 'rollover',
    takes: ['FILE'],
    options: { season: 'value', out: 'value', plan: 'value', along: 'value', force: 'flag', 'dry-run': 'flag' },
    optionsInWords: '--season YEAR --out FILE [--plan own|all|none] [--along beds,lots,own-rows] [--force] [--dry-run]',
    does: 'writes the workbook of the next season: lots, beds’ history and results along, dates a year on; rows of own sheets that name plantings stay behind without own-rows',
    run: rollSeasonOver,
  },
  {
    name: 'branch',
    takes: ['FILE', '[NAME]'],
    options: { ...WRITING, keep: 'flag', 'throw-away': 'flag', take: 'value', rename: 'value', json: 'flag' },
    optionsInWords: `[--keep] [--take 1,3] [--throw-away] [--rename NAME] [--json] ${WRITING_IN_WORDS}`,
    does: 'makes another way that the plan could go, or keeps one, takes single changes of it over or throws it away; lists them where none is named',
    run: branchOut,
  },
  {
    name: 'choose',
    takes: ['FILE', 'BRANCH'],
    options: { ...WRITING, goal: 'value', within: 'value', json: 'flag' },
    optionsInWords: `[--goal margin|hours] [--within beds,hands,bench,stores,demand] [--json] ${WRITING_IN_WORDS}`,
    does: 'chooses how much of each planting to grow for the most margin, or the least hours at the margin there is, as a new branch; says what holds it back',
    run: choosePlantings,
  },
  {
    name: 'compare',
    takes: ['FILE', '[BRANCH]', '[BRANCH]', '[BRANCH]', '[BRANCH]'],
    options: { cells: 'flag', json: 'flag' },
    optionsInWords: '[--cells] [--json]',
    does: 'shows totals of the plan and its branches side by side and what was changed; --cells every cell that differs',
    run: compareBranches,
  },
  {
    name: 'seek',
    takes: ['FILE', 'TABLE', 'KEY', 'COLUMN', 'FORMULA', 'GOAL'],
    options: { from: 'value', to: 'value', branch: 'value', json: 'flag' },
    optionsInWords: '--from VALUE --to VALUE [--branch NAME] [--json]',
    does: 'finds the value of a cell at which a formula reaches a goal; exit status 1 where it never does',
    run: seekValue,
  },
  {
    name: 'grid',
    takes: ['FILE', 'FORMULA'],
    options: { down: 'value', across: 'value', branch: 'value', json: 'flag' },
    optionsInWords: '--down "Table / Row / Column = 4 in..8 in by 1 in" [--across "..."] [--branch NAME] [--json]',
    does: 'a table of what a formula gives while one or two cells are tried at several values',
    run: gridOfFigures,
  },
  {
    name: 'draws',
    takes: ['FILE', '[FORMULA]', '[FORMULA]', '[FORMULA]', '[FORMULA]'],
    options: { count: 'value', seed: 'value', goal: 'value', 'by-week': 'value', branch: 'value', json: 'flag' },
    optionsInWords:
      '[--count 2000] [--seed 1] [--goal AMOUNT] [--by-week "Short of demand; Harvest"] [--branch NAME] [--json]',
    does: 'draws the season many times from figures typed as ranges and those of the library: 10, 50 and 90% values, the chance of a goal, what it hangs on; by week also the chance of running out or over',
    run: drawSeasons,
  },
  {
    name: 'upgrade',
    takes: ['FILE'],
    options: { ...WRITING, take: 'flag' },
    optionsInWords: `[--take] ${WRITING_IN_WORDS}`,
    does: "shows what today's sheets would change in a workbook made from earlier ones; --take takes them",
    run: upgradeSheets,
  },
  {
    name: 'journal',
    takes: ['FILE'],
    options: {},
    optionsInWords: '',
    does: 'lists the changes that were made with --journal, the latest last',
    run: listJournal,
  },
  {
    name: 'undo',
    takes: ['FILE'],
    options: { out: 'value', steps: 'value', force: 'flag', 'dry-run': 'flag' },
    optionsInWords: '[--out FILE [--steps NUMBER]] [--force] [--dry-run]',
    does: 'takes back the last change in the journal, or writes the file elsewhere as it was before it, or so many changes ago',
    run: undoLast,
  },
];

/** 'table FILE TABLE [--csv or --json]' */
export function usageOf({ name, takes, optionsInWords }: Verb): string {
  return [name, ...takes, optionsInWords].filter((part) => part !== '').join(' ');
}
