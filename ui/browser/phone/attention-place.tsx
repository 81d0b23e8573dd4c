// What needs attention, gravest first, as a list of sentences; each leads to its field.

import { findings, LEVELS, nothingFound, placeWords } from '../store/findings.ts';
import { goTo } from '../store/selection.ts';

/** At most so many stand in the list; mended ones make room for the next. */
const SHOWN = 200;

export function AttentionPlace() {
  const found = findings.value;
  if (found.length === 0) return <p class="phone-nothing">{nothingFound()}.</p>;
  return (
    <>
      <ul class="phone-list findings">
        {found.slice(0, SHOWN).map((each) => (
          <li key={`${each.sheet} ${each.rowId} ${each.column} ${each.says}`}>
            <button
              type="button"
              onClick={() => goTo(each.sheet, each.row === undefined ? undefined : each.rowId, each.column)}
            >
              <span>
                <span class={`level level-${each.level}`}>{LEVELS[each.level]}</span>{' '}
                <span class="where">{placeWords(each)}</span>
                <br />
                <span class="says">{each.says}</span>
              </span>
            </button>
          </li>
        ))}
      </ul>
      {found.length > SHOWN ? <p class="phone-nothing">And {found.length - SHOWN} more.</p> : null}
    </>
  );
}
