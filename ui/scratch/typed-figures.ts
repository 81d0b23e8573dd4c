// Numbers as people type and paste them on a scratch paper: 1,234.50, $1,200.00, (45), 12 %, with the marks that the workbook's
// locale writes. A paper keeps them with a point and without marks of thousands, so that it says the same in every locale; what
// is no number stays the text that it is. Formulas are not its business.

import { plainDigits, sameDimension, type Vocabulary, type Writing } from '../../engine/index.ts';

/** An entry in its parts: what stands around the figures, and those with a point and no other mark. */
interface Parts {
  readonly minus: boolean;
  /** A sign of money in front. */
  readonly front: string;
  readonly figures: string;
  /** A sign of money or % behind. */
  readonly back: string;
}

const WITH_POINT = /^(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/;
const AS_IT_STANDS = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?%?$/;
/** No number is written longer. */
const LONGEST = 60;
/** Brackets around figures, with a sign of money in front of them or within, mean less than nothing to accountants. */
const BRACKETED = /^([^()\d]*)\(([^()]*)\)$/;
const FORM = /^([+\-−]?)\s*([^\d\s.,+\-−%]*)\s*([+\-−]?)\s*([\d.,](?:.*[\d.,])?)\s*([^\d\s.,]*)$/u;

export class TypedFigures {
  readonly #vocabulary: Vocabulary;
  readonly #local: RegExp;

  /** `writing` undefined: 1,234.50. */
  constructor(writing: Writing | undefined, vocabulary: Vocabulary) {
    this.#vocabulary = vocabulary;
    this.#local = localForm(writing);
  }

  /** What is typed, as a paper keeps it: a number with a point and without marks of thousands, anything else as it is. */
  kept(typed: string): string {
    const plain = plainDigits(typed.trim());
    const parts = this.#parts(plain, (figures) => this.#asWritten(figures) ?? withPoint(figures));
    if (parts === undefined) return typed;
    const { minus, front, figures, back } = parts;
    const gap = back === '' || back === '%' ? '' : ' ';
    return `${minus ? '-' : ''}${front}${figures}${gap}${back}`;
  }

  /** What hyperformula takes for an entry that a paper keeps: a plain number or a share of hundred, else the entry. */
  taken(entry: string): string {
    const text = entry.trim();
    if (AS_IT_STANDS.test(text)) return entry;
    const parts = this.#parts(text, (figures) => withPoint(figures) ?? this.#asWritten(figures));
    if (parts === undefined) return entry;
    const { minus, figures, back } = parts;
    return `${minus ? '-' : ''}${figures}${back === '%' ? '%' : ''}`;
  }

  #parts(text: string, read: (figures: string) => string | undefined): Parts | undefined {
    if (text.length > LONGEST) return undefined;
    const [, money = '', within] = BRACKETED.exec(text) ?? [];
    const [, sign = '', front = '', inner = '', body = '', back = ''] =
      FORM.exec(within === undefined ? text : money + within.trim()) ?? [];
    const figures = body === '' ? undefined : read(body);
    const signs = `${sign}${inner}${within === undefined ? '' : '-'}`;
    if (figures === undefined || signs.length > 1 || (front !== '' && back !== '')) return undefined;
    const isNumber = back === '%' || front + back === '' || this.#isMoney(front + back);
    return isNumber ? { minus: /[-−]/.test(signs), front, figures, back } : undefined;
  }

  #isMoney(word: string): boolean {
    if (/^\p{L}{0,3}\p{Sc}$/u.test(word)) return true;
    const [own, named] = [this.#vocabulary.find(this.#vocabulary.currency), this.#vocabulary.find(word)];
    return own !== undefined && named !== undefined && sameDimension(own.dimension, named.dimension);
  }

  #asWritten(figures: string): string | undefined {
    const [, whole, broken = '', power = ''] = this.#local.exec(figures) ?? [];
    if (whole === undefined) return undefined;
    return `${whole.replace(/\D/g, '') || '0'}${broken === '' ? '' : `.${broken}`}${power}`;
  }
}

function withPoint(figures: string): string | undefined {
  return WITH_POINT.test(figures) ? figures : undefined;
}

/** Figures with the marks of a place: 1,234.50 or 1.234,50, 1 234,50 with blanks of any kind, 1'234.50, 12,34,567. */
function localForm(writing: Writing | undefined): RegExp {
  const { decimal = '.', group = ',', locale = 'en' } = writing ?? {};
  const mark = /\s/.test(group) ? '[ \u00a0\u2009\u202f]' : /['\u2019]/.test(group) ? "['\u2019]" : `[${group}]`;
  const thousands = group === '' ? '' : `\\d{1,3}(?:${mark}\\d{${leastGroup(locale)},3})*${mark}\\d{3}|`;
  return new RegExp(`^(${thousands}\\d*)(?:[${decimal}](\\d+))?([eE][+-]?\\d+)?$`);
}

/** Of the figures between two marks: two where people count in lakhs, 12,34,567. */
function leastGroup(locale: string): number {
  const parts = new Intl.NumberFormat(locale).formatToParts(12_345_678);
  return parts.some(({ type, value }, i) => i > 0 && type === 'integer' && value.length === 2) ? 2 : 3;
}
