// What the checks found, gravest first, by sheet: every item is a button that goes to its cell.

import { useEffect, useRef } from 'preact/hooks';
import { findings, LEVELS, placeWords } from '../store/findings.ts';
import { goTo } from '../store/selection.ts';

/** At most so many stand in the list at once; mended ones make room for the next. */
const SHOWN = 300;

export function AttentionList({ onClose }: { readonly onClose: () => void }) {
  const box = useRef<HTMLElement>(null);
  useEffect(() => {
    box.current?.querySelector('button')?.focus();
  }, []);
  const shown = findings.value.slice(0, SHOWN);
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
        {shown.map((found) => (
          <li key={`${found.sheet} ${found.rowId} ${found.column} ${found.says}`}>
            <button
              type="button"
              onClick={() => {
                onClose();
                goTo(found.sheet, found.row === undefined ? undefined : found.rowId, found.column);
              }}
            >
              <span class={`level level-${found.level}`}>{LEVELS[found.level]}</span>
              <span class="where">{placeWords(found)}</span>
              <span class="says">{found.says}</span>
            </button>
          </li>
        ))}
      </ol>
      {findings.value.length > SHOWN ? <p>{`And ${findings.value.length - SHOWN} more.`}</p> : null}
    </section>
  );
}
