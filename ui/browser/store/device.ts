// How a person has set up the desk in this browser: what is folded away, how wide columns are, which view each sheet was last
// seen in, which labels are in the printer. It belongs to the screen, not to the workbook: it is kept in this browser, isn't sent with a file and undo passes
// it over. By ids of sheets and columns, so that it holds for every workbook made from the same template.

import { effect, signal } from '@preact/signals';
import { member } from './member.ts';
import { remember, remembered } from './single-words.ts';

export interface Desk {
  readonly listFolded: boolean;
  readonly panelFolded: boolean;
  /** Pixels, by sheet and column, where a person drew them. */
  readonly widths: Readonly<Record<string, Readonly<Record<string, number>>>>;
  /** The view that each sheet was last seen in. */
  readonly views: Readonly<Record<string, string>>;
  /** Questions folded to their first column, by sheet. */
  readonly questions: Readonly<Record<string, readonly string[]>>;
  /** The sheets of labels that a person prints on; '' until they have chosen any. */
  readonly labels: string;
}

const KEY = 'dibble: desk';

const BARE: Desk = { listFolded: false, panelFolded: false, widths: {}, views: {}, questions: {}, labels: '' };

export const desk = signal<Desk>(BARE);

/** Takes up what was kept and keeps what changes from now on. */
export function startDesk(): void {
  desk.value = kept();
  effect(() => remember(KEY, JSON.stringify(desk.value)));
}

export function setDesk(part: Partial<Desk>): void {
  desk.value = { ...desk.peek(), ...part };
}

export function setWidth(sheet: string, column: string, width: number | undefined): void {
  const { widths } = desk.peek();
  const { [column]: _, ...rest } = widths[sheet] ?? {};
  setDesk({ widths: { ...widths, [sheet]: width === undefined ? rest : { ...rest, [column]: Math.round(width) } } });
}

/** Folds a question of a sheet to its first column, or opens it. */
export function foldQuestion(sheet: string, question: string): void {
  const { questions } = desk.peek();
  const folded = questions[sheet] ?? [];
  const next = folded.includes(question) ? folded.filter((one) => one !== question) : [...folded, question];
  setDesk({ questions: { ...questions, [sheet]: next } });
}

/** What an earlier visit kept, as far as it is what it should be. */
function kept(): Desk {
  const text = remembered(KEY);
  if (text === undefined) return BARE;
  try {
    const value: unknown = JSON.parse(text);
    return {
      listFolded: member(value, 'listFolded') === true,
      panelFolded: member(value, 'panelFolded') === true,
      widths: record(member(value, 'widths'), (widths) => record(widths, (width) => finite(width))),
      views: record(member(value, 'views'), word),
      questions: record(member(value, 'questions'), (list) =>
        Array.isArray(list) ? list.filter((one) => typeof one === 'string') : undefined,
      ),
      labels: word(member(value, 'labels')) ?? '',
    };
  } catch {
    return BARE;
  }
}

function word(value: unknown): string | undefined {
  return typeof value === 'string' ? value : undefined;
}

function finite(value: unknown): number | undefined {
  return typeof value === 'number' && Number.isFinite(value) ? value : undefined;
}

function record<T>(from: unknown, read: (value: unknown) => T | undefined): Readonly<Record<string, T>> {
  if (typeof from !== 'object' || from === null) return {};
  const entries = Object.entries(from).flatMap(([key, value]): [string, T][] => {
    const known = read(value);
    return known === undefined ? [] : [[key, known]];
  });
  return Object.fromEntries(entries);
}
