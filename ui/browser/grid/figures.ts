// How figures stand in a column: the parts of a shown number and the invisible room that lines every one of them up on
// the decimal mark, with a place for units that single cells bring along. Pure; the cell renderer calls it.

/** A figure as a cell shows it, and the unit after it where the cell has one of its own. */
export interface Figure {
  readonly figure: string;
  readonly unit: string;
  /** Between which it lies: '900 to 1,500'; '' where that is not known. */
  readonly ends: string;
}

export interface FigureParts {
  /** '1,240' of '1,240.50'. */
  readonly whole: string;
  /** '.50' with its mark; '' where there is none. */
  readonly fraction: string;
}

/** What the longest of a column's figures need after the decimal mark and after the number. */
export interface Room {
  readonly fraction: string;
  readonly unit: string;
  readonly ends: string;
  /** The mark between whole and broken part; a point where absent. */
  readonly decimal?: '.' | ',';
}

export const NO_ROOM: Room = { fraction: '', unit: '', ends: '' };

const WITH_POINT = /^([-\u2212]?[\d,\u00a0\u202f'\u2019]*\d)(\.\d+)?$/;
const WITH_COMMA = /^([-\u2212]?[\d.\u00a0\u202f'\u2019]*\d)(,\d+)?$/;

/** The parts of a figure; undefined for what is no single number: '2 ft 6 in', a word. */
export function figureParts(figure: string, decimal: '.' | ',' = '.'): FigureParts | undefined {
  const match = (decimal === ',' ? WITH_COMMA : WITH_POINT).exec(figure);
  return match === null ? undefined : { whole: match[1] ?? '', fraction: match[2] ?? '' };
}

/** The room that all of these need to stand under each other. */
export function roomFor(figures: Iterable<Figure>, decimal: '.' | ',' = '.'): Room {
  let fraction = '';
  let unit = '';
  let ends = '';
  for (const one of figures) {
    const parts = figureParts(one.figure, decimal);
    if (parts === undefined) continue;
    if (parts.fraction.length > fraction.length) fraction = parts.fraction;
    if (one.unit.length > unit.length) unit = one.unit;
    if (one.ends.length > ends.length) ends = one.ends;
  }
  return {
    fraction: fraction.replace(/\d/g, '0'),
    unit,
    ends: ends.replace(/\d/g, '0'),
    ...(decimal === '.' ? {} : { decimal }),
  };
}

/** Room for both. */
export function widerRoom(a: Room, b: Room): Room {
  return {
    ...a,
    fraction: a.fraction.length >= b.fraction.length ? a.fraction : b.fraction,
    unit: a.unit.length >= b.unit.length ? a.unit : b.unit,
    ends: a.ends.length >= b.ends.length ? a.ends : b.ends,
  };
}

/** What is to stand invisibly after a fraction so that it is as wide as the column's longest. */
export function padding(fraction: string, room: Room): string {
  return room.fraction.slice(fraction.length);
}
