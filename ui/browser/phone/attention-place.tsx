// What needs attention, gravest first, as a list of sentences; each leads to its field.

import { LEVELS } from '../row-panel/findings.tsx';
import { attention, goTo } from '../state.ts';

/** At most so many stand in the list; mended ones make room for the next. */
const SHOWN = 200;

export function AttentionPlace() {
  const found = attention.value;
  if (found.length === 0) return <p class="phone-nothing">Nothing needs attention.</p>;
  return (
    <>
      <ul class="phone-list findings">
        {found.slice(0, SHOWN).map((item) => (
          <li key={`${item.table} ${item.row ?? ''} ${item.column} ${item.says}`}>
            <button type="button" onClick={() => goTo(item.table, item.row, item.column)}>
              <span>
                <span class={`level level-${item.level}`}>{LEVELS[item.level]}</span>{' '}
                <span class="where">
                  {[item.table, item.rowName, item.column].filter((part) => part !== '').join(' / ')}
                </span>
                <br />
                <span class="says">{item.says}</span>
              </span>
            </button>
          </li>
        ))}
      </ul>
      {found.length > SHOWN ? <p class="phone-nothing">And {found.length - SHOWN} more.</p> : null}
    </>
  );
}
