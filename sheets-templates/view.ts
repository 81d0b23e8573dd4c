// How a view is written: its question and its columns, ids apart by blanks. The lists of views call it.

import type { ViewDeclaration } from '../engine/index.ts';

export function view(id: string, name: string, columns: string): ViewDeclaration {
  return { id, name, columns: columns.trim().split(/\s+/) };
}
