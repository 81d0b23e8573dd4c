// Where a person is on the phone: the day, the list of sheets, one sheet's cards, one card, what needs attention, scratch
// paper, pictures, pages for paper, or the rest. The browser's own way back leads back through them. Parts of the phone's view
// read and call this; it calls the store.

import { signal } from '@preact/signals';
import { member } from '../store/member.ts';
import { selection } from '../store/selection.ts';

export type PhonePlace =
  | { readonly at: 'today'; readonly note?: NoteStep; readonly amountOf?: string }
  | { readonly at: 'sheets' }
  | { readonly at: 'sheet'; readonly sheet: string }
  | { readonly at: 'card'; readonly sheet: string; readonly row: string }
  | { readonly at: 'attention' }
  | { readonly at: 'scratch' }
  | { readonly at: 'pictures' }
  | { readonly at: 'paper' }
  | { readonly at: 'more' };

/** How far a note of the day is: what it is of, then of which planting by its id. */
export interface NoteStep {
  readonly kind: string;
  readonly planting?: string;
}

const START: PhonePlace = { at: 'today' };
const SHEETS: PhonePlace = { at: 'sheets' };

export const phonePlace = signal<PhonePlace>(START);

/** Goes to a place and puts its sheet and row in hand; `column` is the field to end at. */
export function visit(place: PhonePlace, column?: string): void {
  show(place, column);
  history.pushState({ phonePlace: place }, '');
  window.scrollTo(0, 0);
}

/** Begins to note the amount of a job, by its row: a step of the day, which stays where it was scrolled to. */
export function noteAmountOf(job: string): void {
  const before = phonePlace.peek();
  const place: PhonePlace = { at: 'today', amountOf: job };
  const state = { phonePlace: place };
  // From the box of another job it is no further step.
  if (before.at === 'today' && before.amountOf !== undefined) history.replaceState(state, '');
  else history.pushState(state, '');
  show(place);
}

function show(place: PhonePlace, column?: string): void {
  phonePlace.value = place;
  if (place.at === 'sheet') selection.value = { sheet: place.sheet, row: undefined, column: undefined };
  if (place.at === 'card') selection.value = { sheet: place.sheet, row: place.row, column };
}

/** Leaves a note for the day, past the steps it took: the way back from there doesn't lead into it again. */
export function leaveNote(): void {
  const place = phonePlace.peek();
  if (place.at !== 'today' || (place.note === undefined && place.amountOf === undefined)) return;
  phonePlace.value = START;
  history.go(place.note?.planting === undefined ? -1 : -2);
}

/** Where a card or a sheet lies under; undefined at the bottom bar's own places. */
export function above(place: PhonePlace): PhonePlace | undefined {
  if (place.at === 'card') return { at: 'sheet', sheet: place.sheet };
  if (place.at === 'sheet') return SHEETS;
  return ['scratch', 'pictures', 'paper'].includes(place.at) ? { at: 'more' } : undefined;
}

/** Follows the browser's way back and forward from now on; gives back the way to stop. */
export function followHistory(): () => void {
  const onPop = (event: PopStateEvent): void => show(placeIn(event.state) ?? START);
  window.addEventListener('popstate', onPop);
  // After a reload a note goes on at the step where it was: its steps are in the history still.
  const place = placeIn(history.state);
  if (place?.at === 'today' && (place.note ?? place.amountOf) !== undefined) show(place);
  return () => window.removeEventListener('popstate', onPop);
}

/** The place that a history entry keeps, if it is one. */
function placeIn(state: unknown): PhonePlace | undefined {
  const kept = member(state, 'phonePlace');
  const at = member(kept, 'at');
  const sheet = member(kept, 'sheet');
  const row = member(kept, 'row');
  if (at === 'today') return { at, ...noteIn(member(kept, 'note')), ...amountIn(member(kept, 'amountOf')) };
  if (at === 'sheets' || at === 'attention' || at === 'more') return { at };
  if (at === 'scratch' || at === 'pictures' || at === 'paper') return { at };
  if (typeof sheet !== 'string') return undefined;
  if (at === 'sheet') return { at, sheet };
  return at === 'card' && typeof row === 'string' ? { at, sheet, row } : undefined;
}

function noteIn(kept: unknown): { readonly note?: NoteStep } {
  const kind = member(kept, 'kind');
  const planting = member(kept, 'planting');
  if (typeof kind !== 'string') return {};
  return { note: typeof planting === 'string' ? { kind, planting } : { kind } };
}

function amountIn(job: unknown): { readonly amountOf?: string } {
  return typeof job === 'string' ? { amountOf: job } : {};
}
