// An input against several figures as pictures: a curve each, over the same values. Pure: what was tried in, models of pictures out.

import {
  type FigureValue,
  type Input,
  type InputValue,
  isError,
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

/** The curve of one figure, in the order of the values; a sentence why there is none where it is no number at two of them. */
export function curveAgainst(
  book: Workbook,
  { input, inputName, inputType, values }: Tried,
  figure: { readonly name: string; readonly answers: readonly FigureValue[] },
): LinesModel | string {
  const { writing } = settings(book);
  const type = figure.answers.find((answer) => answer.type !== undefined)?.type;
  const unit = values.find((value) => value.unit !== undefined)?.unit;
  const at = (value: number): number =>
    inputType.kind === 'number' || inputType.kind === 'temperature'
      ? shownNumber(unit ?? inputType.unit, value)
      : value;
  const shown = type === undefined ? (value: number): number => value : inUnit(type);
  const without: string[] = [];
  const points = values
    .flatMap((value, i) => {
      const answer = figure.answers[i];
      const number = answer === undefined ? undefined : numberOf(answer);
      const words = sayInput(book, input, value);
      if (number === undefined) {
        without.push(words);
        return [];
      }
      return [{ x: at(value.value), y: shown(number), number, says: sayRounded(book, number, type), words }];
    })
    .sort((one, other) => one.x - other.x);
  const [first, last] = [points[0], points.at(-1)];
  if (first === undefined || last === undefined || points.length < 2)
    return `${figure.name} has no curve: ${whyNone(figure.answers)}`;
  const label = type === undefined ? figure.name : withUnit(book, figure.name, type);
  const best = points.reduce((most, point) => (point.y > most.y ? point : most));
  const least = points.reduce((fewest, point) => (point.y < fewest.y ? point : fewest));
  const days = { first: first.x, last: last.x };
  const xLabel = unit === undefined ? inputName : `${inputName}, ${unit.symbol}`;
  return {
    kind: 'lines',
    title: `${label}, against ${inputName}`,
    says: `${saysOf(best, least)}${without.length === 0 ? '' : ` No number at ${without.join(', ')}.`}`,
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

interface Said {
  readonly y: number;
  readonly says: string;
  readonly words: string;
}

function saysOf(best: Said, least: Said): string {
  if (best.y === least.y) return `${best.says} at every value tried.`;
  if (best.says === least.says) return `About ${best.says} at every value tried.`;
  return `Most, ${best.says}, at ${best.words}; least, ${least.says}, at ${least.words}.`;
}

function whyNone(answers: readonly FigureValue[]): string {
  for (const { value } of answers) if (isError(value)) return value.why;
  return 'it is no number at two of these values.';
}
