// Before a workbook's sheets are brought up to date: which formulas change, how far figures move, what comes and goes, and which
// own formulas stand where the sheet's changed. Taken as one step, or left as it is.

import { useLayoutEffect, useRef } from 'preact/hooks';
import type {
  FormulaChange,
  MovedFigures,
  NameChange,
  OwnFormula,
  RowsChange,
  Upgrade,
} from '../../../engine/index.ts';
import { keepSheets, takeUpgrade } from './upgrade-acts.ts';
import { pendingUpgrade } from './upgrade-state.ts';

export function UpgradeDialog() {
  const upgrade = pendingUpgrade.value;
  const box = useRef<HTMLDialogElement>(null);
  useLayoutEffect(() => {
    if (upgrade !== undefined && box.current?.open === false) box.current.showModal();
  }, [upgrade]);
  if (upgrade === undefined) return null;
  return (
    <dialog class="dialog upgrade" ref={box} aria-labelledby="upgrade-title" onClose={keepSheets}>
      <h2 id="upgrade-title">Bring the sheets up to date</h2>
      <p>
        This workbook is made from the sheets of an earlier Dibble. This is what today's would change; whatever you
        typed and every formula of your own stays.
      </p>
      <Changes upgrade={upgrade} />
      <div class="dialog-acts">
        <button type="button" onClick={keepSheets}>
          Keep the sheets as they are
        </button>
        <button type="button" class="primary" onClick={takeUpgrade}>
          Bring them up to date
        </button>
      </div>
    </dialog>
  );
}

function Changes({ upgrade }: { readonly upgrade: Upgrade }) {
  const { formulas, own, moved, named, added, gone, rowsAdded, rowsGone } = upgrade;
  const lists = [formulas, own, moved, named, added, gone, rowsAdded, rowsGone];
  const nothing = lists.every((list) => list.length === 0);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a part that scrolls must be reachable by keyboard
    <section class="upgrade-changes" aria-label="What would change" tabIndex={0}>
      {nothing ? <p>No figure of yours moves, and no formula changes.</p> : null}
      <Part title="Figures that move" list={moved} draw={(each) => <Moved figures={each} />} />
      <Part title="Formulas that change" list={formulas} draw={(each) => <Formulas change={each} />} />
      <Part
        title="Formulas of your own, where the sheet's changes behind them"
        list={own}
        draw={(each) => <OwnFormulas change={each} />}
      />
      <Part
        title="Names of yours that change, since the sheets have them too; formulas follow"
        list={named}
        draw={(each) => <Names change={each} />}
      />
      <Part title="New columns" list={added} draw={(each) => <span>{nameOf(each)}</span>} />
      <Part
        title="Columns that go; what you typed in them is kept aside"
        list={gone}
        draw={(each) => <span>{nameOf(each)}</span>}
      />
      <Part title="New rows" list={rowsAdded} count={countOf(rowsAdded)} draw={(each) => <Rows change={each} />} />
      <Part
        title="Rows that go, since you changed nothing of them and use them nowhere"
        list={rowsGone}
        count={countOf(rowsGone)}
        draw={(each) => <Rows change={each} />}
      />
    </section>
  );
}

type Named = Pick<FormulaChange, 'sheet' | 'sheetName' | 'column' | 'columnName'>;

function nameOf({ sheetName, columnName }: Named): string {
  return columnName === '' ? `${sheetName}, the whole sheet` : `${sheetName} / ${columnName}`;
}

interface PartProps<T extends Named> {
  readonly title: string;
  readonly list: readonly T[];
  readonly draw: (one: T) => preact.ComponentChildren;
  /** How many there are, where one of the list stands for several. */
  readonly count?: number;
}

function Part<T extends Named>({ title, list, draw, count = list.length }: PartProps<T>) {
  if (list.length === 0) return null;
  return (
    <>
      <h3>{`${title} (${count})`}</h3>
      <ul>
        {list.map((each) => (
          <li key={`${each.sheet} ${each.column}`}>{draw(each)}</li>
        ))}
      </ul>
    </>
  );
}

function Moved({ figures }: { readonly figures: MovedFigures }) {
  const { count, example } = figures;
  const rows = count === 1 ? 'in one row' : `in ${count} rows, most`;
  return (
    <>
      <b>{nameOf(figures)}</b>{' '}
      <span>{`${rows} in ${example.rowName}: ${example.before} becomes ${example.after}`}</span>
    </>
  );
}

function Formulas({ change }: { readonly change: FormulaChange }) {
  return (
    <>
      <b>{nameOf(change)}</b>
      <Formula words="was" text={change.before} />
      <Formula words="becomes" text={change.after} />
    </>
  );
}

function OwnFormulas({ change }: { readonly change: OwnFormula }) {
  return (
    <>
      <b>{nameOf(change)}</b>
      <Formula words="yours, which stays" text={change.own} />
      <Formula words="the sheet's was" text={change.before} />
      <Formula words="the sheet's becomes" text={change.after} />
    </>
  );
}

function Names({ change }: { readonly change: NameChange }) {
  const { sheetName, columnName, before, after } = change;
  return (
    <>
      <b>{columnName === '' ? before : `${sheetName} / ${before}`}</b> <span>{`becomes ${after}`}</span>
    </>
  );
}

function countOf(changes: readonly RowsChange[]): number {
  return changes.reduce((sum, { names }) => sum + names.length, 0);
}

function Rows({ change }: { readonly change: RowsChange }) {
  return (
    <>
      <b>{change.sheetName}</b> <span>{change.names.join(', ')}</span>
    </>
  );
}

function Formula({ words, text }: { readonly words: string; readonly text: string }) {
  return (
    <p class="upgrade-formula">
      <span class="within">{words}</span> <code>{text === '' ? 'no formula' : `=${text}`}</code>
    </p>
  );
}
