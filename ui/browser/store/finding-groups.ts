// What needs attention, findings of one reason together: ten lettuces with one reason are one line. Pure; the season at a glance
// calls it.

import type { Finding } from '../../../engine/index.ts';

export interface FindingGroup {
  /** What they have in common and no other group has: told apart by it. */
  readonly reason: string;
  /** The first of them, which the line leads to. */
  readonly first: Finding;
  readonly count: number;
  /** All of them, in the order of the sheet. */
  readonly all: readonly Finding[];
  /** Names of the rows, in the order of the sheet; the one row of a sheet is called by the sheet alone. */
  readonly rows: readonly string[];
  /** What holds for all of them: where they differ in figures or names, an ellipsis; where in more, what the first says, by its name. */
  readonly says: string;
  readonly alike: boolean;
}

/** Groups in the order of their first findings: gravest first. */
export function groupFindings(findings: readonly Finding[]): readonly FindingGroup[] {
  const groups = new Map<string, Finding[]>();
  for (const finding of findings) {
    const reason = finding.check === '' ? withoutFigures(finding.says) : finding.check;
    const key = [finding.level, finding.sheet, finding.column, reason].join('\n');
    const there = groups.get(key);
    if (there === undefined) groups.set(key, [finding]);
    else there.push(finding);
  }
  return [...groups].flatMap(([reason, all]): readonly FindingGroup[] => {
    const [first] = all;
    if (first === undefined) return [];
    const alike = all.every(({ says }) => says === first.says);
    return [
      {
        reason,
        first,
        count: all.length,
        all,
        rows: all.map(({ rowName }) => rowName).filter((name) => name !== '' && name !== first.sheetName),
        says: alike ? first.says : saidOfAll(first, all),
        alike,
      },
    ];
  });
}

const LEFT_OUT = '\u2026';

/** Words, spaces, stops and brackets, so that what is joined again is the sentence. */
const PIECES = /\s+|[()]|[,;:.](?=[\s)]|$)|(?:(?![,;:.](?:[\s)]|$))[^\s()])+/g;

/**
 * What all sentences have in common, with an ellipsis where they differ; the first one by its name where that is less than half of it,
 * or where they differ in words: what is left of two sentences is none.
 */
function saidOfAll(first: Finding, all: readonly Finding[]): string {
  const whole = piecesOf(first.says);
  const others = [...new Set(all.map(({ says }) => says))].map(piecesOf);
  const common = others.reduce(inCommon, whole);
  if (wordsIn(common) * 2 < wordsIn(whole) || others.some((pieces) => leavesOutWords(pieces, common)))
    return first.rowName === '' ? first.says : `${first.rowName}: ${first.says}`;
  return common.join('').replace(/\u2026(?:\s*\u2026)+/g, LEFT_OUT);
}

/** Whether of what is left out of a sentence more is words than figures and names. */
function leavesOutWords(pieces: readonly string[], common: readonly string[]): boolean {
  const kept = [...common];
  const left = pieces.filter((piece) => {
    const at = kept.indexOf(piece);
    if (at >= 0) kept.splice(at, 1);
    return at < 0;
  });
  const words = left.filter((piece) => /^[^\p{L}\p{N}]*\p{Ll}/u.test(piece) && !/\p{N}/u.test(piece));
  return words.length * 2 > wordsIn(left);
}

function piecesOf(says: string): readonly string[] {
  return says.match(PIECES) ?? [];
}

function wordsIn(pieces: readonly string[]): number {
  return pieces.filter((piece) => /[\p{L}\p{N}]/u.test(piece)).length;
}

/** Piece by piece where there are as many; else the same beginning and the same end. */
function inCommon(one: readonly string[], other: readonly string[]): readonly string[] {
  if (one.length === other.length) return one.map((piece, at) => (piece === other[at] ? piece : LEFT_OUT));
  const least = Math.min(one.length, other.length);
  let begin = 0;
  while (begin < least && one[begin] === other[begin]) begin += 1;
  let end = 0;
  while (end < least - begin && one.at(-1 - end) === other.at(-1 - end)) end += 1;
  return [...one.slice(0, begin), LEFT_OUT, ...one.slice(one.length - end)];
}

function withoutFigures(says: string): string {
  return says.replace(/\d[\d.,]*/g, '0');
}

/** 'Lettuce 1, Lettuce 2 and 8 more'. */
export function rowsInWords({ rows }: FindingGroup, most = 2): string {
  const named = rows.slice(0, rows.length === most + 1 ? most + 1 : most);
  const more = rows.length - named.length;
  return more > 0 ? `${named.join(', ')} and ${more} more` : named.join(', ');
}
