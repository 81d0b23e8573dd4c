// Rows that follow from several others: one for each pair, one for each filled date; which slots they have and keep.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Frame, FrameState } from '../../engine/calculation/frame.ts';
import { EventSlots, eventRows } from '../../engine/calculation/generators/events.ts';
import { type PairRange, Pairs, pairRows } from '../../engine/calculation/generators/pairs.ts';
import type { GeneratorNode } from '../../engine/calculation/graph/generator-node.ts';
import { dirtyRows, Graph, WAITING } from '../../engine/calculation/graph/graph.ts';
import { type ColumnDef, Layout, type TableDef } from '../../engine/calculation/layout.ts';
import { RowSet } from '../../engine/calculation/row-set.ts';
import { civilDay, isoDate } from '../../engine/values/civil.ts';
import { BLANK, FAULT, FILLED } from '../../engine/values/column.ts';
import { allRows, rowsOf } from './frames.ts';
import { working } from './generating.ts';

/** Makes a sheet's rows in parts, each as far as it comes before it asks for the time; `known` are the rows that were told. */
function inParts(table: TableDef, node: GeneratorNode, frame: Frame) {
  const known = new Set<number>();
  const part = (): boolean => {
    const changed = new RowSet();
    const left = node.runSome(frame, changed, () => false);
    for (let lane = 0; lane < node.lanes; lane += 1) dirtyRows(frame, node, lane).clear();
    for (const row of changed.sorted()) {
      if (frame.table(table).live[row] === 1) known.add(row);
      else known.delete(row);
    }
    return left;
  };
  return { known, part };
}

