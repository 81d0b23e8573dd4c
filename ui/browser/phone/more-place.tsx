// The rest of what can be done on the phone: open and save files, the seed order's file, redo, units and colours.

import { useRef } from 'preact/hooks';
import { type Appearance, appearance } from '../appearance.ts';
import { downloadCsv } from '../parts/download-csv.ts';
import { redo, setUnits, units, workbook } from '../state.ts';
import { openDemo, openFile, openFreshSeason, saveFile } from '../working-copy/open.ts';
import { seasonToPlan } from '../working-copy/season-to-plan.ts';
import { visit } from './places.ts';

const SEED_ORDER = 'Seed order';

export function MorePlace() {
  const file = useRef<HTMLInputElement>(null);
  const book = workbook();
  const again = book.undoState().redo;
  const season = seasonToPlan();
  const home = (act: () => void) => () => {
    act();
    visit({ at: 'sheets' });
  };
  return (
    <div class="phone-rest">
      <section>
        <h3>File</h3>
        <button type="button" onClick={() => file.current?.click()}>
          Open a workbook file
        </button>
        <input
          ref={file}
          type="file"
          class="spoken"
          accept=".json,application/json"
          aria-label="Open a workbook file"
          tabIndex={-1}
          onChange={async ({ currentTarget }) => {
            const chosen = currentTarget.files?.[0];
            if (chosen !== undefined) await openFile(chosen);
            currentTarget.value = '';
          }}
        />
        <button type="button" onClick={saveFile}>
          Save to a file
        </button>
        {book.table(SEED_ORDER) === undefined ? null : (
          <button type="button" onClick={() => downloadCsv(SEED_ORDER)}>
            Download the seed order
          </button>
        )}
        <button type="button" onClick={home(() => openFreshSeason(season))}>
          New season {season}
        </button>
        <button type="button" onClick={home(openDemo)}>
          Demo farm
        </button>
      </section>
      <section>
        <h3>Last step taken back</h3>
        <button type="button" disabled={again === undefined} onClick={redo}>
          {again === undefined ? 'Nothing to redo' : `Redo: ${again}`}
        </button>
      </section>
      <Choice
        legend="Units"
        name="phone-units"
        options={[
          { value: 'us', label: 'in, ft, lb' },
          { value: 'si', label: 'cm, m, kg' },
        ]}
        now={units.value}
        choose={(value) => setUnits(value === 'si' ? 'si' : 'us')}
      />
      <Choice
        legend="Colours"
        name="phone-colours"
        options={[
          { value: 'system', label: 'As the phone says' },
          { value: 'light', label: 'Light' },
          { value: 'dark', label: 'Dark' },
        ]}
        now={appearance.value}
        choose={(value) => {
          appearance.value = isAppearance(value) ? value : 'system';
        }}
      />
    </div>
  );
}

function isAppearance(value: string): value is Appearance {
  return value === 'system' || value === 'light' || value === 'dark';
}

interface ChoiceWishes {
  readonly legend: string;
  readonly name: string;
  readonly options: readonly { readonly value: string; readonly label: string }[];
  readonly now: string;
  readonly choose: (value: string) => void;
}

function Choice({ legend, name, options, now, choose }: ChoiceWishes) {
  return (
    <fieldset class="phone-choice">
      <legend>{legend}</legend>
      {options.map(({ value, label }) => (
        <label key={value}>
          <input type="radio" name={name} checked={value === now} onChange={() => choose(value)} />
          {label}
        </label>
      ))}
    </fieldset>
  );
}
