// The fields in which a person says what a cell has to be: a value out of those that the column holds, an amount, a text, empty or
// filled. Filters and colours use them.

import { useSignal } from '@preact/signals';
import {
  type Book,
  type ColumnView,
  type Condition,
  type HeldValue,
  readEntry,
  valuesHeld,
} from '../../../engine/index.ts';
import { workbook } from '../store/workbook.ts';

type Kind = Condition['is'];

const KINDS: readonly (readonly [Kind, string, 'any' | 'amount' | 'text'])[] = [
  ['one of', 'is one of', 'any'],
  ['none of', 'is none of', 'any'],
  ['at least', 'is at least', 'amount'],
  ['at most', 'is at most', 'amount'],
  ['between', 'is between', 'amount'],
  ['holding', 'holds the text', 'text'],
  ['not holding', 'doesn’t hold the text', 'text'],
  ['blank', 'is empty', 'any'],
  ['filled', 'is filled', 'any'],
  ['typed over', 'was typed over its formula', 'any'],
];

/** A condition as it is being written: amounts as texts until they are read. */
export interface ConditionDraft {
  readonly is: Kind;
  readonly values: readonly string[];
  readonly least: string;
  readonly most: string;
  readonly text: string;
}

export const BARE_CONDITION: ConditionDraft = { is: 'one of', values: [], least: '', most: '', text: '' };

/** The condition that is written; undefined, with the reason, where it isn't whole. */
export function readCondition(
  book: Book,
  column: ColumnView,
  draft: ConditionDraft,
): { readonly ok: true; readonly condition: Condition } | { readonly ok: false; readonly why: string } {
  const done = (condition: Condition) => ({ ok: true, condition }) as const;
  const least = amountOf(book, column, draft.least);
  const most = amountOf(book, column, draft.most);
  const whole = { ok: false, why: `Write what ${column.name} is held against, with or without its unit.` } as const;
  switch (draft.is) {
    case 'one of':
    case 'none of':
      return done({ is: draft.is, values: draft.values });
    case 'at least':
      return least === undefined ? whole : done({ is: 'at least', least });
    case 'at most':
      return most === undefined ? whole : done({ is: 'at most', most });
    case 'between':
      return least === undefined || most === undefined ? whole : done({ is: 'between', least, most });
    case 'holding':
    case 'not holding':
      return draft.text.trim() === ''
        ? { ok: false, why: 'Write the text that is looked for.' }
        : done({ is: draft.is, text: draft.text.trim() });
    default:
      return done({ is: draft.is });
  }
}

function amountOf(book: Book, { type }: ColumnView, text: string): number | undefined {
  if (type === undefined || text.trim() === '') return undefined;
  const read = readEntry(text, type, book.document.entry);
  return read.ok && typeof read.value === 'number' ? read.value : undefined;
}

interface FieldsProps {
  readonly sheet: string;
  readonly column: ColumnView;
  readonly draft: ConditionDraft;
  readonly onDraft: (draft: ConditionDraft) => void;
}

export function ConditionFields({ sheet, column, draft, onDraft }: FieldsProps) {
  const kind = column.type?.kind;
  const isAmount = kind === 'number' || kind === 'temperature' || kind === 'date';
  const set = (part: Partial<ConditionDraft>): void => onDraft({ ...draft, ...part });
  const kinds = KINDS.filter(([, , fits]) => fits !== 'amount' || isAmount);
  const { is } = draft;
  return (
    <>
      <div>
        <label for="condition-kind">{column.name}</label>
        <select
          id="condition-kind"
          value={is}
          onChange={({ currentTarget }) => {
            const chosen = kinds.find(([each]) => each === currentTarget.value)?.[0];
            if (chosen !== undefined) set({ is: chosen });
          }}
        >
          {kinds.map(([each, words]) => (
            <option key={each} value={each}>
              {words}
            </option>
          ))}
        </select>
      </div>
      {is === 'one of' || is === 'none of' ? (
        <Values
          held={valuesHeld(workbook(), sheet, column.id)}
          chosen={draft.values}
          onChoose={(values) => set({ values })}
        />
      ) : null}
      {is === 'at least' || is === 'between' ? (
        <Amount id="least" label="From" unit={column.unit} value={draft.least} onValue={(least) => set({ least })} />
      ) : null}
      {is === 'at most' || is === 'between' ? (
        <Amount id="most" label="To" unit={column.unit} value={draft.most} onValue={(most) => set({ most })} />
      ) : null}
      {is === 'holding' || is === 'not holding' ? (
        <Amount id="text" label="Text" unit="" value={draft.text} onValue={(text) => set({ text })} />
      ) : null}
    </>
  );
}

interface AmountProps {
  readonly id: string;
  readonly label: string;
  readonly unit: string;
  readonly value: string;
  readonly onValue: (value: string) => void;
}

function Amount({ id, label, unit, value, onValue }: AmountProps) {
  return (
    <div>
      <label for={`condition-${id}`}>{unit === '' ? label : `${label}, in ${unit} unless you write another`}</label>
      <input
        id={`condition-${id}`}
        type="text"
        value={value}
        autocomplete="off"
        onInput={({ currentTarget }) => onValue(currentTarget.value)}
      />
    </div>
  );
}

interface ValuesProps {
  readonly held: readonly HeldValue[];
  readonly chosen: readonly string[];
  readonly onChoose: (chosen: readonly string[]) => void;
}

/** So many values stand in the list at once. */
const LISTED = 200;

function Values({ held, chosen, onChoose }: ValuesProps) {
  const wanted = useSignal('');
  const text = wanted.value.trim().toLowerCase();
  const matching = held.filter(({ name }) => name.toLowerCase().includes(text));
  const keys = matching.map(({ key }) => key);
  return (
    <fieldset class="values">
      <legend class="spoken">Values</legend>
      <div class="values-find">
        <input
          type="text"
          aria-label="Find a value"
          placeholder="Find a value"
          value={wanted.value}
          onInput={({ currentTarget }) => {
            wanted.value = currentTarget.value;
          }}
        />
        <button type="button" onClick={() => onChoose([...new Set([...chosen, ...keys])])}>
          All
        </button>
        <button type="button" onClick={() => onChoose(chosen.filter((key) => !keys.includes(key)))}>
          None
        </button>
      </div>
      <ul>
        {matching.slice(0, LISTED).map(({ key, name, count }) => (
          <li key={key}>
            <label>
              <input
                type="checkbox"
                checked={chosen.includes(key)}
                onChange={({ currentTarget }) =>
                  onChoose(currentTarget.checked ? [...chosen, key] : chosen.filter((each) => each !== key))
                }
              />
              <span dir="auto">{name === '' ? 'nothing there' : name}</span>
              <span class="group-count">{count}</span>
            </label>
          </li>
        ))}
      </ul>
      {matching.length > LISTED ? <p>{`And ${matching.length - LISTED} more: write to find one.`}</p> : null}
    </fieldset>
  );
}
