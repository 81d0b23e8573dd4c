// Help while a formula is typed on a scratch paper: the names that the word at its end may become, and what the call it stands in
// wants.

import { FUNCTIONS } from '../../../engine/index.ts';
import { unitsSaid } from '../../scratch/engine-call.ts';
import { isFormula, wordsOf } from '../../scratch/formula-words.ts';
import { functionNames, type ScratchRoom } from '../../scratch/room.ts';

export interface Offer {
  readonly name: string;
  /** What it stands for: 'Plantings, Length'. */
  readonly about: string;
  /** What the word becomes. */
  readonly write: string;
}

const MOST = 8;

export function offersFor(room: ScratchRoom, text: string): readonly Offer[] {
  const last = isFormula(text) ? wordsOf(text).at(-1) : undefined;
  if (last === undefined || !['name', 'cell', 'function'].includes(last.kind) || last.text.length < 2) return [];
  const wanted = last.text.toLowerCase();
  const columns = room.names.all().map(({ name, sheet, column }): Offer => {
    return { name, about: `${sheet.name}, ${column.name}`, write: name };
  });
  const functions = functionNames().map((name): Offer => {
    return { name: `${name}(`, about: FUNCTIONS.get(name)?.signature.doc ?? '', write: `${name}(` };
  });
  const all = [...functions, ...columns].filter(({ name }) => name.toLowerCase().includes(wanted));
  const begins = (offer: Offer): number => (offer.name.toLowerCase().startsWith(wanted) ? 0 : 1);
  return all.sort((a, b) => begins(a) - begins(b) || a.name.length - b.name.length).slice(0, MOST);
}

/** The text with the word at its end completed. */
export function completed(text: string, offer: Offer): string {
  const last = wordsOf(text).at(-1)?.text ?? '';
  return text.slice(0, text.length - last.length) + offer.write;
}

/** 'CUREDMASS(fresh in lb, loss): Mass left after curing.' of the call that the text ends in; '' for none of the engine's. */
export function callSaid(room: ScratchRoom, text: string): string {
  const open: string[] = [];
  let before = '';
  for (const { kind, text: word } of isFormula(text) ? wordsOf(text) : []) {
    if (word === '(') open.push(kind === 'sign' ? before : '');
    if (word === ')') open.pop();
    before = kind === 'function' ? word.toUpperCase() : '';
  }
  const definition = FUNCTIONS.get(open.findLast((name) => name !== '') ?? '');
  if (definition === undefined) return '';
  return `${definition.signature.name}(${unitsSaid(definition, room.measures).join(', ')}): ${definition.signature.doc}`;
}
