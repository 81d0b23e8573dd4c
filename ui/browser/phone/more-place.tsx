// The rest of what can be done on the phone: open and save files, the seed order's file, redo, units and colours.

import { sheetView } from '../../../engine/index.ts';
import { CommandButton } from '../commands/command-button.tsx';
import { hasGlance } from '../glance/opening.ts';
import { picturesOf } from '../pictures/list.ts';
import { type Appearance, appearance } from '../store/appearance.ts';
import { setUnits } from '../store/change.ts';
import { inTheSun } from '../store/sun.ts';
import { steps, units, workbook } from '../store/workbook.ts';
import { downloadAsCsv } from './download-as-csv.ts';
import { visit } from './places.ts';

const SEED_ORDER = 'seed-order';

export function MorePlace() {
  const again = steps().redo;
  const home = () => visit({ at: 'today' });
  return (
    <div class="phone-rest">
      <section>
        <h2>File</h2>
        <CommandButton id="open" />
        <CommandButton id="save">Save to a file</CommandButton>
        {sheetView(workbook(), SEED_ORDER) === undefined ? null : (
          <button type="button" onClick={() => downloadAsCsv(SEED_ORDER)}>
            Download the seed order
          </button>
        )}
        <CommandButton id="workbooks" />
        <CommandButton id="versions" />
        <CommandButton id="new season" then={home} />
        <CommandButton id="demo farm" then={home} />
        <CommandButton id="upgrade sheets" />
      </section>
      <section>
        <h2>The season as a whole</h2>
        <CommandButton id="what if" />
        {picturesOf(workbook()).length === 0 ? null : (
          <button type="button" onClick={() => visit({ at: 'pictures' })}>
            Pictures of the farm
          </button>
        )}
        {hasGlance(workbook()) ? (
          <button type="button" onClick={() => visit({ at: 'paper' })}>
            Pages for paper
          </button>
        ) : null}
      </section>
      <section>
        <h2>Sums on the side</h2>
        <button type="button" onClick={() => visit({ at: 'scratch' })}>
          Scratch paper
        </button>
      </section>
      <section>
        <h2>Last step taken back</h2>
        <CommandButton id="redo">{again === undefined ? 'Nothing to redo' : `Redo: ${again}`}</CommandButton>
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
      <Choice
        legend="Contrast"
        name="phone-contrast"
        options={[
          { value: 'usual', label: 'As usual' },
          { value: 'sun', label: 'Stronger, for the sun' },
        ]}
        now={inTheSun.value ? 'sun' : 'usual'}
        choose={(value) => {
          inTheSun.value = value === 'sun';
        }}
      />
    </div>
  );
}

function isAppearance(value: string): value is Appearance {
  return value === 'system' || value === 'light' || value === 'dark';
}

interface ChoiceProps {
  readonly legend: string;
  readonly name: string;
  readonly options: readonly { readonly value: string; readonly label: string }[];
  readonly now: string;
  readonly choose: (value: string) => void;
}

function Choice({ legend, name, options, now, choose }: ChoiceProps) {
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
