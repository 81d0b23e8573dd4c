// The figures in lines of temperatures as people paste them: every sign that is meant as a minus, dashes and commas that only part
// figures, and the scale that is written at them, in any script. Pure; months.ts calls it.

import { plainDigits } from '../../../engine/index.ts';

export type Scale = '°C' | '°F';

export interface FiguresLine {
  /** As it was typed, its dashes plain and its scales written one way. */
  readonly text: string;
  readonly figures: readonly number[];
}

export interface FiguresRead {
  readonly lines: readonly FiguresLine[];
  /** Written at the figures or in their heads; undefined where none is. */
  readonly scale: Scale | undefined;
  /** Figures stand in both scales, and not side by side. */
  readonly mixed: boolean;
  /** Some of the figures stand in brackets with none before them: below zero, as accounts write it, or not to be counted. */
  readonly bracketed: boolean;
}

interface Figure {
  readonly figure: number;
  readonly scale: Scale | undefined;
}

const MONTHS = 12;
/** Hyphens, dashes and minus signs in all their kinds, which different programs and keyboards write for the same. */
const DASHES = /[\u2010-\u2015\u2212\ufe58\ufe63\uff0d]/g;

/** The figures of each line; of lines that have the same in both scales, those in the scale that comes first. */
export function figuresIn(text: string): FiguresRead {
  const typed = withoutPartings(inFirstScale(text.split(/\r?\n/).map((line) => evenScales(evenDashes(line)))));
  const commasPart = commasArePartings(typed);
  const found = typed.map((line) => figuresOf(line, commasPart));
  const first = found.flat().find(({ scale }) => scale !== undefined)?.scale;
  const kept = found.map((figures) =>
    figures.some(({ scale }) => scale === first)
      ? figures.filter(({ scale }) => scale === undefined || scale === first)
      : figures,
  );
  const inHeads = new Set(typed.flatMap((line) => scalesIn(line)));
  const [head, ...others] = inHeads;
  return {
    lines: typed.map((line, at) => ({ text: line, figures: (kept[at] ?? []).map(({ figure }) => figure) })),
    scale: first ?? (others.length === 0 ? head : undefined),
    mixed: kept.flat().some(({ scale }) => scale !== undefined && scale !== first),
    bracketed: someInBrackets(typed),
  };
}

/** A figure in brackets with none before it in its cell. */
const BRACKETED = /(?<!\d *(?:°[CF]?)? *)\(\s*\d+(?:[.,]\d+)?\s*\)/;

/** Whether so stand some figures; on each of twelve lines and more they are the months' numbers. */
function someInBrackets(lines: readonly string[]): boolean {
  const having = lines.filter((line) => (line.match(/\d+/g) ?? []).length >= 2);
  const count = having.filter((line) => BRACKETED.test(line)).length;
  return count > 0 && !(count === having.length && count >= MONTHS);
}

/** '-8' for '–8', '−8', 'minus 8' and '-٨'; '12.5' for '١٢٫٥', and no marks of direction between a minus and its figure. */
function evenDashes(line: string): string {
  return plainDigits(line)
    .replace(/[\u061c\u200e\u200f\u2066-\u2069]/g, '')
    .replace(/(?<=\d)\u066b(?=\d)/g, '.')
    .replace(/\u060c/g, ',')
    .replace(/[\u00a0\u2007\u2009\u202f]/g, ' ')
    .replace(DASHES, '-')
    .replace(/\bminus\s*(?=\d)/gi, '-');
}

/** '8°C' for '8 ℃', '8 º C', '8C', '8 deg C' and '8 degrees Celsius'. */
function evenScales(line: string): string {
  return line
    .replace(/[\u00ba\u02da]/g, '°')
    .replace(/\u2103/g, '°C')
    .replace(/\u2109/g, '°F')
    .replace(/(?:\b|(?<=\d))deg(?:rees?)?\b\.?/gi, '°')
    .replace(/(?:°\s*)?(?:\b|(?<=\d))(?:celsius|centigrade)\b/gi, '°C')
    .replace(/(?:°\s*)?(?:\b|(?<=\d))fahrenheit\b/gi, '°F')
    .replace(/\(\s*([cf])\s*\)/gi, (_, letter: string) => `°${letter.toUpperCase()}`)
    .replace(/(?:(?<=\d)\s?°?|°)\s?([cf])\b/gi, (_, letter: string) => `°${letter.toUpperCase()}`);
}