describe('one row for each pair', () => {
  function setting(range?: (columns: { plot: ColumnDef; from: ColumnDef }) => PairRange) {
    const layout = new Layout();
    const [beds, weeks] = [layout.addTable('beds'), layout.addTable('weeks')];
    const [plot, from] = [layout.addColumn(beds, 'plot', false), layout.addColumn(weeks, 'from', false)];
    const table = layout.addTable('bed-weeks');
    const [bed, week] = [layout.addColumn(table, 'bed', true), layout.addColumn(table, 'week', true)];
    table.order = {
      by: 'links',
      links: [
        { column: bed, to: beds },
        { column: week, to: weeks },
      ],
    };
    const state = new FrameState(0, (owner) => new Pairs(owner));
    const met = (): PairRange | undefined => range?.({ plot, from });
    const work = working(layout, pairRows(table, [bed, week], [beds, weeks], state, met));
    return { beds, weeks, plot, from, table, bed, week, ...work };
  }

  const pairsOf = ({ table, bed, week, frame }: Pick<ReturnType<typeof setting>, 'table' | 'bed' | 'week' | 'frame'>) =>
    [...frame.rows(table)].map((row) => `${frame.column(bed).values[row]}${frame.column(week).values[row]}`).join(' ');

  test('in the order of the first sheet, then the second', () => {
    const work = setting();
    const { beds, weeks, frame, make } = work;
    frame.addRows(beds, 2);
    frame.addRows(weeks, 3);
    expect(make()).toBe('0 1 2 3 4 5');
    expect(pairsOf(work)).toBe('00 01 02 10 11 12');
    frame.setLive(weeks, 1, false);
    make(new RowSet(), rowsOf(1));
    expect(pairsOf(work)).toBe('00 02 10 12');
    frame.setLive(beds, 0, false);
    make(rowsOf(0));
    expect(pairsOf(work)).toBe('10 12');
    frame.addRows(beds, 1);
    make(rowsOf(2));
    expect(pairsOf(work)).toBe('10 12 20 22');
  });

  test('keeps its slot while both rows are there; a slot is used again once all have heard that its pair went', () => {
    const work = setting();
    const { beds, weeks, table, bed, week, frame, make } = work;
    const slots = (): string =>
      [...frame.rows(table)]
        .map((row) => `${frame.column(bed).values[row]}${frame.column(week).values[row]}@${row}`)
        .join(' ');
    frame.addRows(beds, 2);
    frame.addRows(weeks, 2);
    make();
    expect(slots()).toBe('00@0 01@1 10@2 11@3');
    frame.setLive(beds, 0, false);
    frame.addRows(beds, 1);
    expect(make(rowsOf(0, 2))).toBe('0 1 4 5');
    expect(slots()).toBe('10@2 11@3 20@4 21@5');
    frame.releaseSlots();
    frame.addRows(weeks, 1);
    make(new RowSet(), rowsOf(2));
    expect(pairsOf(work)).toBe('10 11 12 20 21 22');
    expect(slots()).toMatch(/^10@2 11@3 12@[01] 20@4 21@5 22@[01]$/);
  });

  test('with a range, only rows that may meet are paired, whatever else there is', () => {
    // A week is met by beds whose plot is its start or the one after.
    const work = setting(({ plot, from }) => ({
      first: [plot],
      second: [from],
      partners: (frame) => (row) => {
        // It may name slots of rows that are not there, too.
        const slots = Int32Array.from({ length: frame.table(from.table).length }, (_, slot) => slot);
        const of = frame.column(plot).values[row] ?? 0;
        const rows = slots.filter((one) => [of, of + 1].includes(frame.column(from).values[one] ?? -1));
        return { rows, from: 0, to: rows.length };
      },
    }));
    const { beds, weeks, plot, from, frame, make } = work;
    frame.addRows(beds, 2);
    frame.addRows(weeks, 4);
    for (const [row, start] of [0, 1, 2, 3].entries()) frame.write(from, row, start, FILLED);
    frame.write(plot, 0, 0, FILLED);
    frame.write(plot, 1, 2, FILLED);
    expect(make()).toBe('0 1 2 3');
    expect(pairsOf(work)).toBe('00 01 12 13');
    // The first bed moves on: its lane is the second of the inputs.
    frame.write(plot, 0, 1, FILLED);
    // The pair that stays stands where it stood.
    expect(make(new RowSet(), rowsOf(0))).toBe('0 4');
    expect(pairsOf(work)).toBe('01 02 12 13');
    // A partner that is named and is not there is left out.
    frame.setLive(weeks, 1, false);
    make(new RowSet(), new RowSet(), rowsOf(1));
    expect(pairsOf(work)).toBe('02 12 13');
    // A dead row reads as nought, which a bed at nought would meet.
    frame.write(plot, 0, 0, FILLED);
    frame.write(plot, 1, 0, FILLED);
    expect(make(new RowSet(), allRows())).toBe('2 3 4 5 6');
    expect(pairsOf(work)).toBe('00 10');
  });

  test('after any comings and goings there is just one row for each pair of rows that are there', () => {
    const change = fc.tuple(fc.constantFrom('beds', 'weeks', 'release'), fc.nat({ max: 5 }), fc.boolean());
    fc.assert(
      fc.property(fc.array(change, { maxLength: 40 }), (changes) => {
        const work = setting();
        const { beds, weeks, frame, make } = work;
        make();
        for (const [what, row, alive] of changes) {
          if (what === 'release') {
            frame.releaseSlots();
            continue;
          }
          frame.setLive(what === 'beds' ? beds : weeks, row, alive);
          if (what === 'beds') make(rowsOf(row));
          else make(new RowSet(), rowsOf(row));
        }
        const wanted = [...frame.rows(beds)].flatMap((one) => [...frame.rows(weeks)].map((other) => `${one}${other}`));
        expect(pairsOf(work)).toBe(wanted.join(' '));
      }),
    );
  });

  test('made in parts, with comings and goings between them, they are the same pairs, and each row that came or went is told', () => {
    const change = fc.tuple(fc.constantFrom('beds', 'weeks', 'none'), fc.nat({ max: 39 }), fc.boolean());
    fc.assert(
      fc.property(fc.array(change, { maxLength: 12 }), (changes) => {
        const work = setting();
        const { beds, weeks, table, node, frame } = work;
        frame.addRows(beds, 40);
        frame.addRows(weeks, 3);
        const lanes = [dirtyRows(frame, node, 0), dirtyRows(frame, node, 1)];
        const { known, part } = inParts(table, node, frame);
        lanes[0]?.addAll();
        expect(part()).toBe(true);
        expect(frame.rows(table).length).toBe(16 * 3);
        for (const [what, row, alive] of changes) {
          if (what !== 'none') {
            const one = what === 'beds' ? beds : weeks;
            frame.setLive(one, what === 'beds' ? row : row % 3, alive);
            lanes[what === 'beds' ? 0 : 1]?.add(what === 'beds' ? row : row % 3);
          }
          part();
        }
        while (part());
        const wanted = [...frame.rows(beds)].flatMap((one) => [...frame.rows(weeks)].map((other) => `${one}${other}`));
        expect(pairsOf(work)).toBe(wanted.join(' '));
        expect([...known].sort((a, b) => a - b)).toEqual([...frame.rows(table)].sort((a, b) => a - b));
      }),
    );
  });

  test('a graph that is stopped within them goes on there, and is through when nothing waits', () => {
    const { beds, weeks, table, node, frame } = setting();
    frame.addRows(beds, 40);
    frame.addRows(weeks, 2);
    const graph = new Graph([node]);
    dirtyRows(frame, node).addAll();
    frame.pending[node.rank] = WAITING;
    const counts: number[] = [];
    while (frame.pending[node.rank] === WAITING) {
      let asked = 0;
      graph.run(
        frame,
        () => undefined,
        false,
        () => asked++ === 0,
      );
      counts.push(frame.rows(table).length);
    }
    expect(counts).toEqual([32, 64, 80]);
  });
});

