// Why a cell is what it is: its formula, the same with this row's values, and the cells it rests on, each of which opens
// in turn. Asks the workbook only for what is open, and follows every change.

import { useSignal } from '@preact/signals';
import { type Explanation, explain } from '../../../../engine/index.ts';
import { type CellAt, goTo } from '../../store/selection.ts';
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
  const { formula, inValues, why, origin, rests, sheet } = explained;
  return (
    <>
      {ORIGINS[origin] === '' ? null : <p>{ORIGINS[origin]}</p>}
      {formula === '' ? null : <p class="formula-words">= {oneLine(formula)}</p>}
      {inValues === '' || oneLine(inValues) === oneLine(formula) ? null : (
        <p class="formula-words values">= {oneLine(inValues)}</p>
      )}
      {why === '' ? null : <p class="why">{why}</p>}
      {rests.length === 0 ? null : (
        <ul class="rests">
          {rests.map((rest) => (
            <Rest key={`${rest.sheet} ${rest.row} ${rest.column}`} rest={rest} from={sheet} />
          ))}
        </ul>
      )}
    </>
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
