// What a few observations say together: their mean and how far they spread. Called by the models that are fitted to records.

export interface MeanAndDeviation {
  /** Not a number where there is nothing. */
  readonly mean: number;
  /** Standard deviation (n - 1), in the unit of the values; not a number for fewer than two. */
  readonly deviation: number;
}

/** Mean and standard deviation of values, all of them numbers. */
export function meanAndDeviation(values: readonly number[]): MeanAndDeviation {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return { mean, deviation: values.length > 1 ? Math.sqrt(squares / (values.length - 1)) : Number.NaN };
}
