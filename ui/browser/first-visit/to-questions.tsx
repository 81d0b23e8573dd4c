// The way back to the first questions, as long as a season holds nothing but their answers.

import { workbook } from '../store/workbook.ts';
import { hasOnlyFirstAnswers } from './half-way.ts';
import { backToQuestions } from './way-back.ts';

export function ToQuestions() {
  if (!hasOnlyFirstAnswers(workbook())) return null;
  return (
    <button type="button" onClick={backToQuestions}>
      Back to the first questions
    </button>
  );
}
