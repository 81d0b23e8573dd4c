// What a case of the OpenFormula collection is, and short makers for writing them down. Used by the openformula.*.ts files
// beside it.

/** The formula must give an error, or be refused before it runs. */
export const ERROR = Symbol('an error');

export interface Case {
  /** Row in the collection's sheet. */
  readonly row: number;
  readonly formula: string;
  readonly gives: number | string | boolean | typeof ERROR;
  /** Absolute; 1e-12 of its size where absent. */
  readonly within?: number;
  /** The collection's own formula, where ours says it another way. */
  readonly instead?: string;
}

export interface Section {
  readonly section: string;
  readonly cases: readonly Case[];
}

export function section(number: string, ...cases: readonly Case[]): Section {
  return { section: number, cases };
}

export function of(
  row: number,
  formula: string,
  gives: Case['gives'],
  more: Pick<Case, 'within' | 'instead'> = {},
): Case {
  return { row, formula, gives, ...more };
}

/** What the collection calls a difference too small to matter. */
export const EPSILON = 1e-6;
