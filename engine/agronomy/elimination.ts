// Small dense systems of linear equations by Gauss-Jordan elimination without row exchange, for matrices known to need none.
// Called by the least-squares fits and the monthly means; calls nothing.

/**
 * Eliminates in place: `rows` is a square matrix with the right-hand side behind its last column. Afterwards row i holds its
 * pivot at i and, behind the last column, the pivot times unknown i; the rest is used up.
 */
export function eliminate(rows: readonly (number[] | Float64Array)[]): void {
  const size = rows.length;
  for (const [column, lead] of rows.entries()) {
    const pivot = lead[column] as number;
    for (const row of rows) {
      if (row === lead) continue;
      const factor = (row[column] as number) / pivot;
      for (let j = column; j <= size; j += 1) row[j] = (row[j] as number) - factor * (lead[j] as number);
    }
  }
}
