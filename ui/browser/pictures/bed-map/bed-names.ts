// What is written on a bed where it lies: its name and what stands along it, each within its own part of the bed. Pure; in pixels.

import { fitted, widthOfText } from '../../drawing/text-width.ts';
import type { BedOnMap } from './bed-map.ts';

export interface NameOnBed {
  /** From the bed's own end. */
  readonly x: number;
  readonly text: string;
}

const BEFORE = 5;
const AFTER = 5;
/** Between a name that reaches over and the next, so that they are not read as one. */
const APART = 16;

/** Cut where there is no room; the bed's name, which stands first, may reach over into the next part, and what stands there then begins behind it. */
export function namesOnBed({ name, length, pieces, cover }: BedOnMap, perMetre: number): readonly NameOnBed[] {
  const whole = length * perMetre - BEFORE - AFTER;
  const [first] = pieces;
  if (first === undefined) return written(BEFORE, fitted(`${name}: ${cover === '' ? 'free' : cover}`, whole));
  let until = -APART;
  return pieces.flatMap((piece, index): readonly NameOnBed[] => {
    const begins = piece.at * perMetre;
    const x = Math.max(until + APART, begins + BEFORE);
    const room = (piece.at + piece.length) * perMetre - x - AFTER;
    const own = index > 0 ? fitted(piece.name, room) : onFirst(name, piece.name, room, whole);
    until = own === '' ? until : x + widthOfText(own);
    return written(x, own);
  });
}

function onFirst(bed: string, planting: string, room: number, whole: number): string {
  const both = `${bed}: ${planting}`;
  return room < widthOfText(`${bed}: `) + MEANS ? fitted(bed, whole) : fitted(both, room);
}

/** Less of a planting's name than this says nothing. */
const MEANS = widthOfText('Abcd');

function written(x: number, text: string): readonly NameOnBed[] {
  return text === '' ? [] : [{ x, text }];
}
