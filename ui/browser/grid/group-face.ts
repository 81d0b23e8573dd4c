// The head above columns of one question: its name, and a press or Enter folds them to the first.

import type { IHeaderGroupComp, IHeaderGroupParams } from 'ag-grid-community';

export interface GroupProps {
  readonly question: string;
  readonly folded: boolean;
  /** How many columns it has. */
  readonly count: number;
}

export class GroupFace implements IHeaderGroupComp {
  private readonly face = document.createElement('div');

  init({ question, folded, count }: IHeaderGroupParams & GroupProps): void {
    this.face.className = 'question-face';
    this.face.dataset.question = question;
    const name = document.createElement('span');
    name.className = 'question-name';
    name.textContent = question;
    this.face.append(name);
    if (count < 2) return;
    const sign = document.createElement('span');
    sign.className = 'fold-sign';
    sign.setAttribute('aria-hidden', 'true');
    sign.textContent = folded ? '\u25b8' : '\u25be';
    this.face.prepend(sign);
    this.face.dataset.folds = String(folded);
    this.face.title = folded ? `Show the ${count} columns of ${question}` : `Fold ${question} to its first column`;
    if (!folded) return;
    const more = document.createElement('span');
    more.className = 'question-more';
    more.textContent = `and ${count - 1} more`;
    this.face.append(more);
  }

  getGui(): HTMLElement {
    return this.face;
  }

  destroy(): void {
    this.face.remove();
  }
}
