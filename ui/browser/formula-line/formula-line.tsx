// The line above the sheet: where the cell in hand is, in words; its formula or entry, to be changed; and below, what the
// checker says, with the offending part underlined. A text that can't stand is kept until it is mended or given up.

import { useSignal, useSignalEffect } from '@preact/signals';
import { useRef } from 'preact/hooks';
import { type Complaint, type Completions, type Edit, isError } from '../../../engine/index.ts';
import { announce } from '../messages.ts';
import { canTakeBack, takeBack } from '../sheet-actions.ts';
import { arrival, edit, readOnly, selection, workbook, workbookNow } from '../state.ts';
import { complete, completionsFor } from './assist.ts';
import { CallLine, CompletionList } from './help.tsx';
import { MarkedBox } from './marked-box.tsx';
import { formulaRequest } from './requests.ts';
import { type Answer, answerTo, isFormula, type LinePlace, restingAnswer, shownText } from './shown-text.ts';

/** A text being typed, and the cell it is meant for. */
interface Draft {
  readonly place: LinePlace;
  readonly text: string;
  readonly caret: number;
}

export function FormulaLine() {
  const box = useRef<HTMLTextAreaElement>(null);
  const draft = useSignal<Draft | undefined>(undefined);
  const offered = useSignal<Completions | undefined>(undefined);
  const active = useSignal(-1);
  /** Why the text as it stands was not taken; the next key begins anew. */
  const refused = useSignal<string | undefined>(undefined);

  useSignalEffect(() => {
    const request = formulaRequest.value;
    const place = placeInHand();
    if (request === undefined || place === undefined) return;
    formulaRequest.value = undefined;
    draft.value = { place, text: request.text, caret: request.text.length };
    requestAnimationFrame(() => {
      box.current?.focus();
      box.current?.setSelectionRange(request.text.length, request.text.length);
    });
  });

  const book = workbook();
  const held = draft.value;
  const place = held?.place ?? placeInHand();
  if (place === undefined) return <section class="formula-line" aria-label="Formula" />;
  const text = held?.text ?? shownText(book, place);
  const typing = held !== undefined && text !== shownText(book, held.place);
  const answer: Answer =
    typing && refused.value !== undefined
      ? { tone: 'refusal', says: refused.value }
      : typing
        ? answerTo(book, place, text)
        : restingAnswer(book, place);
  const fixed = place.column.role === 'made' || readOnly.value !== undefined;

  const type = (next: string, caret: number): void => {
    draft.value = { place, text: next, caret };
    refused.value = undefined;
    const table = place.table;
    offered.value = isFormula(next, place.column) ? completionsFor(book, table, next, caret) : undefined;
    active.value = -1;
  };
  const giveUp = (): void => {
    draft.value = undefined;
    offered.value = undefined;
    arrival.value += 1;
  };
  const take = (index: number): void => {
    const list = offered.value;
    const item = list?.items[index];
    if (list === undefined || item === undefined) return;
    const done = complete(text, list, item);
    type(done.text, done.caret);
    offered.value = undefined;
    requestAnimationFrame(() => {
      box.current?.focus();
      box.current?.setSelectionRange(done.caret, done.caret);
    });
  };
  const commit = (): boolean => {
    offered.value = undefined;
    if (!typing) {
      draft.value = undefined;
      return true;
    }
    const why = write(place, text);
    refused.value = why;
    if (why !== undefined) {
      announce(why);
      return false;
    }
    draft.value = undefined;
    return true;
  };

  const commitAndGo = (): void => {
    if (commit()) arrival.value += 1;
  };

  const onKey = (event: KeyboardEvent): void => {
    const list = offered.value;
    if (list !== undefined && (event.key === 'ArrowDown' || event.key === 'ArrowUp')) {
      event.preventDefault();
      const count = list.items.length;
      active.value = (active.value + (event.key === 'ArrowDown' ? 1 : -1) + count) % count;
    } else if (list !== undefined && (event.key === 'Tab' || (event.key === 'Enter' && active.value >= 0))) {
      event.preventDefault();
      take(Math.max(0, active.value));
    } else if (event.key === 'Escape') {
      event.preventDefault();
      if (list !== undefined) offered.value = undefined;
      else giveUp();
    } else if (event.key === 'Enter' && !event.shiftKey) {
      event.preventDefault();
      commitAndGo();
    }
  };

  const checked = typing && isFormula(text, place.column) ? answerTo(book, place, text) : answer;
  const complaint = checked.tone === 'refusal' && isFormula(text, place.column) ? checked.complaint : undefined;
  const formulaShown = isFormula(text, place.column);
  return (
    <section class={`formula-line${typing ? ' is-typing' : ''}`} aria-label="Formula">
      <p class="formula-address" title={addressOf(place)}>
        {addressOf(place)}
      </p>
      <MarkedBox
        box={box}
        text={text}
        marked={complaint}
        readOnly={fixed}
        label={`${formulaShown ? 'Formula' : 'Entry'} of ${addressOf(place)}`}
        onText={type}
        onKey={onKey}
        onLeave={() => {
          offered.value = undefined;
          if (typing && answer.tone !== 'refusal') commit();
          else if (!typing) draft.value = undefined;
        }}
      >
        {offered.value === undefined ? null : (
          <CompletionList completions={offered.value} active={active.value} onTake={take} />
        )}
      </MarkedBox>
      <div class={`formula-answer tone-${answer.tone}${typing ? ' is-typing' : ''}`} id="formula-answer">
        <p role="status" title={typing ? undefined : answer.says}>
          {answer.says}
        </p>
        <Fix complaint={complaint} onFix={(fix) => type(applyFix(text, fix), text.length)} />
        {typing && formulaShown ? <CallLine text={text} caret={held?.caret ?? text.length} /> : null}
        {typing ? <TypingActs onTake={commitAndGo} onGiveUp={giveUp} /> : <CellActs place={place} />}
      </div>
    </section>
  );
}

