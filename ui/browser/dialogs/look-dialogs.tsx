// The dialogs about how a sheet is looked at: a filter on a column, a colour by rule, the columns of a view.

import { useSignal } from '@preact/signals';
import {
  type ColourRule,
  type ColumnView,
  type Condition,
  colourRules,
  message,
  type SheetView,
  settings,
  sheetView,
  showDate,
  shownNumber,
  TONES,
  type Tone,
} from '../../../engine/index.ts';
import { newId } from '../files/world.ts';
import { change } from '../store/change.ts';
import { conditionWords } from '../store/condition-words.ts';
import { changeView, viewOn } from '../store/looks.ts';
import { columnOf } from '../store/sheets.ts';
import { workbook } from '../store/workbook.ts';
import { BARE_CONDITION, type ConditionDraft, ConditionFields, readCondition } from './condition-fields.tsx';
import { Dialog } from './dialog.tsx';
import { closeLooks, lookDialog } from './look-state.ts';
import { ViewDialog } from './view-dialog.tsx';

export function LookDialogs() {
  const open = lookDialog.value;
  const sheet = open === undefined ? undefined : sheetView(workbook(), open.sheet);
  if (open === undefined || sheet === undefined) return null;
  if (open.what === 'view') return <ViewDialog key={`view ${String(open.fresh)}`} sheet={sheet} fresh={open.fresh} />;
  const column = columnOf(sheet, open.column);
  if (column === undefined) return null;
  return open.what === 'filter' ? (
    <FilterDialog sheet={sheet} column={column} />
  ) : (
    <ColourDialog sheet={sheet} column={column} />
  );
}

interface OnColumn {
  readonly sheet: SheetView;
  readonly column: ColumnView;
}

function FilterDialog({ sheet, column }: OnColumn) {
  const filters = viewOn(sheet).filters ?? [];
  const before = filters.find((filter) => filter.by === 'cell' && filter.column === column.id);
  const draft = useSignal<ConditionDraft>(before?.by === 'cell' ? draftOf(column, before.when) : BARE_CONDITION);
  const refused = useSignal<string | undefined>(undefined);
  const others = filters.filter((filter) => filter !== before);
  const take = (): void => {
    const read = readCondition(workbook(), column, draft.value);
    if (!read.ok) {
      refused.value = read.why;
      return;
    }
    const { condition: when } = read;
    const isNone = 'values' in when && when.values.length === 0;
    const next = isNone ? others : [...others, { by: 'cell', column: column.id, when } as const];
    refused.value = changeView(sheet, { filters: next }, 'filter view');
    if (refused.value === undefined) closeLooks();
  };
  return (
    <Dialog
      id="filter"
      title={`Rows of ${sheet.name} by ${column.name}`}
      takes="Show these rows"
      onTake={take}
      onLeave={closeLooks}
    >
      <ConditionFields
        sheet={sheet.id}
        column={column}
        draft={draft.value}
        onDraft={(next) => {
          draft.value = next;
          refused.value = undefined;
        }}
      />
      <Refusal why={refused.value} />
    </Dialog>
  );
}

function Refusal({ why }: { readonly why: string | undefined }) {
  return why === undefined ? null : (
    <p class="refusal" role="alert">
      {why}
    </p>
  );
}

/** A condition as its fields show it. */
function draftOf({ type }: ColumnView, when: Condition): ConditionDraft {
  const amount = (value: number): string => {
    if (type?.kind === 'date') return showDate(value, settings(workbook()).writing);
    if (type?.kind !== 'number' && type?.kind !== 'temperature') return String(value);
    return String(shownNumber(type.unit, value)).replace('.', settings(workbook()).writing?.decimal ?? '.');
  };
  return {
    is: when.is,
    values: 'values' in when ? when.values : [],
    least: 'least' in when ? amount(when.least) : '',
    most: 'most' in when ? amount(when.most) : '',
    text: 'text' in when ? when.text : '',
  };
}

function ColourDialog({ sheet, column }: OnColumn) {
  const book = workbook();
  const rules = colourRules(book, sheet.id).filter((rule) => rule.column === column.id);
  const draft = useSignal<ConditionDraft>(BARE_CONDITION);
  const name = useSignal('');
  const mark = useSignal('');
  const tone = useSignal<Tone>('amber');
  const refused = useSignal<string | undefined>(undefined);
  const take = (): void => {
    const read = readCondition(book, column, draft.value);
    if (!read.ok) {
      refused.value = read.why;
      return;
    }
    const words = name.value.trim();
    const rule: ColourRule = {
      id: newId(),
      name: words,
      column: column.id,
      when: read.condition,
      tone: tone.value,
      mark: mark.value.trim().slice(0, 2),
      order: 0,
    };
    const done = change([{ command: 'set colour', sheet: sheet.id, rule }], message('set colour', { colour: words }), {
      quietly: true,
    });
    if (done.refused) refused.value = done.why;
    else closeLooks();
  };
  return (
    <Dialog
      id="colour"
      title={`Colour ${column.name} of ${sheet.name}`}
      takes="Colour these cells"
      onTake={take}
      onLeave={closeLooks}
    >
      <Rules sheet={sheet} column={column} rules={rules} />
      <ConditionFields
        sheet={sheet.id}
        column={column}
        draft={draft.value}
        onDraft={(next) => {
          draft.value = next;
          refused.value = undefined;
        }}
      />
      <div>
        <label for="colour-name">What it means, in a word or two</label>
        <input
          id="colour-name"
          type="text"
          value={name.value}
          onInput={({ currentTarget }) => {
            name.value = currentTarget.value;
          }}
        />
      </div>
      <div>
        <label for="colour-mark">A sign of one or two letters that stands in the cell</label>
        <input
          id="colour-mark"
          type="text"
          maxLength={2}
          value={mark.value}
          onInput={({ currentTarget }) => {
            mark.value = currentTarget.value;
          }}
        />
      </div>
      <fieldset class="tones">
        <legend>Colour</legend>
        {TONES.map((each) => (
          <label key={each} class={`tone-${each}`}>
            <input
              type="radio"
              name="tone"
              checked={tone.value === each}
              onChange={() => {
                tone.value = each;
              }}
            />
            {each}
          </label>
        ))}
      </fieldset>
      <Refusal why={refused.value} />
    </Dialog>
  );
}

function Rules({ sheet, column, rules }: OnColumn & { readonly rules: readonly ColourRule[] }) {
  if (rules.length === 0) return null;
  const book = workbook();
  return (
    <ul class="colour-rules">
      {rules.map((rule) => (
        <li key={rule.id} class={`tone-${rule.tone}`}>
          <span>{`${rule.mark} ${rule.name}: ${column.name} ${conditionWords(book, column, rule.when)}`}</span>
          <button
            type="button"
            class="quiet"
            onClick={() =>
              change(
                [{ command: 'remove colour', sheet: sheet.id, rule: rule.id }],
                message('remove colour', { colour: rule.name }),
              )
            }
          >
            Take away
          </button>
        </li>
      ))}
    </ul>
  );
}
