// What the checks found, gravest first, by sheet: every item is a button that goes to its cell.

import { useEffect, useRef } from 'preact/hooks';
import type { Attention } from '../../../engine/index.ts';
import { attention, goTo } from '../state.ts';

const LEVELS: Readonly<Record<Attention['level'], string>> = { error: 'Error', warning: 'Warning', note: 'Note' };

/** At most so many stand in the list at once; mended ones make room for the next. */
const SHOWN = 300;

export function AttentionList({ onClose }: { readonly onClose: () => void }) {
  const box = useRef<HTMLElement>(null);
  useEffect(() => {
    box.current?.querySelector('button')?.focus();
  }, []);
  const shown = attention.value.slice(0, SHOWN);
  return (
    <section
      class="attention-list"
      aria-label="Needs attention"
      ref={box}
      onKeyDown={(event) => {
        if (event.key === 'Escape') onClose();
      }}
    >
      <header>
        <h2>Needs attention</h2>
        <button type="button" class="quiet" onClick={onClose}>
          Close
        </button>
      </header>
      <ol>
        {shown.map((item) => (
          <li key={`${item.table} ${item.row ?? ''} ${item.column} ${item.says}`}>
            <button
              type="button"
              onClick={() => {
                onClose();
                goTo(item.table, item.row, item.column);
              }}
            >
              <span class={`level level-${item.level}`}>{LEVELS[item.level]}</span>
              <span class="where">
                {[item.table, item.rowName, item.column].filter((part) => part !== '').join(' / ')}
              </span>
              <span class="says">{item.says}</span>
            </button>
          </li>
        ))}
      </ol>
      {attention.value.length > SHOWN ? <p>{`And ${attention.value.length - SHOWN} more.`}</p> : null}
    </section>
  );
}