describe('one row for each filled date', () => {
  function setting() {
    const layout = new Layout();
    const [plantings, beds] = [layout.addTable('plantings'), layout.addTable('beds')];
    const [sown, ready] = [layout.addColumn(plantings, 'sown', false), layout.addColumn(plantings, 'ready', false)];
    const cleared = layout.addColumn(beds, 'cleared', false);
    const table = layout.addTable('jobs');
    const column = (id: string, whole: boolean): ColumnDef => layout.addColumn(table, id, whole);
    const filled = { date: column('date', false), event: column('job', true), kind: column('kind', false) };
    const [planting, bed] = [column('planting', true), column('bed', true)];
    const dated = [
      { table: plantings, column: sown, event: 'Sow', about: planting },
      { table: plantings, column: ready, event: 'Harvest', about: planting },
      { table: beds, column: cleared, event: 'Clear', about: bed },
    ];
    table.order = {
      by: 'events',
      date: filled.date,
      kind: filled.kind,
      about: dated.map((one) => ({ column: one.about, to: one.table })),
    };
    const state = new FrameState(0, (owner) => new EventSlots(owner));
    const generator = eventRows(table, filled, dated, state);
    const work = working(layout, generator);
    work.frame.addRows(plantings, 3);
    work.frame.addRows(beds, 1);
    const jobs = (): string[] => {
      const { frame } = work;
      return [...frame.rows(table)].map((row) => {
        const about = (of: ColumnDef): number => frame.column(of).values[row] ?? -1;
        const known = frame.column(planting).states[row] === FILLED;
        const day = isoDate(frame.column(filled.date).values[row] ?? 0);
        const said = frame.texts.text(frame.column(filled.event).values[row] ?? -1);
        return `${day} ${said} ${known ? `planting ${about(planting)}` : `bed ${about(bed)}`}`;
      });
    };
    return { plantings, beds, sown, ready, cleared, table, filled, planting, bed, generator, jobs, ...work };
  }

  const day = civilDay(2027, 3, 1);

  test('in date order; equal dates in the order of declaration, then of rows', () => {
    const { plantings, beds, sown, ready, cleared, filled, planting, bed, generator, frame, make, jobs } = setting();
    expect(make()).toBe('');
    expect(jobs()).toEqual([]);
    frame.write(sown, 0, day + 1, FILLED);
    frame.write(sown, 2, day, FILLED);
    frame.write(ready, 0, day + 1, FILLED);
    frame.write(ready, 1, 7, FAULT);
    frame.write(cleared, 0, day + 1, FILLED);
    make();
    expect(jobs()).toEqual([
      '2027-03-01 Sow planting 2',
      '2027-03-02 Sow planting 0',
      '2027-03-02 Harvest planting 0',
      '2027-03-02 Clear bed 0',
    ]);
    frame.setLive(plantings, 2, false);
    frame.write(cleared, 0, day - 1, FILLED);
    make();
    expect(jobs()).toEqual(['2027-02-28 Clear bed 0', '2027-03-02 Sow planting 0', '2027-03-02 Harvest planting 0']);
    expect(generator.inputs).toEqual([
      { rowsOf: plantings },
      { column: sown },
      { rowsOf: plantings },
      { column: ready },
      { rowsOf: beds },
      { column: cleared },
    ]);
    expect(generator.columns).toEqual([filled.date, filled.event, filled.kind, planting, bed]);
  });

  test('keeps its slot while its date is filled, whatever the date, and tells that it changed', () => {
    const { sown, table, frame, make, jobs } = setting();
    for (const row of [0, 1, 2]) frame.write(sown, row, day + row, FILLED);
    make();
    expect([...frame.rows(table)]).toEqual([0, 1, 2]);
    frame.write(sown, 0, day + 9, FILLED);
    expect(make(new RowSet(), rowsOf(0))).toBe('0');
    expect([...frame.rows(table)]).toEqual([1, 2, 0]);
    frame.write(sown, 1, 0, BLANK);
    expect(make(new RowSet(), rowsOf(1))).toBe('1');
    expect(jobs()).toEqual(['2027-03-03 Sow planting 2', '2027-03-10 Sow planting 0']);
    // Not before all have heard that the event went does another take its slot.
    frame.write(sown, 1, day, FILLED);
    expect(make(new RowSet(), rowsOf(1))).toBe('3');
    frame.write(sown, 2, 0, BLANK);
    make(new RowSet(), rowsOf(2));
    frame.releaseSlots();
    frame.write(sown, 2, day, FILLED);
    expect(['1', '2']).toContain(make(new RowSet(), rowsOf(2)));
  });

  test('after any changes there is one row for each filled date of a row that is there, in order', () => {
    const change = fc.record({
      what: fc.constantFrom('sown', 'ready', 'cleared', 'plantings', 'beds', 'release'),
      row: fc.nat({ max: 3 }),
      value: fc.option(fc.nat({ max: 3 })),
    });
    fc.assert(
      fc.property(fc.array(change, { maxLength: 40 }), (changes) => {
        const { plantings, beds, sown, ready, cleared, frame, make, jobs } = setting();
        const columns = { sown, ready, cleared };
        make();
        for (const { what, row, value } of changes) {
          if (what === 'release') {
            frame.releaseSlots();
          } else if (what === 'plantings' || what === 'beds') {
            const table = { plantings, beds }[what];
            frame.setLive(table, row, value !== null);
            const none = (): RowSet => new RowSet();
            if (what === 'plantings') make(rowsOf(row), none(), rowsOf(row));
            else make(none(), none(), none(), none(), rowsOf(row));
          } else {
            const column = columns[what];
            if (frame.table(column.table).live[row] !== 1) continue;
            frame.write(column, row, day + (value ?? 0), value === null ? BLANK : FILLED);
            const lanes = { sown: 1, ready: 3, cleared: 5 };
            make(
              ...Array.from({ length: lanes[what] + 1 }, (_, lane) => (lane === lanes[what] ? rowsOf(row) : rowsOf())),
            );
          }
        }
        const dated = [
          { column: sown, says: (row: number) => `Sow planting ${row}` },
          { column: ready, says: (row: number) => `Harvest planting ${row}` },
          { column: cleared, says: (row: number) => `Clear bed ${row}` },
        ];
        const wanted = dated.flatMap(({ column, says }, kind) =>
          [...frame.rows(column.table)]
            .filter((row) => frame.column(column).states[row] === FILLED)
            .map((row) => ({ at: frame.column(column).values[row] ?? 0, kind, row, says: says(row) })),
        );
        wanted.sort((a, b) => a.at - b.at || a.kind - b.kind || a.row - b.row);
        expect(jobs()).toEqual(wanted.map(({ at, says }) => `${isoDate(at)} ${says}`));
      }),
    );
  });

  test('made in parts, with comings and goings between them, they are the same events, and each row that came or went is told', () => {
    const change = fc.record({
      what: fc.constantFrom('sown', 'ready', 'cleared', 'plantings', 'none'),
      row: fc.nat({ max: 2_999 }),
      value: fc.option(fc.nat({ max: 3 })),
    });
    fc.assert(
      fc.property(fc.array(change, { maxLength: 12 }), (changes) => {
        const { plantings, sown, ready, cleared, table, node, frame, jobs } = setting();
        frame.addRows(plantings, 2_997);
        for (let row = 0; row < 3_000; row += 1) {
          frame.write(sown, row, day + (row % 5), FILLED);
          if (row % 2 === 0) frame.write(ready, row, day + 7, FILLED);
        }
        const lanes = Array.from({ length: 6 }, (_, lane) => dirtyRows(frame, node, lane));
        const { known, part } = inParts(table, node, frame);
        lanes[0]?.addAll();
        expect(part()).toBe(true);
        expect(frame.rows(table).length).toBe(1_024);
        const columns = { sown, ready, cleared };
        const laneOf = { plantings: 0, sown: 1, ready: 3, cleared: 5 };
        for (const { what, row, value } of changes) {
          const at = what === 'cleared' ? 0 : row;
          if (what === 'plantings') {
            frame.setLive(plantings, at, value !== null);
            for (const lane of [0, 2]) lanes[lane]?.add(at);
          } else if (what !== 'none' && frame.table(columns[what].table).live[at] === 1) {
            frame.write(columns[what], at, day + (value ?? 0), value === null ? BLANK : FILLED);
            lanes[laneOf[what]]?.add(at);
          }
          part();
        }
        while (part());
        const said = ['Sow planting', 'Harvest planting', 'Clear bed'];
        const wanted = [sown, ready, cleared].flatMap((column, kind) =>
          [...frame.rows(column.table)]
            .filter((row) => frame.column(column).states[row] === FILLED)
            .map((row) => ({ at: frame.column(column).values[row] ?? 0, kind, row })),
        );
        wanted.sort((a, b) => a.at - b.at || a.kind - b.kind || a.row - b.row);
        expect(jobs()).toEqual(wanted.map(({ at, kind, row }) => `${isoDate(at)} ${said[kind]} ${row}`));
        expect([...known].sort((a, b) => a - b)).toEqual([...frame.rows(table)].sort((a, b) => a - b));
      }),
      { numRuns: 20 },
    );
  });
});
