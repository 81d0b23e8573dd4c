// Who changed what last, and when, as plain data for files: two people's changes of one thing are told earlier from later also
// where a copy was saved and opened in between. Kept short: a cell is the place of its column in a list, people the place
// of theirs, times count in base 36, the cells of a row from one to the next. Pure.

import type { ById } from '../schema/records.ts';
import { type Stamp, Stamps } from './stamps.ts';
import { cellOfThing, cellThing } from './things.ts';

export interface ChangedData {
  /** The time of the latest change, in milliseconds. */
  readonly latest: number;
  /** The people. */
  readonly by: readonly string[];
  readonly cells: ById<ChangedCells>;
  /** Anything else: what it is, the ids that name it, and its change: '<time>' or '<time>/<person>'. */
  readonly others: readonly (readonly string[])[];
}

export interface ChangedCells {
  readonly columns: readonly string[];
  /** A row each: its id and its changes, '<columns>:<time>' or '<columns>:<time>/<person>', each time from the one before. */
  readonly rows: readonly string[];
}

/** A change in text. */
export const CHANGE = /^[0-9a-z]{1,9}(\/[0-9a-z]{1,6})?$/;
/** A row and the changes of its cells in text. */
export const CHANGES_OF_ROW = /^[^ ]{1,1000}( [0-9a-z]+(,[0-9a-z]+)*:[0-9a-z]{1,9}(\/[0-9a-z]{1,6})?)+$/;

const BASE = 36;
/** The latest time that nine letters tell, some three thousand years on. */
export const LATEST = BASE ** 9 - 1;
/** Things of one row. */
const OF_ROWS: readonly (string | undefined)[] = ['row', 'row place', 'range', 'note'];

type ChangedCell = readonly [column: string, stamp: Stamp];

/** `isKnown` says of which rows changes are to be told. */
export function changedData(stamps: Stamps, isKnown: (sheet: string, row: string) => boolean): ChangedData {
  const cells = new Map<string, Map<string, ChangedCell[]>>();
  const others: (readonly [names: readonly string[], stamp: Stamp])[] = [];
  const people = new Set<string>();
  for (const [thing, { time, actor }] of stamps.lasting()) {
    const cell = cellOfThing(thing);
    const names: readonly string[] = thing.startsWith('[') ? (JSON.parse(thing) as string[]) : [thing];
    const [kind, sheet = '', row = ''] = cell === undefined ? names : ['cell', cell.sheet, cell.row];
    if ((cell !== undefined || OF_ROWS.includes(kind)) && !isKnown(sheet, row)) continue;
    people.add(actor);
    const stamp = { time: inFile(time), actor };
    if (cell === undefined) {
      others.push([names, stamp]);
      continue;
    }
    const rows = cells.get(sheet) ?? new Map<string, ChangedCell[]>();
    const changes = rows.get(row) ?? [];
    cells.set(sheet, rows.set(row, changes));
    changes.push([cell.column, stamp]);
  }
  const by = [...people].sort();
  return {
    latest: inFile(stamps.newest),
    by,
    cells: Object.fromEntries(sorted(cells).map(([sheet, rows]) => [sheet, cellsOf(rows, by)])),
    others: others.map(([names, stamp]) => [...names, changeText('', stamp.time, stamp.actor, by)]).sort(byName),
  };
}

/** Files count whole milliseconds. */
function inFile(time: number): number {
  return Math.min(LATEST, Math.max(0, Math.round(time)));
}

function sorted<T>(byId: ReadonlyMap<string, T>): readonly (readonly [string, T])[] {
  return [...byId].sort(([a], [b]) => (a < b ? -1 : 1));
}

function byName(a: readonly string[], b: readonly string[]): number {
  return a.join('\n') < b.join('\n') ? -1 : 1;
}

function cellsOf(rows: ReadonlyMap<string, readonly ChangedCell[]>, by: readonly string[]): ChangedCells {
  const columns = [...new Set([...rows.values()].flat().map(([column]) => column))].sort();
  const places = new Map(columns.map((column, place) => [column, place.toString(BASE)]));
  const texts = sorted(rows).map(([row, changes]) => {
    const byChange = new Map<string, { readonly stamp: Stamp; readonly at: string[] }>();
    const inOrder = [...changes].sort(([a, one], [b, other]) => one.time - other.time || (a < b ? -1 : 1));
    for (const [column, stamp] of inOrder) {
      const key = `${stamp.time} ${stamp.actor}`;
      const change = byChange.get(key) ?? { stamp, at: [] };
      byChange.set(key, change);
      change.at.push(places.get(column) ?? '');
    }
    let last = 0;
    const parts = [...byChange.values()].map(({ stamp: { time, actor }, at }) => {
      const since = time - last;
      last = time;
      return changeText(`${at.join(',')}:`, since, actor, by);
    });
    return [row, ...parts].join(' ');
  });
  return { columns, rows: texts };
}

function changeText(before: string, time: number, actor: string, by: readonly string[]): string {
  const person = by.indexOf(actor);
  return `${before}${time.toString(BASE)}${person === 0 ? '' : `/${person.toString(BASE)}`}`;
}

/** What was kept of who changed what. */
export function stampsIn(changed: ChangedData | undefined): Stamps {
  const stamps = new Stamps();
  if (changed === undefined) return stamps;
  const { by } = changed;
  stamps.noteTime(changed.latest);
  for (const [sheet, { columns, rows }] of Object.entries(changed.cells)) {
    for (const text of rows) {
      let last = 0;
      const [row = '', ...parts] = text.split(' ');
      for (const part of parts) {
        const [at = '', change = ''] = part.split(':');
        const stamp = stampOf(change, last, by);
        last = stamp.time;
        for (const place of at.split(',')) {
          const column = columns[Number.parseInt(place, BASE)];
          if (column !== undefined && column !== '') stamps.noteKept(cellThing(sheet, row, column), stamp);
        }
      }
    }
  }
  for (const names of changed.others) {
    const [thing = ''] = names;
    const things = names.slice(0, -1);
    stamps.noteKept(things.length === 1 ? thing : JSON.stringify(things), stampOf(names.at(-1) ?? '', 0, by));
  }
  return stamps;
}

function stampOf(change: string, since: number, by: readonly string[]): Stamp {
  const [time = '', person = '0'] = change.split('/');
  return { time: since + Number.parseInt(time, BASE), actor: by[Number.parseInt(person, BASE)] ?? '' };
}
