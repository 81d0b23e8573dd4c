// The dictionary of a workbook's texts and the list of its errors: columns hold their numbers. Texts that differ only in
// case share a folded number, by which they are compared (OpenFormula compares text ignoring case).

import type { CellError } from './error.ts';

export class Texts {
  readonly #texts: string[] = [];
  readonly #codes = new Map<string, number>();
  readonly #folds: number[] = [];
  readonly #foldCodes = new Map<string, number>();
  /** Texts in small letters, by folded number. */
  readonly #folded: string[] = [];

  /** The number of a text, new or known. */
  code(text: string): number {
    const known = this.#codes.get(text);
    if (known !== undefined) return known;
    const code = this.#texts.length;
    this.#texts.push(text);
    this.#codes.set(text, code);
    const folded = text.toLowerCase();
    let fold = this.#foldCodes.get(folded);
    if (fold === undefined) {
      fold = this.#folded.length;
      this.#foldCodes.set(folded, fold);
      this.#folded.push(folded);
    }
    this.#folds.push(fold);
    return code;
  }

  text(code: number): string {
    return this.#texts[code] ?? '';
  }

  /** Equal for texts that are equal ignoring case. */
  fold(code: number): number {
    return this.#folds[code] ?? -1;
  }

  /** Below zero where a text stands before another, case aside, above where after it, 0 where they are equal. */
  order(a: number, b: number): number {
    const [one, other] = [this.fold(a), this.fold(b)];
    if (one === other) return 0;
    return (this.#folded[one] ?? '') < (this.#folded[other] ?? '') ? -1 : 1;
  }

  /** The folded number of a text that may not be in the dictionary; -1 where no text is like it. */
  foldOf(text: string): number {
    return this.#foldCodes.get(text.toLowerCase()) ?? -1;
  }
}

export class Faults {
  readonly #errors: CellError[] = [];
  readonly #numbers = new Map<string, number>();

  /** The number of an error; equal errors (kind, sentence, place) share one. */
  number(error: CellError): number {
    const at = error.at === undefined ? '' : `${error.at.sheet}\u0000${error.at.row}\u0000${error.at.column}`;
    const key = `${error.error}\u0000${error.why}\u0000${at}`;
    const known = this.#numbers.get(key);
    if (known !== undefined) return known;
    this.#errors.push(error);
    this.#numbers.set(key, this.#errors.length - 1);
    return this.#errors.length - 1;
  }

  error(number: number): CellError {
    return this.#errors[number] ?? { error: 'value', why: 'An error without a record.' };
  }
}
