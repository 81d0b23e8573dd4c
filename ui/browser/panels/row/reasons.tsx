// Why a cell is what it is: a sentence, the cells it rests on, each of which opens in turn, and one step below the formula with
// what its terms mean. Asks the workbook only for what is open, and follows every change. Fetched when first opened.

import { useSignal } from '@preact/signals';
import { type Explanation, explain, type Saying, sayWhy } from '../../../../engine/index.ts';
import { type CellAt, goTo } from '../../store/selection.ts';
import { columnAt } from '../../store/sheets.ts';
import { workbook } from '../../store/workbook.ts';

/** The reasons of one cell, its inputs folded. */
export function Reasons({ sheet, row, column }: CellAt) {
  const explained = explain(workbook(), sheet, row.slot, column);
  return (
    <div class="reasons">
      {explained === undefined ? null : <Ground explained={explained} />}
      <button type="button" class="quiet" onClick={() => goTo(sheet, row.id, column)}>
        Go to the cell
      </button>
    </div>
  );
}

const ORIGINS: Readonly<Record<Explanation['origin'], string>> = {
  entered: 'Typed.',
  override: 'Typed over its formula; it can be taken back.',
  computed: '',
  default: '',
  made: 'Follows from the rows of other sheets.',
};

function Ground({ explained }: { readonly explained: Explanation }) {
  const { why, origin, rests, sheet, row, column } = explained;
  const said = sayWhy(workbook(), sheet, row, column);
  const near = said === undefined ? rests : rests.filter((rest) => said.matters(rest.sheet, rest.row, rest.column));
  const far = rests.filter((rest) => !near.includes(rest));
  return (
    <>
      {ORIGINS[origin] === '' ? null : <p>{ORIGINS[origin]}</p>}
      {said === undefined || said.words === '' ? null : <p class="in-words">{said.words}</p>}
      {why === '' ? null : <p class="why">{why}</p>}
      <Rests rests={near} from={sheet} />
      <Workings explained={explained} said={said} far={far} />
    </>
  );
}

function Rests({ rests, from }: { readonly rests: readonly Explanation[]; readonly from: string }) {
  if (rests.length === 0) return null;
  return (
    <ul class="rests">
      {rests.map((rest) => (
        <Rest key={`${rest.sheet} ${rest.row} ${rest.column}`} rest={rest} from={from} />
      ))}
    </ul>
  );
}

interface WorkingsProps {
  readonly explained: Explanation;
  readonly said: Saying | undefined;
  /** What the formula reads that had no say in this row. */
  readonly far: readonly Explanation[];
}

/** The formula, the same with this row's values, what its terms mean, and what had no say here: folded. */
function Workings({ explained, said, far }: WorkingsProps) {
  const open = useSignal(false);
  const { formula, inValues, sheet, column } = explained;
  if (formula === '') return null;
  const note = columnAt(workbook(), { sheet, column })?.note ?? '';
  const terms = said?.terms ?? [];
  return (
    <div class="workings">
      <button
        type="button"
        class="quiet"
        aria-expanded={open.value}
        onClick={() => {
          open.value = !open.value;
        }}
      >
        How it is worked out
      </button>
      {open.value ? (
        <>
          {note === '' ? null : <p>{note}</p>}
          <p class="formula-words">= {oneLine(formula)}</p>
          {inValues === '' || oneLine(inValues) === oneLine(formula) ? null : (
            <p class="formula-words values">= {oneLine(inValues)}</p>
          )}
          {terms.length === 0 ? null : (
            <dl class="terms">
              {terms.map(({ name, means }) => (
                <div key={name}>
                  <dt>{name}</dt>
                  <dd>{means}</dd>
                </div>
              ))}
            </dl>
          )}
          {far.length === 0 ? null : <p>It looks at these too, which change nothing here:</p>}
          <Rests rests={far} from={sheet} />
        </>
      ) : null}
    </div>
  );
}

/** One input: its name and value, and under it its own reasons once opened. */
function Rest({ rest, from }: { readonly rest: Explanation; readonly from: string }) {
  const open = useSignal(false);
  const leads = rest.formula !== '' || rest.why !== '';
  const name =
    rest.sheet === from
      ? rest.columnName
      : [rest.sheetName, rest.rowName, rest.columnName].filter((part) => part !== '').join(' / ');
  const shown = rest.shown === '' ? 'blank' : rest.shown;
  if (!leads) {
    return (
      <li class="rest">
        <span class="rest-name">{name}</span>
        <span class="rest-value">{shown}</span>
      </li>
    );
  }
  return (
    <li>
      <button
        type="button"
        class="rest"
        aria-expanded={open.value}
        onClick={() => {
          open.value = !open.value;
        }}
      >
        <span class="rest-name">{name}</span>
        <span class="rest-value">{shown}</span>
      </button>
      {open.value ? (
        <div class="reasons">
          <Deeper rest={rest} />
        </div>
      ) : null}
    </li>
  );
}

function Deeper({ rest }: { readonly rest: Explanation }) {
  const explained = explain(workbook(), rest.sheet, rest.row, rest.column);
  return explained === undefined ? null : <Ground explained={explained} />;
}

function oneLine(formula: string): string {
  return formula.replace(/\s+/g, ' ').trim();
}
