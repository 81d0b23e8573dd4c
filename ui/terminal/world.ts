// What the terminal's verbs need from outside: where answers go, what comes in, which day it is. And the one way to give up
// on bad input: a sentence. Every file of the terminal may call it; it calls nothing.

import type { Asked, Drawn, TemplateShelf } from '../../engine/index.ts';

export interface World {
  /** Standard output; a text brings its own line breaks. */
  out(content: string | Uint8Array): void;
  /** Standard error, a line at a time. */
  warn(line: string): void;
  /** How far long work is, in a line that the next takes the place of, `undefined` clears; where a person reads along. */
  progress?(line: string | undefined): void;
  /** Standard input, line by line. */
  lines(): AsyncIterable<string>;
  /** Standard input, whole. */
  input(): Promise<Uint8Array>;
  /** The civil day it is. */
  readonly today: number;
  /** Milliseconds of the clock. */
  now(): number;
  /** Templates as they are today, and in the version that a file was made from. */
  templates(wanted: { readonly name: string; readonly version: number } | undefined): Promise<TemplateShelf>;
  /** Threads to draw seasons in; undefined where there are none. */
  readonly threads?: Threads;
}

/** Seasons to be drawn of a workbook file. */
export interface SeasonsOrder {
  readonly file: string;
  readonly bytes: Uint8Array;
  /** By name; undefined for the plan. */
  readonly branch: string | undefined;
  readonly asked: Asked;
  /** Of all seasons that the seed gives, those from the first up to the last but one. */
  readonly from: number;
  readonly until: number;
  readonly seed: number;
}

export interface Threads {
  /** How many may draw, the one that asks among them. */
  readonly count: number;
  /** Has another draw; `end` ends it before it is done. */
  draw(order: SeasonsOrder): { readonly drawn: Promise<Drawn>; readonly end: () => void };
  /** To be called where much of the same work is to come: machine code made for it pays from then on. */
  longWork(): void;
}

/** Bad input. The message is the one line that the person reads; nothing has been written. */
export class Refusal extends Error {}

export function refuse(sentence: string): never {
  throw new Refusal(sentence);
}

/** One line, whatever the parts held. */
export function onOneLine(text: string): string {
  return text.replace(/\s*[\r\n]+\s*/g, ' ');
}
