// Scratch papers made what they were at another time. restore.ts calls it.

import type { DocumentData } from '../document/data.ts';
import { entry } from '../schema/records.ts';
import type { Draft } from './draft.ts';

export function restorePapers({ papers: wanted = {} }: DocumentData, draft: Draft): void {
  const { papers } = draft.document;
  for (const paper of new Set([...Array.from(papers.all(), ([id]) => id), ...Object.keys(wanted)])) {
    const { name = null, cells = {} } = entry(wanted, paper) ?? {};
    const now = papers.paper(paper);
    if ((now?.name ?? null) !== name) draft.perform({ op: 'paper', paper, name });
    for (const cell of new Set([...(now?.cells.keys() ?? []), ...Object.keys(cells)])) {
      const typed = entry(cells, cell) ?? null;
      if (papers.entry(paper, cell) !== typed) draft.perform({ op: 'paper cell', paper, cell, entry: typed });
    }
  }
}
