// How figures stand in a column: the parts of a shown number and the invisible room that lines every one of them up on
// the decimal mark, with a place for units that single cells bring along. Pure; the cell renderer calls it.

export interface FigureParts {
  /** '1,240' of '1,240.50 kg'. */
  readonly whole: string;
  /** '.50' with its mark; '' where there is none. */
  readonly fraction: string;
  /** 'kg' where the cell was typed in another unit than the column's; else ''. */
  readonly unit: string;
}

/** What the longest of a column's figures need after the decimal mark and after the number. */
export interface Room {
  readonly fraction: string;
  readonly unit: string;
}

export const NO_ROOM: Room = { fraction: '', unit: '' };

/** The parts of a shown number; undefined where the text doesn't begin with one. */
export function figureParts(text: string): FigureParts | undefined {
  const match = /^([-\u2212]?[\d,\u00a0\u202f']*\d)(\.\d+)?(?:\s*(\D.*))?$/.exec(text);
  if (match === null) return undefined;
  return { whole: match[1] ?? '', fraction: match[2] ?? '', unit: match[3] ?? '' };
}

/** The room that all of these shown numbers need to stand under each other. */
export function roomFor(texts: Iterable<string>): Room {
  let fraction = '';
  let unit = '';
  for (const text of texts) {
    const parts = figureParts(text);
    if (parts === undefined) continue;
    if (parts.fraction.length > fraction.length) fraction = parts.fraction;
    if (parts.unit.length > unit.length) unit = parts.unit;
  }
  return { fraction: fraction.replace(/\d/g, '0'), unit };
}

/** Room for both. */
export function widerRoom(a: Room, b: Room): Room {
  return {
    fraction: a.fraction.length >= b.fraction.length ? a.fraction : b.fraction,
    unit: a.unit.length >= b.unit.length ? a.unit : b.unit,
  };
}

/** What is to stand invisibly after a fraction so that it is as wide as the column's longest. */
export function padding(fraction: string, room: Room): string {
  return room.fraction.slice(fraction.length);
}
