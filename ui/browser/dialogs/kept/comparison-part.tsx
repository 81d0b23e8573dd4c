// What changed from a version to the present, cell by cell, and the way to bring the version back.

import { useSignal } from '@preact/signals';
import type { ColumnDifference, ColumnPlace, Comparison, RowDifference } from '../../../../engine/index.ts';
import { when } from '../../keeping/times.ts';
import { shut } from '../kept-state.ts';
import { bringBack, type Compared } from './versions-acts.ts';
import { reason } from './words.ts';

interface Props {
  readonly compared: Compared;
  readonly onBack: () => void;
}

/** So many cells of a column are shown before one asks for all. */
const FEW = 6;

export function ComparisonPart({ compared, onBack }: Props) {
  const { version, comparison } = compared;
  const same = Object.values(comparison).every((list) => list.length === 0);
  return (
    <>
      <h2 id="kept-title">{`From ${when(version.at)} to now`}</h2>
      <p class="kept-small">{reason(version)}</p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a part that scrolls must be reachable by keyboard */}
      <section class="kept-differences" aria-label="What changed since" tabIndex={0}>
        {same ? <p>Nothing changed since.</p> : <Differences comparison={comparison} />}
      </section>
      <div class="dialog-acts">
        <button type="button" onClick={onBack}>
          Back to the list
        </button>
        <button
          type="button"
          class="primary"
          disabled={same}
          onClick={() => {
            shut();
            bringBack(compared);
          }}
        >
          Bring this state back
        </button>
      </div>
    </>
  );
}

function Differences({ comparison }: { readonly comparison: Comparison }) {
  const { settings, added, gone, renamed, formulas, rowsAdded, rowsGone, cells } = comparison;
  return (
    <>
      <Plain
        title="The workbook"
        list={settings}
        draw={({ what, before, after }) => `${what}: ${before} became ${after}`}
      />
      <Plain title="Rows that came" list={rowsAdded} draw={rowWords} />
      <Plain title="Rows that went" list={rowsGone} draw={rowWords} />
      <Cells title="Typed" list={cells.filter(({ typed }) => typed)} />
      <Plain title="Columns and sheets that came" list={added} draw={placeWords} />
      <Plain title="Columns and sheets that went" list={gone} draw={placeWords} />
      <Plain title="Renamed" list={renamed} draw={({ before, after }) => `${before} became ${after}`} />
      <Plain
        title="Formulas"
        list={formulas}
        draw={(each) => `${placeWords(each)}: ${formula(each.before)} became ${formula(each.after)}`}
      />
      <Cells title="What follows from it" list={cells.filter(({ typed }) => !typed)} />
    </>
  );
}

interface PlainProps<T> {
  readonly title: string;
  readonly list: readonly T[];
  readonly draw: (each: T) => string;
}

function Plain<T>({ title, list, draw }: PlainProps<T>) {
  if (list.length === 0) return null;
  return (
    <>
      <h3>{`${title} (${list.length})`}</h3>
      <ul>
        {list.map((each, i) => (
          <li key={i}>{draw(each)}</li>
        ))}
      </ul>
    </>
  );
}

function Cells({ title, list }: { readonly title: string; readonly list: readonly ColumnDifference[] }) {
  if (list.length === 0) return null;
  const count = list.reduce((sum, each) => sum + each.count, 0);
  return (
    <>
      <h3>{`${title} (${count} ${count === 1 ? 'cell' : 'cells'})`}</h3>
      {list.map((each) => (
        <OneColumn key={`${each.sheet} ${each.column}`} difference={each} />
      ))}
    </>
  );
}

function OneColumn({ difference }: { readonly difference: ColumnDifference }) {
  const all = useSignal(false);
  const { cells, count } = difference;
  const shown = all.value ? cells : cells.slice(0, FEW);
  return (
    <div class="kept-column">
      <p>{placeWords(difference)}</p>
      <table>
        <thead class="spoken">
          <tr>
            <th>Row</th>
            <th>Then</th>
            <th>Now</th>
          </tr>
        </thead>
        <tbody>
          {shown.map(({ row, rowName, before, after }) => (
            <tr key={row}>
              <th scope="row">{rowName}</th>
              <td>{before}</td>
              <td>{after}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {cells.length > shown.length ? (
        <button
          type="button"
          class="quiet"
          onClick={() => {
            all.value = true;
          }}
        >
          {`Show ${count > cells.length ? `the first ${cells.length}` : 'all'} of ${count}`}
        </button>
      ) : null}
    </div>
  );
}

function placeWords({ sheetName, columnName }: ColumnPlace): string {
  return columnName === '' ? sheetName : `${sheetName} / ${columnName}`;
}

function rowWords({ sheetName, rowName }: RowDifference): string {
  return `${sheetName} / ${rowName}`;
}

function formula(text: string): string {
  return text === '' ? 'no formula' : `=${text}`;
}
