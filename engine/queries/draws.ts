// Seasons drawn by chance: every figure that is not known for sure is drawn between its lowest and highest, most often near
// what is likely (triangular), the workbook is worked out on a branch, and the figures asked for are noted. One stream of chance
// an input, by its id, so that an edit elsewhere does not reshuffle it. The streams come from outside: the engine has no chance.
//
// A draw is a trial of the whole plan, brought up to date only as far as the figures rest on it; a face runs it in a worker.

import type { Command } from '../commands/command.ts';
import type { Workbook } from '../commands/workbook.ts';
import { checkText } from '../schema/check.ts';
import { formulaText } from '../schema/lay-over.ts';
import { isEnteredSheet, isOneRow } from '../schema/schema.ts';
import type { CellAddress } from '../values/error.ts';
import type { ValueType } from '../values/type.ts';
import { type Book, sheetOf } from './book.ts';
import { type Figure, figureIn, numberOf } from './figures.ts';
import { putInput } from './inputs.ts';
import { rows } from './rows.ts';
import type { UncertainInput } from './uncertain.ts';

/** Numbers from 0 up to but not 1, the same again for the same seed and input. */
export type StreamOf = (inputId: string) => () => number;

export interface DrawnFigure {
  readonly type: ValueType | undefined;
  /** Canonical, a season each; NaN where the figure was blank or an error. */
  readonly values: Float64Array;
}

export interface Drawn {
  readonly inputs: readonly UncertainInput[];
  /** What was drawn, canonical: by input, then by season. */
  readonly drawn: readonly Float64Array[];
  readonly figures: readonly DrawnFigure[];
}

/** So many seasons that no face could hold more. */
export const MOST_DRAWS = 100_000;

export class Draws {
  readonly #branch: Workbook;
  readonly #inputs: readonly UncertainInput[];
  readonly #figures: readonly Figure[];
  readonly #wanted: readonly CellAddress[] | undefined;
  readonly #drawn: readonly Float64Array[];
  readonly #values: readonly Float64Array[];
  readonly #types: (ValueType | undefined)[];
  readonly #count: number;
  #done = 0;

  constructor(
    workbook: Workbook,
    inputs: readonly UncertainInput[],
    figures: readonly Figure[],
    count: number,
    streamOf: StreamOf,
  ) {
    this.#branch = workbook.branch();
    this.#inputs = inputs;
    this.#figures = figures;
    this.#count = count;
    this.#wanted = wantedCells(workbook, figures);
    this.#values = figures.map(() => new Float64Array(count));
    this.#types = figures.map((figure) => figureIn(workbook, figure).type);
    this.#drawn = inputs.map((input) => {
      const next = streamOf(input.id);
      return Float64Array.from({ length: count }, () => drawnFrom(input, next()));
    });
  }

  get done(): number {
    return this.#done;
  }

  get isDone(): boolean {
    return this.#done >= this.#count;
  }

  /** Draws so many seasons more; the sentence of a refusal, which ends it. */
  step(seasons: number): string | undefined {
    const until = Math.min(this.#count, this.#done + seasons);
    for (; this.#done < until; this.#done++) {
      const at = this.#done;
      const commands = this.#inputs.map(
        (input, i): Command => putInput(this.#branch, input, { value: this.#drawn[i]?.[at] ?? 0, unit: undefined }),
      );
      const refused = this.#branch.tryOut(commands, this.#wanted);
      if (refused !== undefined) return refused;
      this.#figures.forEach((figure, i) => {
        const found = figureIn(this.#branch, figure);
        const values = this.#values[i];
        if (values !== undefined) values[at] = numberOf(found) ?? Number.NaN;
      });
    }
    return undefined;
  }

  /** What was drawn so far. */
  result(): Drawn {
    const upTo = (values: Float64Array): Float64Array => values.slice(0, this.#done);
    return {
      inputs: this.#inputs,
      drawn: this.#drawn.map(upTo),
      figures: this.#values.map((values, i) => ({ type: this.#types[i], values: upTo(values) })),
    };
  }
}

/** A triangular value from an even one: the inverse of its distribution (Kotz & van Dorp 2004, Beyond Beta, section 1.2). */
export function drawnFrom({ low, likely, high, whole }: Omit<UncertainInput, 'id'>, even: number): number {
  const span = high - low;
  const below = span === 0 ? 0 : (likely - low) / span;
  const value =
    even < below
      ? low + Math.sqrt(even * span * (likely - low))
      : high - Math.sqrt((1 - even) * span * (high - likely));
  return whole ? Math.round(value) : value;
}

/**
 * The cells that the figures read, where those stand in rows that people enter; undefined, for all there are, where a figure
 * reads rows that follow from others and may come and go from draw to draw.
 */
function wantedCells(book: Book, figures: readonly Figure[]): readonly CellAddress[] | undefined {
  const { program } = book.document;
  const columns = new Set<string>();
  for (const figure of figures) {
    if (figure.figure === 'findings') return undefined;
    if (figure.figure === 'cell') {
      columns.add(`${figure.sheet}/${figure.column}`);
      continue;
    }
    const text = formulaText(figure.formula, program.schema);
    for (const { id } of checkText(text, {}, program.catalog, program.vocabulary).found) columns.add(id);
  }
  const cells: CellAddress[] = [];
  for (const place of columns) {
    const [sheetId = '', column] = place.split('/');
    const sheet = sheetOf(book, sheetId);
    if (sheet === undefined || !(isEnteredSheet(sheet.schema) || isOneRow(sheet.schema))) return undefined;
    if (column !== undefined) for (const row of rows(book, sheetId)) cells.push({ sheet: sheetId, row, column });
  }
  return cells;
}
