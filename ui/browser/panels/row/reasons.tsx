// Why a cell is what it is: its formula, the same with this row's values, and the cells it rests on, each of which opens
// in turn. Asks the workbook only for what is open, and follows every change.

import { useSignal } from '@preact/signals';
import type { Explanation } from '../../../engine/index.ts';
import { goTo, workbook } from '../state.ts';

export interface CellAt {
  readonly table: string;
  readonly row: number;
  readonly column: string;
}

/** The reasons of one cell, its inputs folded. */
export function Reasons({ table, row, column }: CellAt) {
  const explained = workbook().explain(table, row, column);
  return (
    <div class="reasons">
      <Ground explained={explained} />
      <button type="button" class="quiet" onClick={() => goTo(table, row, column)}>
        Go to the cell
      </button>
    </div>
  );
}

const STANDINGS: Readonly<Record<Explanation['standing'], string>> = {
  entered: 'Typed.',
  override: 'Typed over its formula; it can be taken back.',
  computed: '',
  default: '',
};

function Ground({ explained }: { readonly explained: Explanation }) {
  const { formula, inValues, why, standing, rests, table } = explained;
  return (
    <>
      {STANDINGS[standing] === '' ? null : <p>{STANDINGS[standing]}</p>}
      {formula === '' ? null : <p class="formula-words">= {oneLine(formula)}</p>}
      {inValues === '' || oneLine(inValues) === oneLine(formula) ? null : (
        <p class="formula-words values">= {oneLine(inValues)}</p>
      )}
      {why === '' ? null : <p class="why">{why}</p>}
      {rests.length === 0 ? null : (
        <ul class="rests">
          {rests.map((rest) => (
            <Rest key={`${rest.table} ${rest.row} ${rest.column}`} rest={rest} from={table} />
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
    rest.table === from
      ? rest.column
      : `${[rest.table, rest.rowName].filter((part) => part !== '').join(' / ')} / ${rest.column}`;
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
          <Ground explained={workbook().explain(rest.table, rest.row, rest.column)} />
        </div>
      ) : null}
    </li>
  );
}

function oneLine(formula: string): string {
  return formula.replace(/\s+/g, ' ').trim();
}
