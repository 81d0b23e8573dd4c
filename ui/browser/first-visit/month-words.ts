// The twelve months in words, as they were read. Pure; the question of the climate shows it.

export interface MonthTexts {
  readonly month: string;
  /** As the sheet shows it, with its scale where that is not the workbook's. */
  readonly low: string;
  readonly high: string;
}

/**
 * 'Low and high as read, in °C: January -7 to 3, ...', so that a slip is seen where it was made: in the scale that the figures were
 * typed in, said once where all have the same. Undefined until all twelve are in. `usual` is the scale of figures that show none.
 */
export function asReadWords(months: readonly MonthTexts[], usual: string): string | undefined {
  if (months.length < 12 || months.some(({ low, high }) => low === '' || high === '')) return undefined;
  const read = months.map(({ month, low, high }) => ({ month, ends: [partedOf(low, usual), partedOf(high, usual)] }));
  const [scale, ...others] = new Set(read.flatMap(({ ends }) => ends.map((end) => end.scale)));
  const isOne = others.length === 0;
  const said = read.map(({ month, ends }) => {
    const words = ends.map((end) => (isOne ? end.figure : `${end.figure} ${end.scale}`));
    return `${month} ${words.join(' to ')}`;
  });
  return `Low and high as read${isOne ? `, in ${scale}` : ''}: ${said.join(', ')}.`;
}

function partedOf(text: string, usual: string): { readonly figure: string; readonly scale: string } {
  const [, figure = text, scale = usual] = /^(.*?)\s*(°[CF])$/.exec(text) ?? [];
  return { figure, scale };
}
