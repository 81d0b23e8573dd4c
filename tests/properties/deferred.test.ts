// Figures that wait until they are asked for: whatever was read, settled or left waiting between edits, every cell is in the end
// what a fresh workbook has, to the last bit; and whoever follows the change sets holds the same, without reading again.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cellValue, rows, type Workbook } from '../../engine/index.ts';
import { type Book, opened } from '../book.ts';
import { runs } from '../runs.ts';
import { SMALL } from '../workbook/small.ts';
import { type Act, acts, perform } from './acts.ts';
import { snapshot } from './snapshot.ts';

/** What happens between two acts. */
type Between =
  | { readonly between: 'nothing' | 'settle' | 'branch' }
  | { readonly between: 'show' | 'read' | 'watch'; readonly which: number }
  | { readonly between: 'slice' | 'slice of the screen'; readonly steps: number };

const which = fc.nat({ max: 1000 });
const betweens: fc.Arbitrary<Between> = fc.oneof(
  fc.constantFrom<Between>({ between: 'nothing' }, { between: 'settle' }, { between: 'branch' }),
  fc.record({ between: fc.constantFrom('show' as const, 'read' as const, 'watch' as const), which }),
  fc.record({
    between: fc.constantFrom('slice' as const, 'slice of the screen' as const),
    steps: fc.nat({ max: 12 }),
  }),
);

interface Place {
  readonly sheet: string;
  readonly column: string;
}

function placesOf(book: Book): readonly Place[] {
  return book.tables().flatMap(({ id, columns }) => columns.map((column) => ({ sheet: id, column: column.id })));
}

/** A column as somebody shows it who looks again only at what the change sets tell. */
class Shown {
  readonly #workbook: Workbook;
  readonly place: Place;
  #cells = new Map<number, string>();

  constructor(workbook: Workbook, place: Place) {
    this.#workbook = workbook;
    this.place = place;
    this.all();
  }

  #cell(row: number): string {
    return JSON.stringify(cellValue(this.#workbook, this.place.sheet, row, this.place.column));
  }

  all(): void {
    this.#cells = this.now();
  }

  some(slots: Int32Array): void {
    for (const row of slots) this.#cells.set(row, this.#cell(row));
  }

  now(): Map<number, string> {
    return new Map(Array.from(rows(this.#workbook, this.place.sheet), (row) => [row, this.#cell(row)]));
  }

  /** As it is held, of the rows that there are. */
  held(): Map<number, string | undefined> {
    return new Map(Array.from(rows(this.#workbook, this.place.sheet), (row) => [row, this.#cells.get(row)]));
  }
}

function follow(workbook: Workbook, shown: Map<string, Shown>): void {
  workbook.follow(
    ({ cells, rowsOf, columnsOf }) => {
      for (const one of shown.values()) {
        const { sheet, column } = one.place;
        if (rowsOf.includes(sheet) || columnsOf.includes(sheet)) one.all();
        else {
          for (const change of cells) {
            if (change.sheet !== sheet || change.column !== column) continue;
            if (change.rows === 'all') one.all();
            else one.some(change.rows);
          }
        }
      }
    },
    (flush) => flush(),
  );
}

function meanwhile(book: Book, shown: Map<string, Shown>, act: Between): void {
  const { workbook } = book;
  const places = placesOf(book);
  switch (act.between) {
    case 'nothing':
      return;
    case 'settle':
      expect(workbook.settle()).toBe(false);
      for (const one of shown.values()) expect(one.held()).toEqual(one.now());
      return;
    case 'slice': {
      let steps = 0;
      workbook.settle(() => ++steps <= act.steps);
      return;
    }
    case 'slice of the screen': {
      let steps = 0;
      workbook.settleScreen(() => ++steps <= act.steps);
      return;
    }
    case 'branch':
      expect(snapshot(book.branch())).toEqual(snapshot(book.reopened()));
      return;
    case 'show': {
      const place = places[act.which % places.length];
      if (place !== undefined) shown.set(JSON.stringify(place), new Shown(workbook, place));
      return;
    }
    case 'read': {
      const place = places[act.which % places.length];
      for (const row of place === undefined ? [] : rows(workbook, place.sheet))
        cellValue(workbook, place?.sheet ?? '', row, place?.column ?? '');
      return;
    }
    case 'watch':
      workbook.watch(() => placesOf(book).filter((_, at) => (at + act.which) % 5 === 0));
      return;
  }
}

test('what waits, is read or settles between edits never shows', () => {
  const step: fc.Arbitrary<readonly [Act, Between]> = fc.tuple(acts, betweens);
  fc.assert(
    fc.property(fc.array(step, { minLength: 60, maxLength: 60 }), (steps) => {
      const book = opened(SMALL);
      const shown = new Map<string, Shown>();
      follow(book.workbook, shown);
      for (const [act, between] of steps) {
        perform(book, act);
        meanwhile(book, shown, between);
      }
      meanwhile(book, shown, { between: 'settle' });
      expect(snapshot(book)).toEqual(snapshot(book.reopened()));
    }),
    { numRuns: runs(20, 2000) },
  );
});
