// Proposes a bed for every planting that has none typed: free, with its family away long enough, near where the crop stands. Asks
// the workbook what stands where, lets engine/planning search, and gives the commands that write the proposals. Nothing
// typed is moved, nor what is in the ground already. Whoever calls runs the search: at once, or in slices.

import {
  BedPlan,
  type BedQuestion,
  type Command,
  message,
  NO_BED,
  type PlanBed,
  type PlanPlanting,
  rowId,
  rows,
  settings,
  type Workbook,
  whyNotPlaced,
} from '../../engine/index.ts';
import { type Act, counted, type RowOf, refused, rowAt } from './act.ts';

const PLANTINGS = 'plantings';
const BEDS = 'beds';
const FAMILIES = ['family-last-year', 'family-two-years-ago', 'family-three-years-ago', 'family-four-years-ago'];
/** A plan is tried on a branch; should lengths differ there, what no longer fits is taken out, so many times at most. */
const TRIES = 5;
/** A hand's breadth. */
const SLACK = 0.1;

/** What is asked of the search, with the rows that its numbers stand for. */
export interface BedWish {
  readonly question: BedQuestion;
  readonly beds: readonly RowOf[];
  /** Of each planting of the question the row; undefined for the second bed of a wide one that stands elsewhere. */
  readonly plantings: readonly (RowOf | undefined)[];
}

function rowsOf(workbook: Workbook, sheet: string): readonly RowOf[] {
  return Array.from(rows(workbook, sheet), (slot) => rowAt(workbook, sheet, rowId(workbook, sheet, slot), slot));
}

/** What stands in the way of proposing beds, in a sentence; else what to search for. */
export function bedWish(workbook: Workbook): BedWish | string {
  const beds = rowsOf(workbook, BEDS);
  if (beds.length === 0) return 'There are no beds yet: enter them in Beds first.';
  const numberOf = new Map(beds.map(({ slot }, at) => [slot, at]));
  const { today } = settings(workbook);
  const plantings: (RowOf | undefined)[] = [];
  const asked: PlanPlanting[] = [];
  for (const row of rowsOf(workbook, PLANTINGS)) {
    const planting = askedOf(workbook, row);
    const bed = numberOf.get(row.number('bed') ?? -1);
    const stays = bed !== undefined && (row.view('bed').origin === 'entered' || planting.from <= today);
    plantings.push(row);
    if (!stays) asked.push(planting);
    else {
      const beside = numberOf.get(row.number('spreads-over') ?? -1);
      asked.push({ ...planting, fixed: bed, across: beside === bed + 1 ? 2 : 1 });
      if (beside !== undefined && beside !== bed + 1) {
        plantings.push(undefined);
        asked.push({ ...planting, fixed: beside, across: 1 });
      }
    }
  }
  if (asked.every(({ fixed }) => fixed !== undefined)) {
    return 'Every planting has a bed typed or stands in one: there is nothing to propose.';
  }
  return { question: { beds: beds.map(bedOf), plantings: asked }, beds, plantings };
}

function bedOf(row: RowOf): PlanBed {
  return {
    length: row.number('length') ?? 0,
    width: row.number('width') ?? 0,
    field: row.text('field'),
    families: FAMILIES.map((column) => row.text(column)),
  };
}

function askedOf(workbook: Workbook, row: RowOf): PlanPlanting {
  const variety = rowAt(workbook, 'varieties', '', row.number('variety') ?? -1);
  const crop = rowAt(workbook, 'crops', '', variety.number('crop') ?? -1);
  return {
    length: row.number('bed-length-used') ?? 0,
    width: row.number('bed-width') ?? 0,
    from: row.number('planted-out') ?? Number.NaN,
    until: row.number('bed-free') ?? Number.NaN,
    crop: row.text('crop'),
    family: row.text('family'),
    rotationYears: crop.number('rotation-years') ?? 0,
    across: Math.min(2, crop.number('beds-across') ?? 1),
  };
}

