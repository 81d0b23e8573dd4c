// Two windows on one workbook: one keeps the order of changes, the other does its own at once and hears the order later. Whatever
// is done in either, and however late the messages come, both end as the order says, to the last bit and with the same
// history; and so does whoever reads the steps afterwards.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { HistoryReach, historyOf, type Step, type Workbook } from '../../engine/index.ts';
import { runs } from '../runs.ts';
import { type Chances, chances, commandFor } from './any-command.ts';
import { everything, openFarm } from './farm.ts';

const MESSAGE = { code: 'work', parts: {} };

type Act =
  | { readonly at: 'first' | 'second'; readonly does: 'command'; readonly by: Chances; readonly joined: boolean }
  | { readonly at: 'first'; readonly does: 'undo' | 'redo' | 'drop' }
  | { readonly at: 'first' | 'second'; readonly does: 'hear' };

const act: fc.Arbitrary<Act> = fc.oneof(
  {
    weight: 6,
    arbitrary: fc.record({
      at: fc.constantFrom('first', 'second'),
      does: fc.constant('command'),
      by: chances,
      joined: fc.boolean(),
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({ at: fc.constant('first'), does: fc.constantFrom('undo', 'undo', 'redo', 'redo', 'drop') }),
  },
  { weight: 3, arbitrary: fc.record({ at: fc.constantFrom('first', 'second'), does: fc.constant('hear') }) },
);

const asSent = <T>(thing: T): T => JSON.parse(JSON.stringify(thing)) as T;

/** The two windows, the steps in their order, and what each has not heard yet. */
class Windows {
  readonly first = openFarm(undefined, 'anna');
  readonly second = openFarm(undefined, 'berta');
  readonly order: Step[] = [];
  /** Done in the second window, and not yet heard of in the order. */
  later: readonly Step[] = [];
  readonly toFirst: Step['done'][] = [];
  readonly toSecond: Step[] = [];

  constructor() {
    this.first.subscribe(({ transaction, inverse }) => {
      const step = asSent({ done: transaction, inverse });
      this.order.push(step);
      this.toSecond.push(step);
    });
    this.second.subscribe(({ transaction, inverse, received }) => {
      if (received) return;
      this.later = [...this.later, { done: transaction, inverse }];
      this.toFirst.push(asSent(transaction));
    });
  }

  do(act: Act): void {
    if (act.does === 'command') {
      const workbook = act.at === 'first' ? this.first : this.second;
      const command = commandFor(workbook, act.by);
      if (command !== undefined)
        workbook.do([command], MESSAGE, { joined: act.joined, tentative: act.at === 'second' });
    } else if (act.does === 'hear') this.hear(act.at);
    else this.first[act.does]();
  }

  hear(at: 'first' | 'second'): boolean {
    if (at === 'first') {
      const sent = this.toFirst.shift();
      if (sent !== undefined) this.first.receive(sent);
      return sent !== undefined;
    }
    const step = this.toSecond.shift();
    if (step === undefined) return false;
    const [next, ...rest] = this.later;
    if (next?.done.id === step.done.id) {
      this.later = rest;
      this.second.confirm(step);
    } else this.later = this.second.receiveBefore(step, this.later);
    return true;
  }

  hearAll(): void {
    while (this.hear('first') || this.hear('second'));
  }
}

function readAfterwards(order: readonly Step[]): Workbook {
  const workbook = openFarm();
  for (const { done } of order) workbook.receive(done);
  return workbook;
}

test('both windows end as the order says, with one history', () => {
  fc.assert(
    fc.property(fc.array(act, { minLength: 1, maxLength: 24 }), (acts) => {
      const windows = new Windows();
      for (const each of acts) windows.do(each);
      windows.hearAll();
      const { first, second, order } = windows;
      expect(windows.later).toEqual([]);
      expect(everything(second)).toEqual(everything(first));
      expect(second.history).toEqual(first.history);
      const after = readAfterwards(order);
      expect(everything(after)).toEqual(everything(first));
      expect(asSent(after.history)).toEqual(asSent(first.history));
    }),
    { numRuns: runs(25, 5000) },
  );
});

test('the steps from the earliest that a history holds give that history', () => {
  fc.assert(
    fc.property(fc.array(act, { minLength: 1, maxLength: 24 }), (acts) => {
      const windows = new Windows();
      for (const each of acts) windows.do(each);
      windows.hearAll();
      const { first, order } = windows;
      expect(historyOf(order)).toEqual(asSent(first.history));
      const reach = new HistoryReach();
      for (const [place, { done }] of order.entries()) reach.note(done, place);
      const from = reach.earliest ?? order.length;
      expect(historyOf(order.slice(from))).toEqual(asSent(first.history));
    }),
    { numRuns: runs(20, 2000) },
  );
});

test('a drag in the second window is one step for both, and one step back', () => {
  const windows = new Windows();
  const row = windows.second.data().rows.plantings?.[0]?.id ?? '';
  const start = everything(windows.first);
  for (const entry of ['4', '5', '6']) {
    const command = { command: 'set cell', sheet: 'plantings', row, column: 'spacing', entry } as const;
    windows.second.do([command], MESSAGE, { joined: true, tentative: true });
  }
  windows.hearAll();
  expect(windows.first.history.done).toHaveLength(1);
  expect(windows.second.history).toEqual(windows.first.history);
  windows.first.undo();
  windows.hearAll();
  expect(everything(windows.first)).toEqual(start);
  expect(everything(windows.second)).toEqual(start);
});
