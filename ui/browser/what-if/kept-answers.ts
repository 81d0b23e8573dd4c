// What drawn seasons and a seek answered last, kept beside the workbook in this browser: not in the document, since nothing was
// changed. With each stands what tells the plan it was asked of from any other, so that an answer of another plan is known to be
// old. Written by draws-state.ts and the part that seeks; read by take-answers.ts.

import { contentSum, sumOf } from '../keeping/entries.ts';
import { keptAs } from '../keeping/state.ts';
import { transact } from '../keeping/storage.ts';
import { answersOf } from '../keeping/workbooks.ts';
import { keptWorkbook } from '../store/workbook.ts';
import type { DrawnAnswer } from './drawn-answer.ts';

export interface KeptDrawn {
  /** The plan it was asked of. */
  readonly plan: number;
  readonly answer: DrawnAnswer;
  /** In one sentence, for the bar above the sheet; undefined where it has none, or once that was put away. */
  readonly says: string | undefined;
}

export interface KeptSought {
  readonly plan: number;
  readonly says: string;
}

export interface KeptAnswers {
  readonly drawn?: KeptDrawn;
  readonly sought?: KeptSought;
}

/** Of another way of writing answers down nothing is read. */
const WRITTEN = 'answers 2 ';

/** What is on the disk for a workbook; nothing where that isn't as it was written. */
export async function readAnswers(workbook: string): Promise<KeptAnswers> {
  const mark = await transact(['marks'], 'readonly', (transaction) =>
    transaction.objectStore('marks').get(answersOf(workbook)),
  );
  return mark === undefined ? {} : readText(mark.value);
}

/** Keeps an answer in place of the one before. Lost with no harm: it can be asked again. */
export function keepAnswers(part: KeptAnswers): void {
  const id = keptAs.peek();
  if (id === undefined) return;
  void transact(['marks'], 'readwrite', async (transaction) => {
    const marks = transaction.objectStore('marks');
    const before = await marks.get(answersOf(id));
    const answers = { ...(before === undefined ? {} : readText(before.value)), ...part };
    await marks.put({ name: answersOf(id), value: written(answers) });
  }).catch(() => undefined);
}

/** The bar stays away after a reload too; the answer itself is still there. */
export async function putAway(): Promise<void> {
  const id = keptAs.peek();
  const { drawn } = id === undefined ? {} : await readAnswers(id);
  if (drawn !== undefined) keepAnswers({ drawn: { ...drawn, says: undefined } });
}

/** What tells the plan as it stands from any other. */
export function planNow(): number {
  const book = keptWorkbook();
  return book === undefined ? 0 : contentSum(book);
}

export function written(answers: KeptAnswers): string {
  const text = JSON.stringify(answers);
  return `${WRITTEN}${sumOf(text)} ${text}`;
}

/** The text is believed only where its sum holds: then it was written here. */
export function readText(value: string): KeptAnswers {
  if (!value.startsWith(WRITTEN)) return {};
  const sum = value.slice(WRITTEN.length, value.indexOf(' ', WRITTEN.length));
  const text = value.slice(WRITTEN.length + sum.length + 1);
  if (String(sumOf(text)) !== sum) return {};
  const answers: KeptAnswers = JSON.parse(text);
  return answers;
}
