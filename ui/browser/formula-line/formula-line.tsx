// The line above the sheet: where the cell in hand is, in words; its formula or entry, to be changed; and below, what the
// checker says, with the offending part underlined. A text that can't stand is kept until it is mended or given up.

import { useLayoutEffect, useRef } from 'preact/hooks';
import type { Diagnostic } from '../../../engine/index.ts';
import { canTakeBack, takeBack, takeTemplateFormula } from '../commands/cells.ts';
import { selection } from '../store/selection.ts';
import { hasFormula } from '../store/sheets.ts';
import { fetchAtRest, wantedCame } from '../store/wanted.ts';
import { workbook } from '../store/workbook.ts';
import { type Answer, addressOf, answerTo, restingAnswer } from './answers.ts';
import { active, caretAt, draft, help, leaveLine, offered, refused } from './draft.ts';
import { MarkedBox } from './marked-box.tsx';
import { isFormula, type LineCell, lineCell, shownText } from './shown-text.ts';
import { takeLine, takeOffer, typeInLine, writeLine } from './taking.ts';

export function FormulaLine() {
  const box = useRef<HTMLTextAreaElement>(null);
  const caret = caretAt.value;
  useLayoutEffect(() => {
    if (caret === undefined) return;
    // At once, so that the next key finds the caret where it belongs.
    caretAt.value = undefined;
    box.current?.focus();
    box.current?.setSelectionRange(caret, caret);
  }, [caret]);
  const book = workbook();
  const held = draft.value;
  const cell = lineCell(book, held?.place ?? selection.value);
  if (cell === undefined) return <section class="formula-line" aria-label="Formula" />;
  const text = held?.text ?? shownText(book, cell);
  const typing = held !== undefined && text !== shownText(book, cell);
  const formula = isFormula(text, cell.column);
  const checked = typing ? checkedAnswer(cell, text) : restingAnswer(book, cell);
  const answer: Answer = typing && refused.value !== undefined ? { tone: 'refusal', says: refused.value } : checked;
  const diagnostic = formula && checked.tone === 'refusal' ? checked.diagnostic : undefined;
  const address = addressOf(book, cell);
  const Help = help.value;
  return (
    <section class={`formula-line${typing ? ' is-typing' : ''}`} aria-label="Formula">
      <p class="formula-address" title={address}>
        {address}
      </p>
      <MarkedBox
        box={box}
        text={text}
        marked={diagnostic}
        readOnly={cell.column.role === 'made'}
        label={`${formula ? 'Formula' : 'Entry'} of ${address}`}
        onText={typeInLine}
        onLeave={() => {
          offered.value = undefined;
          if (!typing) draft.value = undefined;
          else if (answer.tone !== 'refusal') writeLine(() => undefined);
        }}
      >
        {offered.value === undefined || Help === undefined ? null : (
          <Help.CompletionList completions={offered.value} active={active.value} onTake={takeOffer} />
        )}
      </MarkedBox>
      <div class={`formula-answer tone-${answer.tone}${typing ? ' is-typing' : ''}`} id="formula-answer">
        <p role="status" title={typing ? undefined : answer.says}>
          {answer.says}
        </p>
        <Fix diagnostic={diagnostic} text={text} />
        {typing && formula && Help !== undefined ? (
          <Help.CallLine text={text} caret={held?.caret ?? text.length} />
        ) : null}
        {typing ? <TypingActs /> : <CellActs cell={cell} />}
      </div>
    </section>
  );
}

/** What the checker says; where it misses a unit in general use, it is asked again when the list of them has come. */
function checkedAnswer(cell: LineCell, text: string): Answer {
  wantedCame.value;
  const answer = answerTo(workbook(), cell, text);
  if (answer.tone === 'refusal') fetchAtRest();
  return answer;
}

type FixOf = NonNullable<Diagnostic['fix']>;

function applyFix(text: string, { span, text: put }: FixOf): string {
  return text.slice(0, span.from) + put + text.slice(span.to);
}

function Fix({ diagnostic, text }: { readonly diagnostic: Diagnostic | undefined; readonly text: string }) {
  const fix = diagnostic?.fix;
  if (fix === undefined) return null;
  const fixed = applyFix(text, fix);
  return (
    <button
      type="button"
      class="quiet"
      onMouseDown={(event) => event.preventDefault()}
      onClick={() => typeInLine(fixed, fixed.length)}
    >
      Write {fix.text}
    </button>
  );
}

function TypingActs() {
  return (
    <span class="formula-acts">
      <button type="button" class="quiet" onMouseDown={(event) => event.preventDefault()} onClick={takeLine}>
        Take <kbd>Enter</kbd>
      </button>
      <button type="button" class="quiet" onMouseDown={(event) => event.preventDefault()} onClick={leaveLine}>
        Leave as it was <kbd>Esc</kbd>
      </button>
    </span>
  );
}

/** What can be taken back here: an entry to its formula, an own formula to the sheet's own. */
function CellActs({ cell: { sheet, row, column } }: { readonly cell: LineCell }) {
  if (!hasFormula(column)) return null;
  const at = row === undefined ? undefined : { sheet: sheet.id, row, column: column.id };
  const typedOver = at !== undefined && canTakeBack(workbook(), at);
  return (
    <span class="formula-acts">
      {typedOver ? (
        <button type="button" class="quiet" onClick={() => takeBack([at])}>
          Take back to the formula
        </button>
      ) : null}
      {typedOver ? <Beneath text={`=${column.formula}`} /> : null}
      {column.templateFormula === undefined ? null : (
        <>
          <span>Your own formula; the sheet's own is</span>
          <Beneath text={`=${column.templateFormula}`} />
          <button type="button" class="quiet" onClick={() => takeTemplateFormula(sheet.id, column.id)}>
            Take the sheet's own back
          </button>
        </>
      )}
    </span>
  );
}

function Beneath({ text }: { readonly text: string }) {
  return (
    <span class="formula-beneath" title={text}>
      {text}
    </span>
  );
}
