// The dialog of What if: branches of the plan side by side, an input sought for a goal, a table of one input against another,
// and the season drawn by chance. Fetched when first opened.

import { useLayoutEffect, useRef } from 'preact/hooks';
import { BranchesPart } from './branches-part.tsx';
import { ChoosePart } from './choose-part.tsx';
import { CurvesPart } from './curves-part.tsx';
import { LikelyPart } from './likely-part.tsx';
import { SeekPart } from './seek-part.tsx';
import { TablePart } from './table-part.tsx';
import './what-if.css';
import { type Part, whatIf } from './what-if-state.ts';

const PARTS: readonly Part[] = ['Branches', 'Seek', 'Table', 'Curves', 'Choose', 'How likely'];

const DRAWN: { readonly [P in Part]: () => preact.JSX.Element | null } = {
  Branches: BranchesPart,
  Seek: SeekPart,
  Table: TablePart,
  Curves: CurvesPart,
  Choose: ChoosePart,
  'How likely': LikelyPart,
};

export function WhatIfDialog() {
  const part = whatIf.value;
  const box = useRef<HTMLDialogElement>(null);
  useLayoutEffect(() => {
    if (part !== undefined && box.current?.open === false) box.current.showModal();
  }, [part]);
  if (part === undefined) return null;
  const Drawn = DRAWN[part];
  return (
    <dialog class="dialog what-if" ref={box} aria-labelledby="what-if-title" onClose={shut}>
      <h2 id="what-if-title">What if</h2>
      <fieldset class="switch">
        <legend class="spoken">Part</legend>
        {PARTS.map((each) => (
          <label key={each}>
            <input
              type="radio"
              name="what-if-part"
              checked={each === part}
              onChange={() => {
                whatIf.value = each;
              }}
            />
            <span>{each}</span>
          </label>
        ))}
      </fieldset>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a part that scrolls must be reachable by keyboard */}
      <section class="what-if-part" aria-label={part} tabIndex={0}>
        <Drawn key={part} />
      </section>
      <div class="dialog-acts">
        <button type="button" onClick={shut}>
          Close
        </button>
      </div>
    </dialog>
  );
}

function shut(): void {
  whatIf.value = undefined;
}
