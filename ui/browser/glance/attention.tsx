// What needs attention at a glance: a line a reason, which leads to the first place and unfolds to each place with what is said of it.

import { useState } from 'preact/hooks';
import type { Finding } from '../../../engine/index.ts';
import { type FindingGroup, rowsInWords } from '../store/finding-groups.ts';
import { LEVELS, nothingFound } from '../store/findings.ts';
import { goTo } from '../store/selection.ts';

const GROUPS_SHOWN = 7;
/** Of one reason; the list at the foot of the page has them all. */
const EACH_SHOWN = 40;

export function Attention({ groups }: { readonly groups: readonly FindingGroup[] }) {
  return (
    <section class="glance-part" aria-labelledby="glance-attention">
      <h3 id="glance-attention">Needs attention</h3>
      {groups.length === 0 ? <p class="glance-says">{nothingFound()}.</p> : null}
      <ul class="glance-attention">
        {groups.slice(0, GROUPS_SHOWN).map((group) => (
          <GroupLine key={group.reason} group={group} />
        ))}
      </ul>
      {groups.length > GROUPS_SHOWN ? (
        <p class="glance-says">
          And {groups.length - GROUPS_SHOWN} more reasons: the list at the foot of the page has them all.
        </p>
      ) : null}
    </section>
  );
}

function GroupLine({ group }: { readonly group: FindingGroup }) {
  const { first, count, rows, says } = group;
  return (
    <li>
      <button type="button" onClick={() => goToFinding(first)}>
        <span class={`level level-${first.level}`}>{LEVELS[first.level]}</span>
        <span class="where">
          {first.sheetName}
          {rows.length === 0 ? '' : `: ${rowsInWords(group)}`}
          {count > 1 && rows.length === 0 ? `, ${count} times` : ''}
        </span>
        <span class="says">{says}</span>
      </button>
      {count > 1 ? <Each group={group} /> : null}
    </li>
  );
}

/** Folded away until asked for, and made only then. */
function Each({ group: { all, alike, count, says } }: { readonly group: FindingGroup }) {
  const [open, setOpen] = useState(false);
  return (
    <details class="glance-each" onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>
        Each of the {count}
        <span class="spoken">: {says}</span>
      </summary>
      {open ? (
        <ul>
          {all.slice(0, EACH_SHOWN).map((found) => (
            <li key={`${found.rowId} ${found.says}`}>
              <button type="button" onClick={() => goToFinding(found)}>
                <span class="where">{found.rowName === '' ? found.sheetName : found.rowName}</span>
                {alike ? null : <span class="says">{found.says}</span>}
              </button>
            </li>
          ))}
        </ul>
      ) : null}
      {open && count > EACH_SHOWN ? (
        <p class="glance-says">And {count - EACH_SHOWN} more: the list at the foot of the page has them all.</p>
      ) : null}
    </details>
  );
}

function goToFinding({ sheet, row, rowId, column }: Finding): void {
  goTo(sheet, row === undefined ? undefined : rowId, column);
}
