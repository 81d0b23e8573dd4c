// Above a sheet: its name, what it is for, the cautions that apply to it, and what can be done with it as a whole.

import { useSignal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import type { TableView } from '../../../engine/index.ts';
import { newRowWish } from '../grid/selected.ts';
import { readOnly } from '../state.ts';
import { downloadCsv } from './download-csv.ts';
import { readImport } from './import-state.ts';

export function SheetHead({ table }: { readonly table: TableView }) {
  const free = readOnly.value === undefined;
  const cautionsOpen = useSignal(false);
  return (
    <header class="sheet-head">
      <h2>{table.name}</h2>
      <div class="sheet-acts">
        {table.cautions.length === 0 ? null : (
          <button
            type="button"
            class="quiet"
            aria-expanded={cautionsOpen.value}
            aria-controls="cautions"
            onClick={() => {
              cautionsOpen.value = !cautionsOpen.value;
            }}
          >
            {table.cautions.length === 1 ? 'A caution' : `${table.cautions.length} cautions`}
          </button>
        )}
        {table.entered ? (
          <button
            type="button"
            disabled={!free}
            onClick={() => {
              newRowWish.value += 1;
            }}
          >
            Add a row
          </button>
        ) : null}
        {table.entered ? <ImportButton table={table.name} disabled={!free} /> : null}
        <button type="button" onClick={() => downloadCsv(table.name)}>
          Download CSV
        </button>
      </div>
      <p>{table.about}</p>
      {cautionsOpen.value ? <Cautions cautions={table.cautions} /> : null}
    </header>
  );
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

/** The usual cautions, where they were asked for. */
function Cautions({ cautions }: { readonly cautions: readonly string[] }) {
  return (
    <ul class="cautions" id="cautions">
      {cautions.map((caution) => (
        <li key={caution}>{caution}</li>
      ))}
    </ul>
  );
}
