// An input against several figures as pictures: a curve each, over the same values. Pure: what was tried in, models of pictures out.

import {
  type FigureValue,
  type Input,
  type InputValue,
  numberOf,
  sayInput,
  settings,
  shownNumber,
  type ValueType,
  type Workbook,
} from '../../../engine/index.ts';
import { monthMarks } from '../panels/read.ts';
import type { LinesModel } from '../pictures/kit/model.ts';
import { axisOf, inUnit, sayRounded, withUnit } from './likely-model.ts';

export interface Tried {
  readonly input: Input;
  /** Of the input: 'Keeper clumps / In-row spacing'. */
  readonly inputName: string;
  readonly inputType: ValueType;
  readonly values: readonly InputValue[];
}

/** The curve of one figure; undefined where it is no number at two of the values. */
export function curveAgainst(
  book: Workbook,
  { input, inputName, inputType, values }: Tried,
  figure: { readonly name: string; readonly answers: readonly FigureValue[] },
): LinesModel | undefined {
  const { writing } = settings(book);
  const type = figure.answers.find((answer) => answer.type !== undefined)?.type;
  const unit = values.find((value) => value.unit !== undefined)?.unit;
  const at = (value: number): number =>
    inputType.kind === 'number' || inputType.kind === 'temperature'
      ? shownNumber(unit ?? inputType.unit, value)
      : value;
  const shown = type === undefined ? (value: number): number => value : inUnit(type);
  const points = values.flatMap((value, i) => {
    const answer = figure.answers[i];
    const number = answer === undefined ? undefined : numberOf(answer);
    if (number === undefined) return [];
    const says = sayRounded(book, number, type);
    return [{ x: at(value.value), y: shown(number), number, says, words: sayInput(book, input, value) }];
  });
  const [first, last] = [points[0], points.at(-1)];
  if (first === undefined || last === undefined || points.length < 2) return undefined;
  const label = type === undefined ? figure.name : withUnit(book, figure.name, type);
  const best = points.reduce((most, point) => (point.y > most.y ? point : most));
  const least = points.reduce((fewest, point) => (point.y < fewest.y ? point : fewest));
  const days = { first: Math.min(first.x, last.x), last: Math.max(first.x, last.x) };
  const xLabel = unit === undefined ? inputName : `${inputName}, ${unit.symbol}`;
  return {
    kind: 'lines',
    title: `${label}, against ${inputName}`,
    says:
      best.y === least.y
        ? `${best.says} at every value tried.`
        : `Most, ${best.says}, at ${best.words}; least, ${least.says}, at ${least.words}.`,
    today: undefined,
    x:
      inputType.kind === 'date'
        ? { label: inputName, from: days.first, to: days.last, marks: monthMarks(days, writing) }
        : axisOf(
            xLabel,
            points.map(({ x }) => x),
            writing,
          ),
    y: axisOf(
      label,
      points.map(({ y }) => y),
      writing,
    ),
    bands: [],
    lines: [{ name: figure.name, mark: 'line-accent', points: points.map(({ x, y }) => ({ x, y })) }],
    dots: points.map(({ x, y, words, says }) => ({ name: `${words}: ${says}`, x, y })),
    readings: points.map(({ x, words, says }) => ({ x, words: `${words}: ${says}.` })),
    table: { head: [inputName, label], rows: points.map(({ words, says }) => [words, says]) },
  };
}
