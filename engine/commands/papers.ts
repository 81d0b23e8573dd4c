// Scratch papers: added, named, written on, thrown away. What is typed is kept as it stands; no figure of a sheet hangs on it.

import { columnOfLetters, PAPER_CELL, PAPER_COLUMNS, PAPER_ROWS } from '../document/papers.ts';
import { ID } from '../schema/id.ts';
import type { CommandOf } from './command.ts';
import type { Draft } from './draft.ts';
import type { Refused } from './refusal.ts';

/** More would be hard to find one's way in. */
const MOST_PAPERS = 50;

/** As long as the texts that formulas make. */
const LONGEST_ENTRY = 32_767;

export function addPaper({ paper, name }: CommandOf<'add paper'>, draft: Draft): Refused {
  const { papers } = draft.document;
  if (!ID.test(paper) || papers.paper(paper) !== undefined) return { why: 'A scratch paper needs an id of its own.' };
  if (papers.size >= MOST_PAPERS)
    return { why: `A workbook keeps ${MOST_PAPERS} scratch papers at most: throw one away first.` };
  return named(paper, name, draft);
}

export function renamePaper({ paper, name }: CommandOf<'rename paper'>, draft: Draft): Refused {
  return draft.document.papers.paper(paper) === undefined ? NO_PAPER : named(paper, name, draft);
}

function named(paper: string, given: string, draft: Draft): Refused {
  const name = given.trim();
  if (name === '') return { why: 'A scratch paper needs a name: write one.' };
  const { papers } = draft.document;
  for (const [id, other] of papers.all()) {
    if (id !== paper && other.name?.toLowerCase() === name.toLowerCase())
      return { why: `There is a scratch paper called “${name}” already: choose another name.` };
  }
  if (papers.paper(paper)?.name !== name) draft.perform({ op: 'paper', paper, name });
  return undefined;
}

/** With all that is typed on it. */
export function removePaper({ paper }: CommandOf<'remove paper'>, draft: Draft): Refused {
  const known = draft.document.papers.paper(paper);
  if (known === undefined) return NO_PAPER;
  for (const cell of [...known.cells.keys()]) draft.perform({ op: 'paper cell', paper, cell, entry: null });
  if (known.name !== null) draft.perform({ op: 'paper', paper, name: null });
  return undefined;
}

export function typeOnPaper({ paper, cells }: CommandOf<'type on paper'>, draft: Draft): Refused {
  const { papers } = draft.document;
  if (papers.paper(paper) === undefined) return NO_PAPER;
  for (const [cell, typed] of Object.entries(cells)) {
    if (!isOnPaper(cell)) {
      return { why: `A scratch paper ends at column ZZ and row ${PAPER_ROWS}: ${cell} has no place there.` };
    }
    if (typed.length > LONGEST_ENTRY)
      return { why: `${cell}: an entry has at most ${LONGEST_ENTRY} letters: write it shorter.` };
    const entry = typed === '' ? null : typed;
    if (papers.entry(paper, cell) !== entry) draft.perform({ op: 'paper cell', paper, cell, entry });
  }
  return undefined;
}

function isOnPaper(cell: string): boolean {
  if (!PAPER_CELL.test(cell)) return false;
  const letters = cell.replace(/[0-9]+$/, '');
  return columnOfLetters(letters) <= PAPER_COLUMNS && Number(cell.slice(letters.length)) <= PAPER_ROWS;
}

const NO_PAPER: Refused = { why: 'There is no such scratch paper any more.' };
