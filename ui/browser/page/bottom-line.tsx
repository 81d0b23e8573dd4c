// The page's last line: what the selected cells add up to, and what needs attention, which opens the list of it.

import { useComputed, useSignal } from '@preact/signals';
import { findings, following, nothingFound } from '../store/findings.ts';
import { summed } from '../store/summed.ts';
import { later } from './later.tsx';

const AttentionList = later(() => import('./attention-list.tsx').then((part) => part.AttentionList));

export function BottomLine() {
  const listIsOpen = useSignal(false);
  const attention = useComputed(attentionWords);
  const count = findings.value.length;
  const worst = findings.value[0]?.level;
  return (
    <footer class="bottom-line">
      <p class="summary" aria-live="off">
        {summed.value.map(({ name, value }) => (
          <span key={name}>
            {name} <b>{value}</b>
          </span>
        ))}
      </p>
      {following.value && count > 0 ? <span class="following">Figures off screen follow</span> : null}
      <button
        type="button"
        class={`attention-button level-${worst ?? 'none'}`}
        aria-expanded={listIsOpen.value}
        disabled={count === 0}
        onClick={() => {
          listIsOpen.value = !listIsOpen.value;
        }}
      >
        {attention.value}
      </button>
      {listIsOpen.value && count > 0 ? (
        <AttentionList
          onClose={() => {
            listIsOpen.value = false;
          }}
        />
      ) : null}
    </footer>
  );
}

/** '2 errors, 5 warnings': errors and warnings; notes where there is nothing else. */
function attentionWords(): string {
  const list = findings.value;
  const parts = (['error', 'warning', 'note'] as const).flatMap((level) => {
    const count = list.filter((each) => each.level === level).length;
    return count === 0 ? [] : [`${count} ${level}${count === 1 ? '' : 's'}`];
  });
  return parts.length === 0 ? nothingFound() : `Needs attention: ${parts.join(', ')}`;
}
