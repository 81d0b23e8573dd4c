// `lay`, `place` and `plant`: what a grower asks for in one word. The acts stand in sheets-templates/acts; here they are done to a file
// and their sentence is printed.

import {
  BedSearch,
  cellValue,
  cellView,
  keepWork,
  message,
  openBranch,
  rowId,
  rowName,
  rows,
  seededNumbers,
  type Workbook,
} from '../../engine/index.ts';
import {
  type Act,
  ALL_WITHIN,
  bedWish,
  type ChooseWish,
  chooseAmounts,
  laySuccession,
  plantWay,
  proposeBeds,
} from '../../sheets-templates/index.ts';
import { branchId } from '../branch-ids.ts';
import type { Given } from './arguments.ts';
import { percent } from './draws-by-week.ts';
import { findRow, findTable } from './places.ts';
import { changeWorkbook } from './workbook-files.ts';
import { onOneLine, refuse, type World } from './world.ts';

const SEED = 1;
/** So many changes of the plan of beds are tried before it is said how far it is. */
const CHANGES_A_LINE = 3_000;
const WAYS = 'ways-to-plant';

/** Does an act; gives its sentence, or refuses with the file's name. */
export function carryOut(workbook: Workbook, act: Act, file: string): string {
  if (!act.ok) return refuse(onOneLine(`${file}: ${act.why}`));
  const done = workbook.do(act.commands, act.message);
  return done.refused ? refuse(onOneLine(`${file}: ${done.why}`)) : act.said;
}

/** Lays one succession, or all of them; all or none. */
export function laySuccessions(given: Given, world: World): Promise<number> {
  const [file = '', name] = given.words;
  return changeWorkbook(file, given, world, (workbook) => {
    const table = findTable(workbook, file, 'Successions');
    const slots = name === undefined ? [...rows(workbook, table.id)] : [findRow(workbook, table, file, name)];
    if (slots.length === 0) return refuse(`${file}: there are no successions yet: enter them in Successions first.`);
    const ids = slots.map((slot) => rowId(workbook, table.id, slot));
    const said = ids.map((id) => carryOut(workbook, laySuccession(workbook, id), file));
    return { says: `${said.map(onOneLine).join('\n')}\n` };
  });
}

/** Proposes a bed for every planting that has none typed. */
export function placePlantings(given: Given, world: World): Promise<number> {
  const [file = ''] = given.words;
  const seed = seedOf(given.values.get('seed'));
  return changeWorkbook(file, given, world, (workbook) => {
    const wish = bedWish(workbook);
    if (typeof wish === 'string') return refuse(`${file}: ${wish}`);
    const search = new BedSearch(wish.question, seededNumbers(seed));
    while (!search.step(CHANGES_A_LINE)) world.progress?.(`Looking for beds: ${percent(search.progress)}`);
    world.progress?.(undefined);
    const said = carryOut(workbook, proposeBeds(workbook, wish, search.beds), file);
    const beds = [...rows(workbook, 'plantings')].map((slot) => bedLine(workbook, slot));
    return { says: `${[onOneLine(said), ...beds].join('\n')}\n` };
  });
}

/** Turns a way to plant on a bed to try into the planting. */
export function plantTheWay(given: Given, world: World): Promise<number> {
  const [file = '', bed = '', way = ''] = given.words;
  return changeWorkbook(file, given, world, (workbook) => {
    const trials = findTable(workbook, file, 'Beds to try');
    const trial = findRow(workbook, trials, file, bed);
    const tried = [...rows(workbook, WAYS)].filter((slot) => cellValue(workbook, WAYS, slot, 'bed-to-try') === trial);
    const named = (slot: number): string => cellView(workbook, WAYS, slot, 'name').text;
    const found = tried.find((slot) => named(slot).toLowerCase() === way.toLowerCase());
    if (found === undefined) {
      const names = tried.map(named).join('; ');
      return refuse(
        onOneLine(
          `${file}: “${way}” is no way tried on ${bed}: ${names === '' ? 'none is, see Ways' : `choose one of ${names}`}.`,
        ),
      );
    }
    return { says: `${onOneLine(carryOut(workbook, plantWay(workbook, rowId(workbook, WAYS, found)), file))}\n` };
  });
}

function bedLine(workbook: Workbook, slot: number): string {
  const cell = (column: string): string => cellView(workbook, 'plantings', slot, column).text;
  const bed = cell('bed');
  return onOneLine(`${rowName(workbook, 'plantings', slot)}: ${bed === '' ? cell('not-placed') || 'no bed' : bed}`);
}

function seedOf(given: string | undefined): number {
  if (given === undefined) return SEED;
  return /^\d+$/.test(given) ? Number(given) : refuse(`--seed takes a whole number such as 7, not “${given}”.`);
}

/** How much of each planting to grow, as a branch of that name. */
export async function choosePlantings(given: Given, world: World): Promise<number> {
  const [file = '', name = ''] = given.words;
  const wish = wishOf(given);
  const { linearSolver } = await import('../linear-solver.ts');
  return changeWorkbook(file, given, world, (workbook) => {
    const branch = branchId(workbook);
    const made = workbook.do([{ command: 'add branch', branch, name }], message('add branch', { branch: name }));
    if (made.refused) return refuse(onOneLine(`${file}: ${made.why}`));
    const act = chooseAmounts(workbook, linearSolver, wish);
    if (!act.ok) return refuse(onOneLine(`${file}: ${act.why}`));
    const opened = openBranch(workbook, branch);
    if (opened !== undefined) {
      const said = carryOut(opened, act, file);
      keepWork(workbook, branch, opened);
      if (given.flags.has('json')) return { says: `${JSON.stringify({ branch: name, ...act.chosen, says: said })}\n` };
      return { says: `${said} See “compare ${file} "${name}"”.\n` };
    }
    return refuse(`${file}: the branch could not be opened.`);
  });
}

function wishOf({ values }: Given): ChooseWish {
  const [goal = 'margin', within] = [values.get('goal'), values.get('within')];
  if (goal !== 'margin' && goal !== 'hours')
    return refuse('--goal takes margin, for the most, or hours, for the least.');
  if (within === undefined) return { goal, within: ALL_WITHIN };
  const kinds = within.split(',').map((word) => {
    const known = ALL_WITHIN.find((kind) => kind === word.trim());
    return (
      known ?? refuse(`--within takes a list of ${ALL_WITHIN.join(', ')}, parted by commas, not “${word.trim()}”.`)
    );
  });
  return { goal, within: kinds };
}
