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
  /**
   * By sheet: the ids of columns, joined by blanks, then a text a row: its id and its changes, '<columns>:<time>' or
   * '<columns>:<time>/<person>', each time from the one before.
   */
  readonly cells: ById<readonly string[]>;
  /** Anything else, a text each: '<time>' or '<time>/<person>', what it is, and the ids that name it. What is no such text is passed over. */
  readonly others: readonly string[];
}

const BASE = 36;
/** The latest time that nine letters tell, some three thousand years on. */
export const LATEST = BASE ** 9 - 1;
/** Things of one row. */
const OF_ROWS: readonly (string | undefined)[] = ['row', 'row place', 'range', 'note'];

type ChangedCell = readonly [column: string, stamp: Stamp];

/** `isKnown` says of which rows changes are to be told. */
export function changedData(stamps: Stamps, isKnown: (sheet: string, row: string) => boolean): ChangedData {
  const cells = new Map<string, Map<string, ChangedCell[]>>();
  const others: (readonly [names: string, stamp: Stamp])[] = [];
  const people = new Set<string>();
  for (const [thing, { time, actor }] of stamps.lasting()) {
    const cell = cellOfThing(thing);
    const names: readonly string[] = thing.startsWith('[') ? (JSON.parse(thing) as string[]) : [thing];
    const [kind, sheet = '', row = ''] = cell === undefined ? names : ['cell', cell.sheet, cell.row];
    if ((cell !== undefined || OF_ROWS.includes(kind)) && !isKnown(sheet, row)) continue;
    people.add(actor);
    const stamp = { time: inFile(time), actor };
    if (cell === undefined) {
      others.push([names.join(' / '), stamp]);
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
    others: others.map(([names, stamp]) => `${changeText('', stamp.time, stamp.actor, by)} ${names}`).sort(byName),
  };
}

/** Files count whole milliseconds. */
function inFile(time: number): number {
  return Math.min(LATEST, Math.max(0, Math.round(time)));
}

function sorted<T>(byId: ReadonlyMap<string, T>): readonly (readonly [string, T])[] {
  return [...byId].sort(([a], [b]) => (a < b ? -1 : 1));
}

/** By what stands behind the time. */
function byName(a: string, b: string): number {
  return a.slice(a.indexOf(' ')) < b.slice(b.indexOf(' ')) ? -1 : 1;
}

function cellsOf(rows: ReadonlyMap<string, readonly ChangedCell[]>, by: readonly string[]): readonly string[] {
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
  return [columns.join(' '), ...texts];
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
  const note = (thing: string, stamp: Stamp): void => {
    if (stamp.time >= 0 && stamp.time <= LATEST) stamps.noteKept(thing, stamp);
  };
  for (const [sheet, [named = '', ...rows]] of Object.entries(changed.cells)) {
    const columns = named.split(' ');
    for (const text of rows) {
      let last = 0;
      const [row = '', ...parts] = text.split(' ');
      for (const part of parts) {
        const [at = '', change = ''] = part.split(':');
        const stamp = stampOf(change, last, by);
        last = stamp.time;
        for (const place of at.split(',')) {
          const column = columns[Number.parseInt(place, BASE)];
          if (column !== undefined) note(cellThing(sheet, row, column), stamp);
        }
      }
    }
  }
  for (const text of changed.others) {
    const [change = ''] = text.split(' ', 1);
    const names = text.slice(change.length + 1).split(' / ');
    note(names.length === 1 ? (names[0] ?? '') : JSON.stringify(names), stampOf(change, 0, by));
  }
  return stamps;
}

function stampOf(change: string, since: number, by: readonly string[]): Stamp {
  const [time = '', person = '0'] = change.split('/');
  return { time: since + Number.parseInt(time, BASE), actor: by[Number.parseInt(person, BASE)] ?? '' };
}
