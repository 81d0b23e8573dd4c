// Lengths of bed as they are measured out, as commands and in words. Called by choose-amounts.ts.

import { type Book, type Chosen, type Command, rowName, settings } from '../../engine/index.ts';
import { rowAt } from './act.ts';
import type { Grown } from './choose-plantings.ts';

/** Bed is measured out in whole feet, or in tenths of a metre, rounded down, so that what was within the limits stays so. */
export const MEASURES = {
  us: { size: 0.3048, step: 1, unit: 'ft' },
  si: { size: 1, step: 0.1, unit: 'm' },
} as const;

/** One amount chosen, for whoever shows more of the answer. */
export interface ChosenLength {
  readonly name: string;
  readonly before: string;
  readonly after: string;
}

/** The lengths chosen, measured out, as commands and in words. */
export interface Lengths {
  readonly commands: readonly Command[];
  readonly chosen: readonly ChosenLength[];
  /** Ids of plantings that are no more. */
  readonly left: readonly string[];
  /** Of those that change, longer than the bed they were in. */
  readonly outgrown: number;
}

/** As near as this to another length, by that, a length is the same. */
export const SAME = 1e-6;

/** The amounts chosen, rounded down to what is measured out; one that is kept stays as it is. */
export function measuredOut(book: Book, grown: readonly Grown[], { amounts }: Chosen): readonly number[] {
  const { step } = MEASURES[settings(book).units];
  return grown.map(({ id, length }) => {
    const wanted = amounts.get(id) ?? 0;
    const amount = Number((Math.floor(wanted / step + 1e-6) * step).toFixed(1));
    return Math.abs(wanted - length) < SAME * length || Math.abs(amount - length) < step / 100 ? length : amount;
  });
}

/** Amounts one a planting, in the unit of its length. */
export function lengthsOf(book: Book, grown: readonly Grown[], amounts: readonly number[]): Lengths {
  const { size, step, unit } = MEASURES[settings(book).units];
  const left: string[] = [];
  const longer: Command[] = [];
  const chosen: ChosenLength[] = [];
  const outgrown: Command[] = [];
  for (const [i, { id, slot, length }] of grown.entries()) {
    const amount = amounts[i] ?? length;
    if (Math.abs(amount - length) < step / 100) continue;
    const before = `${Number(length.toFixed(1))} ${unit}`;
    const name = rowName(book, 'plantings', slot);
    chosen.push({ name, before, after: amount === 0 ? 'none' : `${amount} ${unit}` });
    if (amount === 0) left.push(id);
    else {
      const content = { number: amount, unit };
      const cell = { command: 'put cell', sheet: 'plantings', row: id } as const;
      longer.push({ ...cell, column: 'bed-length-used', content });
      if (amount * size > lengthOfBed(book, slot) * (1 + SAME))
        outgrown.push({ ...cell, column: 'bed', content: null });
    }
  }
  // A planting of no length is none; what a person's own sheets say of it is not lost with it.
  const commands: Command[] =
    left.length === 0
      ? [...longer, ...outgrown]
      : [...longer, ...outgrown, { command: 'remove rows', sheet: 'plantings', rows: left, linksAside: true }];
  return { commands, chosen, left, outgrown: outgrown.length };
}

/** The length of the bed that a planting has, in metres; without end where none is typed. */
function lengthOfBed(book: Book, planting: number): number {
  const bed = rowAt(book, 'plantings', '', planting).number('bed');
  if (bed === undefined) return Number.POSITIVE_INFINITY;
  return rowAt(book, 'beds', '', bed).number('length') ?? Number.POSITIVE_INFINITY;
}
