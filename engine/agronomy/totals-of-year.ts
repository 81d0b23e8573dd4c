// Running totals of a year whose days repeat year after year: what lies between two days is one subtraction. Called by the
// models of warmth and cold; calls nothing. Days are offsets from the year's first day and may lie before or after it.

/** totals[i] is what the first i days gave; a day without a reading gives nothing. */
export function runningTotals(count: number, of: (day: number) => number): Float64Array {
  const totals = new Float64Array(count + 1);
  for (let day = 0; day < count; day += 1) {
    const value = of(day);
    totals[day + 1] = (totals[day] as number) + (Number.isNaN(value) ? 0 : value);
  }
  return totals;
}

/** The total up to a day, the year repeated. */
export function totalTo(totals: Float64Array, day: number): number {
  const length = totals.length - 1;
  const years = Math.floor(day / length);
  return years * (totals[length] as number) + (totals[day - years * length] as number);
}

/** The total from day `from` up to but not including day `to`, 0 where none lies between. */
export function totalBetween(totals: Float64Array, from: number, to: number): number {
  return to > from ? totalTo(totals, to) - totalTo(totals, from) : 0;
}
