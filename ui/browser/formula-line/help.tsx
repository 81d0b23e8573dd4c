// What is drawn while a formula is typed: the list of what the word at the caret could become, and the function the caret
// stands in with the part that is being typed in bold. Fetched when a formula is begun, with what finds both.

import { useEffect, useRef } from 'preact/hooks';
import { type Completions, callInFormula } from '../../../engine/index.ts';

export { complete, completionsFor } from './assist.ts';

/** At most so many are offered at once. */
const OFFERED = 40;

export interface CompletionListProps {
  readonly completions: Completions;
  readonly active: number;
  readonly onTake: (index: number) => void;
}

export function CompletionList({ completions, active, onTake }: CompletionListProps) {
  const list = useRef<HTMLDivElement>(null);
  useEffect(() => {
    list.current?.children[active]?.scrollIntoView({ block: 'nearest' });
  }, [active]);
  return (
    <div class="completions" role="listbox" aria-label="What could stand here" ref={list}>
      {completions.items.slice(0, OFFERED).map((item, index) => (
        <div
          key={`${item.kind} ${item.label}`}
          role="option"
          tabIndex={-1}
          aria-selected={index === active}
          onMouseDown={(event) => {
            event.preventDefault();
            onTake(index);
          }}
        >
          <span class="completion-name">{item.label}</span>
          <span class="completion-doc">{item.doc}</span>
        </div>
      ))}
    </div>
  );
}

/** The function that the caret stands in: 'STATIONS(length; spacing; rows)', the part in hand in bold, and what it gives. */
export function CallLine({ text, caret }: { readonly text: string; readonly caret: number }) {
  const help = callInFormula(text, caret);
  if (help === undefined) return null;
  const place = help.active === undefined ? undefined : help.places[help.active];
  return (
    <p class="call-help">
      {place === undefined ? (
        help.text
      ) : (
        <>
          {help.text.slice(0, place.from)}
          <b>{help.text.slice(place.from, place.to)}</b>
          {help.text.slice(place.to)}
        </>
      )}
      <span class="call-doc">{help.signature.doc}</span>
    </p>
  );
}
