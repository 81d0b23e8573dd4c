// What the checks found in a row, in words, gravest first; each goes to its cell.

import type { Attention } from '../../../engine/index.ts';
import { attention, goTo } from '../state.ts';

export const LEVELS: Readonly<Record<Attention['level'], string>> = {
  error: 'Error',
  warning: 'Warning',
  note: 'Note',
};

export function Findings({ table, row }: { readonly table: string; readonly row: number }) {
  const found = attention.value.filter((item) => item.table === table && item.row === row);
  if (found.length === 0) return null;
  return (
    <ul class="findings" aria-label="Needs attention">
      {found.map((item) => (
        <li key={`${item.column} ${item.says}`}>
          <button type="button" onClick={() => goTo(table, row, item.column)}>
            <span class={`level level-${item.level}`}>{LEVELS[item.level]}</span>{' '}
            <span class="where">{item.column}</span> <span class="says">{item.says}</span>
          </button>
        </li>
      ))}
    </ul>
  );
}