/** The cell in hand; a sheet's first column while no row is. */
function placeInHand(): LinePlace | undefined {
  const { table, row, column } = selection.value;
  const found = workbookNow()
    ?.table(table)
    ?.columns.find(({ name }) => name === column);
  return found === undefined ? undefined : { table, row, column: found };
}

function addressOf({ table, row, column }: LinePlace): string {
  const book = workbookNow();
  const named = row === undefined || book?.table(table)?.oneRow === true ? '' : (book?.rowName(table, row) ?? '');
  return [table, named, column.name].filter((part) => part !== '').join(' / ');
}

/**
 * Writes a text typed in the line; undefined where it was taken, else why not. A formula that doesn't check, or that would
 * close a circle, is not taken: the column keeps the one it has.
 */
function write(place: LinePlace, text: string): string | undefined {
  const { table, row, column } = place;
  const typed = text.trim();
  const formula = isFormula(text, column);
  if (!formula && row === undefined) return undefined;
  if (formula) {
    const why = refusalOfFormula(place, typed);
    if (why !== undefined) return why;
  }
  const wish: Edit = formula
    ? { edit: 'formula', table, column: column.name, formula: typed }
    : { edit: 'cell', table, row: row ?? 0, column: column.name, entry: typed };
  const label = formula ? `Formula of ${column.name}` : `${column.name}: ${typed === '' ? 'cleared' : typed}`;
  const done = edit([wish], label, true);
  return done.refused ? done.why : undefined;
}

function refusalOfFormula({ table, row, column }: LinePlace, formula: string): string | undefined {
  const book = workbookNow();
  if (book === undefined) return undefined;
  const tried = book.tryFormula(table, column.name, formula);
  if (!tried.ok) return tried.complaint.why;
  const cell = row ?? book.rows(table)[0];
  if (cell === undefined) return undefined;
  const wish: Edit = { edit: 'formula', table, column: column.name, formula };
  const value = book.whatIf([[wish]], [{ table, row: cell, column: column.name }])[0]?.[0] ?? null;
  return isError(value) && value.error === 'circle' ? value.why : undefined;
}

type FixOf = NonNullable<Complaint['fix']>;

function applyFix(text: string, { span, text: put }: FixOf): string {
  return text.slice(0, span.from) + put + text.slice(span.to);
}

function Fix({
  complaint,
  onFix,
}: {
  readonly complaint: Complaint | undefined;
  readonly onFix: (fix: FixOf) => void;
}) {
  const fix = complaint?.fix;
  if (fix === undefined) return null;
  return (
    <button type="button" class="quiet" onMouseDown={(event) => event.preventDefault()} onClick={() => onFix(fix)}>
      Write {fix.text}
    </button>
  );
}

function TypingActs({ onTake, onGiveUp }: { readonly onTake: () => void; readonly onGiveUp: () => void }) {
  return (
    <span class="formula-acts">
      <button type="button" class="quiet" onMouseDown={(event) => event.preventDefault()} onClick={onTake}>
        Take <kbd>Enter</kbd>
      </button>
      <button type="button" class="quiet" onMouseDown={(event) => event.preventDefault()} onClick={onGiveUp}>
        Leave as it was <kbd>Esc</kbd>
      </button>
    </span>
  );
}

function CellActs({ place }: { readonly place: LinePlace }) {
  const { table, row, column } = place;
  if (row === undefined || column.role === 'entered' || column.role === 'made') return null;
  const at = { table, row, column: column.name };
  if (!canTakeBack(at)) return null;
  return (
    <span class="formula-acts">
      <button type="button" class="quiet" onClick={() => takeBack([at])}>
        Take back to the formula
      </button>
      <span class="formula-beneath" title={`=${column.formula}`}>{`=${column.formula}`}</span>
    </span>
  );
}
