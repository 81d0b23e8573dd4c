// A formula changed with old and new figures side by side for every row, before it is taken; and the way back to the sheet's own.

import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { type FormulaTrial, formulaSideBySide, message, sheetView, type Workbook } from '../../../engine/index.ts';
import { change, UNDO } from '../store/change.ts';
import { tell } from '../store/notices.ts';
import { workbook } from '../store/workbook.ts';
import './own.css';
import { formulaTried } from './own-open.ts';
import { Refused } from './refused.tsx';

export function FormulaDialog() {
  const tried = formulaTried.value;
  const box = useRef<HTMLDialogElement>(null);
  useLayoutEffect(() => {
    if (tried !== undefined && box.current?.open === false) box.current.showModal();
  }, [tried]);
  if (tried === undefined) return null;
  return (
    <dialog class="dialog own" ref={box} aria-labelledby="formula-title" onClose={shut}>
      <SideBySide key={`${tried.sheet} ${tried.column}`} book={workbook()} {...tried} />
    </dialog>
  );
}

function shut(): void {
  formulaTried.value = undefined;
}

interface Props {
  readonly book: Workbook;
  readonly sheet: string;
  readonly column: string;
}

/** What the figures on screen are of: the text in the box, or null for the sheet's own formula. */
interface Tried {
  readonly of: string | null;
  readonly trial: FormulaTrial;
}

function SideBySide({ book, sheet, column: id }: Props) {
  const column = sheetView(book, sheet)?.columns.find((one) => one.id === id);
  const [formula, write] = useState(column?.formula ?? '');
  const [tried, show] = useState<Tried | undefined>(undefined);
  const [refused, refuse] = useState<string | undefined>(undefined);
  const [all, showAll] = useState(false);
  if (column === undefined) return null;
  const compare = (of: string | null): void => {
    refuse(undefined);
    show({ of, trial: formulaSideBySide(book, sheet, id, of) });
  };
  const take = (text: string | null): void => {
    const said = message(text === null ? 'template formula' : 'set formula', { column: column.name });
    const done = change([{ command: 'set formula', sheet, column: id, formula: text }], said, { quietly: true });
    if (done.refused) {
      refuse(done.why);
      return;
    }
    shut();
    tell(`The formula of ${column.name} is changed.`, 'done', UNDO);
  };
  const { templateFormula } = column;
  const trial = tried?.trial;
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        compare(formula.trim().replace(/^=/, ''));
      }}
    >
      <h2 id="formula-title">{`The formula of ${column.name}, side by side`}</h2>
      <label>
        Formula
        <textarea
          rows={5}
          spellcheck={false}
          value={formula}
          onInput={({ currentTarget }) => {
            write(currentTarget.value);
            show(undefined);
            refuse(undefined);
          }}
        />
      </label>
      {templateFormula === undefined ? null : (
        <p>
          The sheet's own: <code>{`=${templateFormula}`}</code>
        </p>
      )}
      <Refused why={trial?.ok === false ? trial.why : refused} />
      {trial?.ok === true ? (
        <section class="own-part" aria-label="Figures before and after">
          <p role="status">
            {trial.differing === 0
              ? `No figure changes in ${trial.rows.length} rows.`
              : `${trial.differing} of ${trial.rows.length} rows change.`}
            {tried?.of === null ? " The new formula is the sheet's own." : ''}
          </p>
          <label>
            <input type="checkbox" checked={all} onChange={({ currentTarget }) => showAll(currentTarget.checked)} />{' '}
            Show the rows that stay, too
          </label>
          <table class="own-table">
            <thead>
              <tr>
                <th scope="col">Row</th>
                <th scope="col">Now</th>
                <th scope="col">With the new formula</th>
              </tr>
            </thead>
            <tbody>
              {trial.rows
                .filter(({ differs }) => all || differs)
                .map(({ row, rowName, before, after, differs }) => (
                  <tr key={row} class={differs ? 'differs' : undefined}>
                    <th scope="row">{rowName}</th>
                    <td>{before}</td>
                    <td>{after}</td>
                  </tr>
                ))}
            </tbody>
          </table>
        </section>
      ) : null}
      <div class="dialog-acts">
        <button type="button" onClick={shut}>
          Leave it
        </button>
        {templateFormula === undefined ? null : (
          <>
            <button type="button" onClick={() => compare(null)}>
              Compare with the sheet's own
            </button>
            <button type="button" onClick={() => take(null)}>
              Return to the sheet's own
            </button>
          </>
        )}
        <button type="submit">Compare</button>
        <button
          type="button"
          class="primary"
          disabled={trial?.ok !== true}
          onClick={() => {
            if (tried !== undefined) take(tried.of);
          }}
        >
          Take it
        </button>
      </div>
    </form>
  );
}
