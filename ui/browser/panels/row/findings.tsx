// What the checks found in a row, in words, gravest first; each goes to its cell.

import { findingsIn, LEVELS } from '../../store/findings.ts';
import { goTo, type RowAt } from '../../store/selection.ts';

export function RowFindings({ sheet, row }: { readonly sheet: string; readonly row: RowAt }) {
  const found = findingsIn(sheet, row.id);
  if (found.length === 0) return null;
  return (
    <ul class="findings" aria-label="Needs attention">
      {found.map(({ column, columnName, level, says }) => (
        <li key={`${column} ${says}`}>
          <button type="button" onClick={() => goTo(sheet, row.id, column)}>
            <span class={`level level-${level}`}>{LEVELS[level]}</span> <span class="where">{columnName}</span>{' '}
            <span class="says">{says}</span>
          </button>
        </li>
      ))}
    </ul>
  );
}
