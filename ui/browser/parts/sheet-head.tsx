// Above a sheet: its name, what it is for, the cautions that apply to it, and what can be done with it as a whole.

import { useRef } from 'preact/hooks';
import { exportCsv, type TableView } from '../../../engine/index.ts';
import { tell } from '../messages.ts';
import { addRow } from '../sheet-actions.ts';
import { readOnly, workbook } from '../state.ts';
import { download, fileName } from '../working-copy/open.ts';
import { readImport } from './import-state.ts';

export function SheetHead({ table }: { readonly table: TableView }) {
  const free = readOnly.value === undefined;
  return (
    <header class="sheet-head">
      <div class="sheet-words">
        <h2>{table.name}</h2>
        <p>{table.about}</p>
      </div>
      <div class="sheet-acts">
        {table.entered ? (
          <button type="button" disabled={!free} onClick={() => addRow(table.name, {}, table.key)}>
            Add a row
          </button>
        ) : null}
        {table.entered ? <ImportButton table={table.name} disabled={!free} /> : null}
        <button type="button" onClick={() => downloadCsv(table.name)}>
          Download CSV
        </button>
      </div>
      <Cautions cautions={table.cautions} />
    </header>
  );
}

function downloadCsv(table: string): void {
  const name = `${fileName(table)}.csv`;
  download(exportCsv(workbook(), table), name, 'text/csv;charset=utf-8');
  tell(`Downloaded ${name}.`);
}

function ImportButton({ table, disabled }: { readonly table: string; readonly disabled: boolean }) {
  const file = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" disabled={disabled} onClick={() => file.current?.click()}>
        Import CSV
      </button>
      <input
        ref={file}
        type="file"
        class="unseen"
        accept=".csv,.tsv,.txt,text/csv"
        aria-label={`Import a CSV file into ${table}`}
        tabIndex={-1}
        onChange={async ({ currentTarget }) => {
          const chosen = currentTarget.files?.[0];
          if (chosen !== undefined) await readImport(table, chosen);
          currentTarget.value = '';
        }}
      />
    </>
  );
}

/** The usual cautions: the first in the open, the rest a press away. */
function Cautions({ cautions }: { readonly cautions: readonly string[] }) {
  if (cautions.length === 0) return null;
  return (
    <details class="cautions">
      <summary>{cautions.length === 1 ? 'A caution' : `${cautions.length} cautions`}</summary>
      <ul>
        {cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </details>
  );
}
