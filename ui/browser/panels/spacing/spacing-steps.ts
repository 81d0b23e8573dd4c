// Which spacings the control offers: from crowded to far wider than usual, in steps that can be measured with a tape. All
// figures in the unit of the column. Pure; the spacing control and the curves call it.

/** The least and widest spacing offered and the step between two. */
export interface SpacingRange {
  readonly least: number;
  readonly most: number;
  readonly step: number;
}

/** Steps in inches and in centimetres, each up to a usual spacing. */
const STEPS: Readonly<Record<'us' | 'si', readonly (readonly [upTo: number, step: number])[]>> = {
  us: [
    [2, 0.125],
    [8, 0.25],
    [20, 0.5],
    [Number.POSITIVE_INFINITY, 1],
  ],
  si: [
    [5, 0.25],
    [20, 0.5],
    [50, 1],
    [Number.POSITIVE_INFINITY, 2],
  ],
};

/**
 * From a quarter of the usual spacing to three times it, widened where today's lies outside. Undefined where
 * neither is above zero.
 */
export function spacingRange(
  usual: number | undefined,
  today: number | undefined,
  units: 'us' | 'si',
): SpacingRange | undefined {
  const middle = isSpacing(usual) ? usual : today;
  if (!isSpacing(middle)) return undefined;
  const step = STEPS[units].find(([upTo]) => middle <= upTo)?.[1] ?? 1;
  const down = (figure: number): number => Math.max(step, Math.floor(figure / step + 1e-9) * step);
  const up = (figure: number): number => Math.ceil(figure / step - 1e-9) * step;
  const least = down(middle / 4);
  const most = up(middle * 3);
  if (!isSpacing(today)) return { least, most, step };
  return { least: Math.min(least, down(today)), most: Math.max(most, up(today)), step };
}

function isSpacing(figure: number | undefined): figure is number {
  return figure !== undefined && figure > 0 && Number.isFinite(figure);
}

/** The nearest spacing offered. */
export function snapped(figure: number, { least, most, step }: SpacingRange): number {
  return tidy(Math.min(most, Math.max(least, Math.round(figure / step) * step)));
}

/** The next spacing offered in a direction: from between two steps, to the nearer one that way. */
export function stepped(figure: number, direction: 1 | -1, range: SpacingRange): number {
  const steps = figure / range.step;
  const next = direction === 1 ? Math.floor(steps + 1e-6) + 1 : Math.ceil(steps - 1e-6) - 1;
  return snapped(next * range.step, range);
}

/** Every spacing offered, `also` among them, closest first. At most about 100: a wider range is taken in larger steps. */
export function spacingsOf({ least, most, step }: SpacingRange, also: number | undefined): readonly number[] {
  const stride = step * Math.max(1, Math.ceil((most - least) / step / 100));
  const figures = new Set<number>();
  for (let figure = least; figure < most + stride * 1e-6; figure += stride) figures.add(tidy(figure));
  figures.add(tidy(most));
  if (isSpacing(also)) figures.add(also);
  return [...figures].sort((a, b) => a - b);
}

/** Without the dust of adding steps. */
function tidy(figure: number): number {
  return Number(figure.toFixed(6));
}
