// Turns a way to plant into the planting: the one that its bed to try is about, or a new one. What the way holds is typed there; the
// rest follows as in any planting.

import { type Command, isoDate, message, rowId, rows, type Workbook } from '../../engine/index.ts';
import { type Act, type RowOf, refused, rowAt, rowOf } from './act.ts';

const WAYS = 'ways-to-plant';
const PLANTINGS = 'plantings';

/** Typed on the planting as they stand at the way. */
const TAKEN = ['variety', 'start', 'rows', 'in-row-spacing', 'seeds-per-station', 'cover', 'price-of-a-set-or-plant'];
/** Typed where the bed to try has them. */
const OF_THE_BED = ['bed', 'price', 'price-each', 'fresh-price'];

/** The commands that plant a way; `row` is its id in Ways to plant. */
export function plantWay(workbook: Workbook, row: string): Act {
  const way = rowOf(workbook, WAYS, row);
  if (way === undefined) return refused('That way to plant is not there any more.');
  const trial = rowAt(workbook, 'beds-to-try', '', way.number('bed-to-try') ?? -1);
  const name = `${trial.text('bed-to-try')}, ${way.text('name').toLowerCase()}`;
  const because = way.text('no-harvest-because');
  if (way.number('planted-out') === undefined) {
    return refused(
      `${name}: its dates cannot be reckoned: enter Planted out in Beds to try, or a place and a climate.`,
    );
  }
  if (because !== '') return refused(`${name} gives no harvest: ${because} Choose another way.`);
  const about = trial.number('planting');
  const entries = entriesOf(way, trial);
  return {
    ok: true,
    commands: about === undefined ? [insert(workbook, name, entries)] : changes(workbook, about, entries),
    message: message('plant a way', { way: name }),
    said:
      about === undefined
        ? `${freeName(workbook, name)} is in Plantings.`
        : `${rowAt(workbook, PLANTINGS, '', about).text('planting')} is planted so: ${way.text('name').toLowerCase()}.`,
  };
}

function entriesOf(way: RowOf, trial: RowOf): Readonly<Record<string, string>> {
  const taken = TAKEN.map((column) => [column, way.view(column).entry]);
  const ofTheBed = OF_THE_BED.map((column) => [column, trial.view(column).entry]);
  const dates = ['sown', 'planted-out'].map((column) => {
    const day = way.number(column);
    return [column, day === undefined ? '' : isoDate(day)];
  });
  return Object.fromEntries([
    ...taken,
    ...ofTheBed,
    ['bed-length-used', trial.view('bed-length-used').entry],
    ...dates,
  ]);
}

function insert(workbook: Workbook, name: string, entries: Readonly<Record<string, string>>): Command {
  const typed = Object.entries(entries).filter(([, entry]) => entry !== '');
  const named = { planting: freeName(workbook, name), ...Object.fromEntries(typed) };
  return { command: 'insert row', sheet: PLANTINGS, entries: named };
}

/** Only what differs; what was typed and is not wanted any more is cleared. */
function changes(workbook: Workbook, slot: number, entries: Readonly<Record<string, string>>): readonly Command[] {
  const planting = rowAt(workbook, PLANTINGS, rowId(workbook, PLANTINGS, slot), slot);
  return Object.entries(entries)
    .filter(([column, entry]) => planting.view(column).entry !== entry)
    .map(([column, entry]) => ({ command: 'set cell', sheet: PLANTINGS, row: planting.id, column, entry }));
}

/** The name, or with a number behind it where it is taken. */
function freeName(workbook: Workbook, name: string): string {
  const taken = new Set(
    Array.from(rows(workbook, PLANTINGS), (slot) =>
      rowAt(workbook, PLANTINGS, '', slot).text('planting').toLowerCase(),
    ),
  );
  for (let number = 1; ; number += 1) {
    const candidate = number === 1 ? name : `${name} ${number}`;
    if (!taken.has(candidate.toLowerCase())) return candidate;
  }
}
