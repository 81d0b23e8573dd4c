// The checks of a sheet: built-in ones switched off, own ones written, each with its level, its column and a formula that gives the
// sentence where there is something to say.

import { useRef, useState } from 'preact/hooks';
import {
  type CheckView,
  checksOf,
  type FindingLevel,
  type SheetView,
  tryCheck,
  type Workbook,
} from '../../../engine/index.ts';
import { act } from './own-state.ts';
import { Refused } from './refused.tsx';

const LEVELS: readonly FindingLevel[] = ['error', 'warning', 'note'];

export function Checks({ book, sheet }: { readonly book: Workbook; readonly sheet: SheetView }) {
  const [refused, refuse] = useState<string | undefined>(undefined);
  const [name, write] = useState('');
  const [level, choose] = useState<FindingLevel>('warning');
  const [column, chooseColumn] = useState(sheet.columns[0]?.id ?? '');
  const [says, say] = useState('');
  const [begun, begin] = useState<string | undefined>(undefined);
  const field = useRef<HTMLInputElement>(null);
  const checks = checksOf(book, sheet.id);
  /** The check that is being changed; undefined where a new one is written, or where it was taken out meanwhile. */
  const changed = checks.find(({ id }) => id === begun)?.id;
  const change = (check: CheckView): void => {
    begin(check.id);
    write(check.name);
    choose(check.level);
    chooseColumn(check.column);
    say(check.says);
    refuse(undefined);
    field.current?.focus();
  };
  const clear = (): void => {
    begin(undefined);
    write('');
    say('');
    refuse(undefined);
  };
  const add = (): string | undefined => {
    if (name.trim() === '') return 'The check needs a name.';
    if (says.trim() === '') return 'The check needs a formula that gives its sentence.';
    const sentence = says.trim().replace(/^=/, '');
    const tried = tryCheck(book, sheet.id, sentence);
    if (!tried.ok) return tried.diagnostic.why;
    const check = { id: changed ?? book.newId(), name: name.trim(), level, column, says: sentence };
    return act({ command: 'set check', sheet: sheet.id, check }, 'set check', { check: check.name });
  };
  return (
    <details>
      <summary>{`Checks (${checks.length})`}</summary>
      <ul class="own-list">
        {checks.map((check) => (
          <li key={check.id} class="own-line">
            <span>{`${check.name}, ${check.level}`}</span>
            {check.why === undefined ? null : <span class="is-error">{check.why}</span>}
            <button type="button" onClick={() => change(check)}>
              {`Change ${check.name}`}
            </button>
            <button
              type="button"
              onClick={() =>
                refuse(
                  act({ command: 'remove check', sheet: sheet.id, check: check.id }, 'set check', {
                    check: check.name,
                  }),
                )
              }
            >
              {`Take ${check.name} out`}
            </button>
          </li>
        ))}
      </ul>
      <form
        class="own-line"
        onSubmit={(event) => {
          event.preventDefault();
          const why = add();
          if (why === undefined) clear();
          else refuse(why);
        }}
      >
        <label>
          {changed === undefined ? 'Name of a new check' : 'Name of the check'}{' '}
          <input ref={field} value={name} onInput={({ currentTarget }) => write(currentTarget.value)} />
        </label>
        <label>
          Level{' '}
          <select
            value={level}
            onChange={({ currentTarget }) => choose(LEVELS.find((one) => one === currentTarget.value) ?? 'warning')}
          >
            {LEVELS.map((each) => (
              <option key={each}>{each}</option>
            ))}
          </select>
        </label>
        <label>
          At the column{' '}
          <select value={column} onChange={({ currentTarget }) => chooseColumn(currentTarget.value)}>
            {sheet.columns.map((one) => (
              <option key={one.id} value={one.id}>
                {one.name}
              </option>
            ))}
          </select>
        </label>
        <label>
          Its sentence{' '}
          <input
            value={says}
            spellcheck={false}
            placeholder={'IF([Length] > 100 ft; "Longer than a hose.")'}
            onInput={({ currentTarget }) => say(currentTarget.value)}
          />
        </label>
        <button type="submit">{changed === undefined ? 'Add the check' : 'Change the check'}</button>
        {changed === undefined ? null : (
          <button
            type="button"
            onClick={() => {
              clear();
              // The button goes, and would take the focus with it.
              field.current?.focus();
            }}
          >
            Leave it as it is
          </button>
        )}
        <Refused why={refused} />
      </form>
    </details>
  );
}