/** The commands that write the proposals; `bedOf` is what the search found, a bed's number for each planting. */
export function proposeBeds(workbook: Workbook, wish: BedWish, found: ArrayLike<number>): Act {
  const proposed = Int32Array.from(found);
  const reason = reasons(wish);
  let commands = commandsFor(wish, proposed, reason);
  for (let tries = 0; tries < TRIES; tries += 1) {
    const branch = workbook.branch();
    const done = branch.do(commands, message('trial'));
    if (done.refused) return refused(done.why);
    const tooFull = overfull(branch, wish, proposed);
    if (tooFull.length === 0) break;
    for (const p of tooFull) proposed[p] = NO_BED;
    commands = commandsFor(wish, proposed, reason);
  }
  const free = wish.question.plantings.flatMap(({ fixed }, p) => (fixed === undefined ? [p] : []));
  const without = free.filter((p) => proposed[p] === NO_BED);
  return {
    ok: true,
    commands,
    message: message('propose beds', { count: free.length - without.length }),
    said: [
      `${counted(free.length - without.length, 'planting')} of ${free.length} placed.`,
      ...without.slice(0, 5).map((p) => `${wish.plantings[p]?.text('planting') ?? ''}: ${reason(p)}.`),
      ...(without.length > 5 ? [`And ${without.length - 5} more: see Not placed in Plantings.`] : []),
    ].join(' '),
  };
}

/** Plantings that have more on their bed than it holds, on a day when they go in. */
function overfull(branch: Workbook, { question, plantings, beds }: BedWish, proposed: Int32Array): readonly number[] {
  return question.plantings.flatMap(({ fixed }, p) => {
    const [row, bed] = [plantings[p], beds[proposed[p] ?? NO_BED]];
    if (fixed !== undefined || row === undefined || bed === undefined) return [];
    const inUse = rowAt(branch, PLANTINGS, row.id, row.slot).number('bed-in-use') ?? 0;
    return inUse > (bed.number('length') ?? 0) + SLACK ? [p] : [];
  });
}

function commandsFor(
  { question, beds, plantings }: BedWish,
  proposed: Int32Array,
  reason: (p: number) => string,
): readonly Command[] {
  return question.plantings.flatMap(({ fixed, across }, p): readonly Command[] => {
    const row = plantings[p];
    if (fixed !== undefined || row === undefined) return [];
    const bed = beds[proposed[p] ?? NO_BED];
    const beside = across > 1 && bed !== undefined ? beds[(proposed[p] ?? NO_BED) + 1] : undefined;
    const entries: Readonly<Record<string, string>> = {
      'proposed-bed': bed?.text('bed') ?? '',
      'proposed-bed-beside': beside?.text('bed') ?? '',
      'not-placed': bed === undefined ? `N${reason(p).slice(1)}.` : '',
    };
    return Object.entries(entries)
      .filter(([column, entry]) => row.view(column).entry !== entry)
      .map(([column, entry]) => ({ command: 'set cell', sheet: PLANTINGS, row: row.id, column, entry }));
  });
}

/** Why a planting got no bed: 'no bed proposed: ...', as it goes on behind the planting's name. */
function reasons({ question, plantings }: BedWish): (p: number) => string {
  const plan = new BedPlan(question);
  return (p) => {
    const row = plantings[p];
    const family = row?.text('family') ?? '';
    const days = `from ${row?.text('planted-out') ?? ''} to ${row?.text('bed-free') ?? ''}`;
    switch (whyNotPlaced(plan, p)) {
      case 'no dates':
        return 'no bed proposed: it is not known when its bed is free again';
      case 'longer than any bed':
        return 'no bed proposed: it is longer than any bed, so split it';
      case 'rotation':
        return `no bed proposed: on every bed long enough ${family} stood too few years ago`;
      case 'full':
        return `no bed proposed: none that is long enough has room ${days}`;
      case 'no room':
        return `no bed proposed: none to which ${family} may come back has room ${days}`;
    }
  };
}
