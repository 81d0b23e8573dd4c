// A seed lot as it ages: its germination at every sowing date from the test on, by the sheet's own formulas, with the
// sowing date in hand and the least that may be sold.

import { type Book, isoDate, type Workbook, whyNone, yearMonthDay } from '../../../../engine/index.ts';
import { Chart, type Field } from '../../drawing/chart.tsx';
import { linePath } from '../../drawing/scale.ts';
import { dayWords, monthWords } from '../../store/day-words.ts';
import type { RowAt } from '../../store/selection.ts';
import { workbook } from '../../store/workbook.ts';
import { SEED_LOT, SEED_LOTS } from '../columns.ts';
import type { PanelProps } from '../panel.ts';
import { figureAt } from '../read.ts';

const YEAR = 365.25;
const MONTH = 30.4375;

interface AgePoint {
  readonly day: number;
  /** In percent. */
  readonly germination: number;
}

export function SeedAgeing({ row }: PanelProps) {
  const book = workbook();
  const tested = figureAt(book, SEED_LOTS, row.slot, SEED_LOT.tested);
  const sowing = figureAt(book, SEED_LOTS, row.slot, SEED_LOT.sowing);
  const now = percent(book, row.slot, SEED_LOT.germination);
  if (tested === undefined || sowing === undefined) {
    return <p class="no-curve">Enter when it was tested to see how it ages.</p>;
  }
  const last = Math.max(sowing, tested) + 4 * YEAR;
  const points = ageing(book, row, tested, last);
  if (points.every(({ germination }) => !Number.isFinite(germination))) {
    const why = whyNone(book, SEED_LOTS, row.slot, SEED_LOT.germination);
    return <p class="no-curve">No curve of ageing. {why}</p>;
  }
  const standard = percent(book, row.slot, SEED_LOT.standard);
  return (
    <Chart
      title="Germination as the lot ages"
      says={ageSentence(book, now, sowing, standard, points)}
      x={{ label: 'year', from: tested, to: last, marks: yearMarks(tested, last) }}
      y={{
        label: '% of seeds',
        from: 0,
        to: 100,
        marks: [0, 25, 50, 75, 100].map((each) => ({ figure: each, text: String(each) })),
      }}
      table={{
        head: ['Sown on', 'Germination, %'],
        rows: points
          .filter((_, index) => index % 3 === 0)
          .map(({ day, germination }) => [
            dayWords(book, day),
            Number.isFinite(germination) ? germination.toFixed(0) : '',
          ]),
      }}
      draw={(field) => (
        <>
          {standard === undefined ? null : <Standard field={field} standard={standard} />}
          <path
            class="curve"
            d={linePath(points.map(({ day, germination }) => ({ x: field.x.at(day), y: field.y.at(germination) })))}
          />
          {now === undefined ? null : <Sowing field={field} day={sowing} germination={now} />}
        </>
      )}
    />
  );
}

/** Germination were it sown on each of these days, two months apart; tried on a branch of the workbook. */
function ageing(book: Workbook, row: RowAt, from: number, to: number): readonly AgePoint[] {
  const days: number[] = [];
  for (let day = from; day <= to; day += 2 * MONTH) days.push(Math.round(day));
  const place = { sheet: SEED_LOTS, row: row.id, column: SEED_LOT.sowing };
  const answers = book.whatIf(
    days.map((day) => [{ command: 'put cell', ...place, content: { date: isoDate(day) } }]),
    [{ sheet: SEED_LOTS, row: row.slot, column: SEED_LOT.germination }],
  );
  return days.map((day, index) => {
    const share = answers[index]?.[0];
    return { day, germination: typeof share === 'number' ? share * 100 : Number.NaN };
  });
}

function percent(book: Book, slot: number, column: string): number | undefined {
  const share = figureAt(book, SEED_LOTS, slot, column);
  return share === undefined ? undefined : share * 100;
}

function yearMarks(from: number, to: number) {
  const marks: { figure: number; text: string }[] = [];
  for (let day = Math.ceil(from); day <= to; day += 1) {
    const { year, month, day: ofMonth } = yearMonthDay(day);
    if (month === 1 && ofMonth === 1) marks.push({ figure: day, text: String(year) });
  }
  return marks;
}

function Standard({ field, standard }: { readonly field: Field; readonly standard: number }) {
  const y = field.y.at(standard);
  return (
    <g>
      <line class="curve second" x1={field.left} x2={field.right} y1={y} y2={y} />
      <text x={field.right} y={y - 5} text-anchor="end">
        standard {standard.toFixed(0)}%
      </text>
    </g>
  );
}

function Sowing({
  field,
  day,
  germination,
}: {
  readonly field: Field;
  readonly day: number;
  readonly germination: number;
}) {
  const x = field.x.at(day);
  const y = field.y.at(germination);
  return (
    <g>
      <line class="today-rule" x1={x} x2={x} y1={y} y2={field.bottom} />
      <circle class="today-point" cx={x} cy={y} r={6} />
      <text class="today-text" x={x + 8} y={germination > 50 ? field.bottom - 8 : y - 8}>
        {germination.toFixed(0)}% when sown
      </text>
    </g>
  );
}

function ageSentence(
  book: Book,
  now: number | undefined,
  sowing: number,
  standard: number | undefined,
  points: readonly AgePoint[],
): string {
  const sown = now === undefined ? '' : `Sown on ${dayWords(book, sowing)}, ${now.toFixed(0)}% germinate.`;
  if (standard === undefined) return sown;
  const below = points.find(({ germination }) => germination < standard);
  const falls =
    below === undefined
      ? `It stays above the standard of ${standard.toFixed(0)}% as far as drawn.`
      : `It is below the standard of ${standard.toFixed(0)}% from about ${monthWords(book, below.day)}.`;
  return `${sown} ${falls}`.trim();
}