/** A label or head that says of its figures that they stand in one scale, and in brackets in the other. */
const LABEL_OF_BOTH = /°([CF])\s*\(\s*°[CF]\s*\)/g;

/** Under such labels the figures in brackets behind others tell those once more, in cells of one line or of two. */
function inFirstScale(lines: readonly string[]): readonly string[] {
  const text = lines.join('\n');
  if (text.search(LABEL_OF_BOTH) < 0) return lines;
  return text
    .replace(LABEL_OF_BOTH, '°$1')
    .replace(/(?<=\d)\s*\(\s*-?\d+(?:[.,]\d+)?\s*\)/g, '')
    .split('\n');
}

function scalesIn(line: string): readonly Scale[] {
  return (['°C', '°F'] as const).filter((scale) => line.includes(scale));
}

/** A dash before the first figure, joined to a word or with a blank behind: on every line it parts a name from its figures. */
const LEADING = /^([^\d-]*)(?:(?<=\p{L})-\s*|-\s+)(?=-?\s*\d)/u;
/** Such a dash with a minus behind it: no figure has two. */
const LEADING_TO_MINUS = /^[^\d-]*-\s*-\s*\d/;

/**
 * Where every line has a dash in front of its figures, it is a bullet, or stands behind the name: no place has frost all year. In
 * fewer lines than months that goes where a minus follows one of them, or where they have no other dash: below zero in January
 * alone, by night and day, is no place either.
 */
function withoutPartings(lines: readonly string[]): readonly string[] {
  const having = lines.filter((line) => (line.match(/\d+/g) ?? []).length >= 2);
  const everyLine =
    having.every((line) => LEADING.test(line)) &&
    (having.length >= MONTHS ||
      having.some((line) => LEADING_TO_MINUS.test(line)) ||
      having.every((line) => line.split('-').length === 2));
  return lines.map((line) => partedFigures(everyLine ? line.replace(LEADING, '$1 ') : line));
}

/** The line with blanks for dashes between figures, and with each minus right before its figure. */
function partedFigures(line: string): string {
  // From 30 to 48, 30-48 and 30 - 48 are two figures, 30 -48 are two of which one is below zero; a cell of its own begins anew.
  const between = /(\d(?:°[CF]?)?)(?:-(?=\s*-?\s*\d)| *-\t+(?=-?\s*\d)|\t-\t+(?=-?\s*\d))/g;
  const loose = /(\d(?:°[CF]?)?) +- +(?=-?\s*\d)/g;
  const many = (line.match(/\d+(?:[.,]\d+)?/g) ?? []).length;
  // Twelve figures and more of which only some have a dash with a blank to each side: it is the minus of those.
  const isMinus = many >= MONTHS && (line.match(loose) ?? []).length < many - 1;
  const parted = line.replace(between, '$1 ');
  return (isMinus ? parted : parted.replace(loose, '$1 ')).replace(/-\s+(?=\d)/g, '-');
}

/** Whether commas stand between figures rather than within them: where points stand within, where one figure follows another with
    nothing else between, or where lines would hold a single figure otherwise. */
function commasArePartings(lines: readonly string[]): boolean {
  const having = lines.filter((line) => /\d,\d/.test(line));
  if (having.some((line) => /\d\.\d|\d,-?\d+,/.test(line))) return true;
  return having.some((line) => figuresOf(line, false).length < 2);
}

function figuresOf(line: string, commasPart: boolean): readonly Figure[] {
  const found = line.matchAll(commasPart ? /(-?\d+(?:\.\d+)?)(°[CF])?/g : /(-?\d+(?:[.,]\d+)?)(°[CF])?/g);
  return [...found].map(([, figure = '', scale]) => ({
    figure: Number(figure.replace(',', '.')),
    scale: scale === '°C' || scale === '°F' ? scale : undefined,
  }));
}
