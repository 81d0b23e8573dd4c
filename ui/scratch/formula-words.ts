// An A1 formula cut into words, for what is done to its text: moving its relative references as it is pasted elsewhere, other
// separators, references by rows and columns as the clipboard of some spreadsheets has them. What the words mean is
// hyperformula's business.

import { PAPER_COLUMNS, PAPER_ROWS } from '../../engine/index.ts';
import { type At, columnAt, columnLetters } from './addresses.ts';

export type WordKind =
  | 'text'
  | 'number'
  | 'cell'
  /** Whole columns or rows: 'A:C', '2:4'. */
  | 'lines'
  /** The cells in which a column of the workbook stands. */
  | 'block'
  | 'name'
  /** A name right before a bracket. */
  | 'function'
  /** 'Paper 2'! with its quotes and its mark. */
  | 'paper'
  | 'fault'
  | 'sign'
  | 'space';

export interface Word {
  readonly kind: WordKind;
  readonly text: string;
}

/** Each in its turn at the start of what is left. */
const FORMS: readonly (readonly [WordKind, RegExp])[] = [
  ['space', /^\s+/],
  ['text', /^"(?:[^"]|"")*"/],
  ['paper', /^(?:'(?:[^']|'')+'|[\p{L}_][\p{L}\p{N}_.]*)!/u],
  ['fault', /^#(?:REF!|N\/A|NAME\?|VALUE!|DIV\/0!|NUM!|ERROR!|NULL!)/],
  ['lines', /^(?:\$?[A-Za-z]{1,3}:\$?[A-Za-z]{1,3}|\$?[0-9]+:\$?[0-9]+)(?![\p{L}\p{N}_.(])/u],
  ['cell', /^\$?[A-Za-z]{1,3}\$?[1-9][0-9]{0,6}(?![\p{L}\p{N}_.(])/u],
  ['function', /^[\p{L}_][\p{L}\p{N}_.]*(?=\()/u],
  ['name', /^[\p{L}_\\][\p{L}\p{N}_.]*/u],
  ['number', /^(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][+-]?[0-9]+)?/],
  ['sign', /^(?:<=|>=|<>|[\s\S])/],
];

/** The words of a formula, its = among them; joined again they are the formula. */
export function wordsOf(formula: string): readonly Word[] {
  const words: Word[] = [];
  for (let left = formula; left !== ''; ) {
    const word = nextWord(left);
    words.push(word);
    left = left.slice(word.text.length);
  }
  return words;
}

function nextWord(left: string): Word {
  for (const [kind, form] of FORMS) {
    const [text] = form.exec(left) ?? [];
    if (text !== undefined) return { kind, text };
  }
  return { kind: 'sign', text: left.slice(0, 1) };
}

export function isFormula(entry: string): boolean {
  return entry.length > 1 && entry.startsWith('=');
}

function joined(words: readonly Word[]): string {
  return words.map(({ text }) => text).join('');
}

/** The formula as it reads when it is pasted so many rows and columns away: what has no $ moves along. */
export function moveFormula(formula: string, rows: number, columns: number): string {
  if (!isFormula(formula) || (rows === 0 && columns === 0)) return formula;
  return joined(
    wordsOf(formula).map((word) => {
      if (word.kind === 'cell') return { ...word, text: movedCell(word.text, rows, columns) };
      if (word.kind === 'lines') return { ...word, text: movedLines(word.text, rows, columns) };
      return word;
    }),
  );
}

function movedCell(text: string, rows: number, columns: number): string {
  const [, fixedColumn = '', letters = '', fixedRow = '', digits = ''] =
    /^(\$?)([A-Za-z]+)(\$?)([0-9]+)$/.exec(text) ?? [];
  const column = movedTo(columnAt(letters), fixedColumn === '' ? columns : 0, PAPER_COLUMNS);
  const row = movedTo(Number(digits) - 1, fixedRow === '' ? rows : 0, PAPER_ROWS);
  return column === undefined || row === undefined
    ? '#REF!'
    : `${fixedColumn}${columnLetters(column)}${fixedRow}${row + 1}`;
}

function movedLines(text: string, rows: number, columns: number): string {
  const ends = text.split(':').map((end) => {
    const fixed = end.startsWith('$') ? '$' : '';
    const line = end.slice(fixed.length);
    if (/^[0-9]/.test(line)) {
      const row = movedTo(Number(line) - 1, fixed === '' ? rows : 0, PAPER_ROWS);
      return row === undefined ? undefined : `${fixed}${row + 1}`;
    }
    const column = movedTo(columnAt(line), fixed === '' ? columns : 0, PAPER_COLUMNS);
    return column === undefined ? undefined : `${fixed}${columnLetters(column)}`;
  });
  return ends.includes(undefined) ? '#REF!' : ends.join(':');
}

function movedTo(place: number, by: number, end: number): number | undefined {
  const moved = place + by;
  return moved < 0 || (by !== 0 && moved >= end) ? undefined : moved;
}

/**
 * Formulas of places that write 1,5 and part arguments by semicolons, as formulas here have them: a point and commas. One
 * without a semicolon stays as it is.
 */
export function withCommas(formula: string): string {
  if (!isFormula(formula)) return formula;
  const words = wordsOf(formula);
  let braces = 0;
  const outside = words.map(({ text }) => {
    if (text === '{') braces += 1;
    if (text === '}') braces -= 1;
    return braces === 0;
  });
  if (!words.some(({ text }, i) => text === ';' && outside[i] === true)) return formula;
  return joined(
    words.map((word, i) => {
      if (word.kind !== 'sign' || outside[i] !== true) return word;
      if (word.text === ';') return { ...word, text: ',' };
      const within = words[i - 1]?.kind === 'number' && words[i + 1]?.kind === 'number';
      return word.text === ',' && within ? { ...word, text: '.' } : word;
    }),
  );
}

/** A formula with references such as R[-1]C or R2C3, as it stands in a cell. */
export function fromRowsAndColumns(formula: string, { row, column }: At): string {
  return formula.replace(
    /"(?:[^"]|"")*"|(?<![\p{L}\p{N}_.])R(?:\[(-?\d+)\]|(\d+))?C(?:\[(-?\d+)\]|(\d+))?(?![\p{L}\p{N}_.(])/gu,
    (whole, rowBy?: string, rowAt?: string, columnBy?: string, columnAt?: string) => {
      if (whole.startsWith('"')) return whole;
      const down = rowAt === undefined ? row + Number(rowBy ?? 0) : Number(rowAt) - 1;
      const along = columnAt === undefined ? column + Number(columnBy ?? 0) : Number(columnAt) - 1;
      if (down < 0 || along < 0) return '#REF!';
      return `${columnAt === undefined ? '' : '$'}${columnLetters(along)}${rowAt === undefined ? '' : '$'}${down + 1}`;
    },
  );
}

/** The formula after a paper that it names was given another name. */
export function withPaperRenamed(formula: string, before: string, after: string): string {
  return withPapersRenamed(formula, new Map([[before.toLowerCase(), after]]));
}

/** The same of several papers, by what they were called before in small letters: all at once, since one may get what another was called. */
export function withPapersRenamed(formula: string, after: ReadonlyMap<string, string>): string {
  if (!isFormula(formula)) return formula;
  return joined(
    wordsOf(formula).map((word) => {
      const name = word.kind === 'paper' ? after.get(paperNamed(word.text).toLowerCase()) : undefined;
      return name === undefined ? word : { ...word, text: `'${name.replaceAll("'", "''")}'!` };
    }),
  );
}

/** 'Paper 2'! is Paper 2. */
export function paperNamed(text: string): string {
  const name = text.slice(0, -1);
  return name.startsWith("'") ? name.slice(1, -1).replaceAll("''", "'") : name;
}
