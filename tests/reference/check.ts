// One published check: a figure from outside beside the figure Dibble computes. tests/reference/*.checks.ts hold them;
// the reference test and the printed table both run the same list.

export interface Check {
  /** Author, year, title, table: where the published figure stands. */
  readonly source: string;
  /** What is computed, with its inputs, so that a reader can look it up. */
  readonly what: string;
  readonly unit: string;
  readonly published: number;
  readonly computed: () => number;
  /** Absolute, in the same unit; from the printed digits or the model's stated accuracy. */
  readonly tolerance: number;
  readonly standing: 'published' | 'library' | 'dataset' | 'common practice';
}
