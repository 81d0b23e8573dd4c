// What is asked of drawn seasons, and what they answer.

import type { AskedWeeks, Chance, HangsOn, Interval, NamedFigure } from '../../../engine/index.ts';

/** What is asked of drawn seasons: one figure, or one of every week. */
export type LikelyFigure =
  | { readonly by: 'season'; readonly named: NamedFigure }
  | { readonly by: 'week'; readonly name: string; readonly weekly: AskedWeeks };

export interface Goal {
  readonly side: 'at least' | 'at most';
  readonly value: number;
  /** What it is called where it is not reached: 'Runs short'. */
  readonly missed?: string;
}

export interface DrawnWeek {
  readonly week: number;
  readonly interval: Interval;
  readonly chance: Chance | undefined;
}

export interface DrawnAnswer {
  readonly figure: LikelyFigure;
  readonly count: number;
  readonly seed: number;
  readonly goal: Goal | undefined;
  /** Of the figure; of one by week, of its sum over the weeks. */
  readonly interval: Interval | undefined;
  readonly chance: Chance | undefined;
  readonly weeks: readonly DrawnWeek[];
  /** Of a figure of the season: the value below which each share of them lies, from the least to the most. */
  readonly quantiles: readonly { readonly share: number; readonly value: number }[];
  /** Undefined where it has no spread. */
  readonly hangsOn: HangsOn | undefined;
  /** The plan has changed since. */
  readonly old: boolean;
}
