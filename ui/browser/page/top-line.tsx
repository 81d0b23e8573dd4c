// The page's top line: which workbook this is, the way to anything in it, units, undo and redo, when it was last kept, and
// opening and saving files.

import { useRef } from 'preact/hooks';
import { type Appearance, appearance } from '../appearance.ts';
import { redo, setUnits, undo, units, workbook } from '../state.ts';
import { keeping } from '../working-copy/keeper.ts';
import { openDemo, openFile, openFreshSeason, saveFile } from '../working-copy/open.ts';
import { seasonToPlan } from '../working-copy/season-to-plan.ts';
import { GoTo } from './go-to.tsx';
import { type MenuItem, showMenu } from './menu-state.ts';

export function TopLine() {
  const book = workbook();
  const steps = book.undoState();
  const file = useRef<HTMLInputElement>(null);
  return (
    <header class="top-line">
      <h1 title={book.title}>{book.title}</h1>
      <GoTo />
      <div class="top-acts">
        <Step what="Undo" keys="Ctrl Z" label={steps.undo} run={undo} />
        <Step what="Redo" keys="Ctrl Y" label={steps.redo} run={redo} />
        <UnitsSwitch />
        <button type="button" onClick={() => file.current?.click()}>
          Open
        </button>
        <input
          ref={file}
          type="file"
          class="unseen"
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
          Save
        </button>
        <button
          type="button"
          aria-haspopup="menu"
          onClick={({ currentTarget }) => {
            const { right, bottom } = currentTarget.getBoundingClientRect();
            showMenu({ x: right - 240, y: bottom + 4, label: 'Workbook', sets: moreItems() });
          }}
        >
          More
        </button>
      </div>
      <Kept />
    </header>
  );
}

interface StepWishes {
  readonly what: string;
  readonly keys: string;
  readonly label: string | undefined;
  readonly run: () => void;
}

/** Undo or redo, with what it would take back or do again. */
function Step({ what, keys, label, run }: StepWishes) {
  return (
    <button
      type="button"
      class="step"
      disabled={label === undefined}
      title={label === undefined ? `Nothing to ${what.toLowerCase()}` : `${what}: ${label} (${keys})`}
      onClick={run}
    >
      {what}
      {label === undefined ? null : <span class="step-label">{label}</span>}
    </button>
  );
}

function UnitsSwitch() {
  const now = units.value;
  return (
    <fieldset class="switch">
      <legend class="spoken">Units</legend>
      {(['us', 'si'] as const).map((each) => (
        <label key={each}>
          <input type="radio" name="units" checked={now === each} onChange={() => setUnits(each)} />
          <span>{each === 'us' ? 'in, lb' : 'cm, kg'}</span>
        </label>
      ))}
    </fieldset>
  );
}

function Kept() {
  const state = keeping.value;
  return <p class={`kept${state.state === 'failed' ? ' is-error' : ''}`}>{keptWords()}</p>;
}

/** 'kept on this computer, 12:04'. */
function keptWords(): string {
  const state = keeping.value;
  switch (state.state) {
    case 'nothing yet':
      return 'nothing changed yet';
    case 'keeping':
      return 'keeping ...';
    case 'kept':
      return `kept on this computer, ${clock(state.at)}`;
    case 'failed':
      return 'not kept: save to a file';
  }
}

function clock(at: number): string {
  const time = new Date(at);
  const day = time.toDateString() === new Date().toDateString() ? '' : `${time.toISOString().slice(0, 10)} `;
  return `${day}${String(time.getHours()).padStart(2, '0')}:${String(time.getMinutes()).padStart(2, '0')}`;
}

function moreItems(): readonly (readonly MenuItem[])[] {
  const season = seasonToPlan();
  return [
    [
      { label: `New season ${season}`, run: () => openFreshSeason(season) },
      { label: 'Demo farm', run: openDemo },
    ],
    (['system', 'light', 'dark'] as const).map((choice) => ({
      label: `${APPEARANCES[choice]}${appearance.value === choice ? ' (now)' : ''}`,
      run: () => {
        appearance.value = choice;
      },
    })),
  ];
}

const APPEARANCES: Readonly<Record<Appearance, string>> = {
  system: 'Colours as the computer says',
  light: 'Light colours',
  dark: 'Dark colours',
};
