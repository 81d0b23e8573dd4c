// The range in which a model holds, as data beside the model. The calling layer refuses arguments outside it with a
// sentence made of `why`, so that nothing extrapolates silently.

/** The span of one argument, in the unit the model takes it in; an absent end is open. */
export interface Limit {
  readonly min?: number;
  readonly max?: number;
  /** Who sets the limit, as a grower can read it: 'Ellis & Roberts 1980: 5 to 25 % moisture'. */
  readonly why: string;
}

export type Limits = Readonly<Record<string, Limit>>;
