// A text box that grows with its text and underlines a part of it: the same text stands behind the box in the same face,
// invisible but for the mark. The formula line uses it; it knows nothing of formulas.

import type { ComponentChildren, RefObject } from 'preact';
import { useLayoutEffect } from 'preact/hooks';
import type { Span } from '../../../engine/index.ts';

export interface MarkedBoxProps {
  readonly box: RefObject<HTMLTextAreaElement | null>;
  readonly text: string;
  readonly marked: Span | undefined;
  readonly readOnly: boolean;
  readonly label: string;
  readonly onText: (text: string, caret: number) => void;
  readonly onLeave: () => void;
  /** What hangs under the box. */
  readonly children: ComponentChildren;
}

export function MarkedBox(props: MarkedBoxProps) {
  const { box, text, marked, readOnly, label, onText, onLeave, children } = props;
  useLayoutEffect(() => {
    // The box follows the text where it wasn't typed into it: another cell, an undo.
    if (box.current !== null && box.current.value !== text) box.current.value = text;
  }, [box, text]);
  return (
    <div class="formula-box">
      <div class="formula-behind" aria-hidden="true">
        {marked === undefined ? text : <Marked text={text} span={marked} />}
        {'\u200b'}
      </div>
      <textarea
        ref={box}
        rows={1}
        spellcheck={false}
        autocomplete="off"
        readOnly={readOnly}
        aria-label={label}
        aria-describedby="formula-answer"
        aria-invalid={marked !== undefined}
        onInput={({ currentTarget }) => onText(currentTarget.value, currentTarget.selectionStart)}
        onBlur={onLeave}
      />
      {children}
    </div>
  );
}

/** The text with the part between the marks underlined; an empty part at the end marks the place after the text. */
function Marked({ text, span }: { readonly text: string; readonly span: Span }) {
  const from = Math.min(span.from, text.length);
  const to = Math.max(from, Math.min(span.to, text.length));
  const part = text.slice(from, to);
  return (
    <>
      {text.slice(0, from)}
      <mark>{part === '' ? '\u00a0\u00a0' : part}</mark>
      {text.slice(to)}
    </>
  );
}
