// The page's top line: which workbook this is, the way to anything in it, units, undo and redo, when it was last kept, and
// opening and saving files.

import { sayMessage, settings } from '../../../engine/index.ts';
import { CommandButton } from '../commands/command-button.tsx';
import { showMenu } from '../commands/menu-state.ts';
import { menuItems } from '../commands/menus.ts';
import { Situation } from '../commands/situation.ts';
import { keeping } from '../keeping/state.ts';
import { whenSeenFrom } from '../keeping/times.ts';
import { setUnits, undoSteps } from '../store/change.ts';
import { steps, units, workbook } from '../store/workbook.ts';
import { GoTo } from './go-to.tsx';

export function TopLine() {
  const { title } = settings(workbook());
  return (
    <header class="top-line">
      <h1 title={title}>{title}</h1>
      <GoTo />
      <div class="top-acts">
        <Step what="Undo" id="undo" keys="Ctrl Z" label={steps().undo} />
        <Steps />
        <Step what="Redo" id="redo" keys="Ctrl Y" label={steps().redo} />
        <UnitsSwitch />
        <CommandButton id="open">Open</CommandButton>
        <CommandButton id="save">Save</CommandButton>
        <button
          type="button"
          aria-haspopup="menu"
          onClick={({ currentTarget }) => {
            const { right, bottom } = currentTarget.getBoundingClientRect();
            const sets = menuItems('workbook', new Situation('page'));
            showMenu({ x: right - 240, y: bottom + 4, label: 'Workbook', sets });
          }}
        >
          More
        </button>
      </div>
      <Kept />
    </header>
  );
}

interface StepProps {
  readonly what: string;
  readonly id: string;
  readonly keys: string;
  readonly label: string | undefined;
}

/** Undo or redo, with what it would take back or do again. */
function Step({ what, id, keys, label }: StepProps) {
  return (
    <CommandButton id={id} class="step" title={`${what}: ${label ?? ''} (${keys})`}>
      {what}
      {label === undefined ? null : <span class="step-label">{label}</span>}
    </CommandButton>
  );
}

/** So many steps back are listed. */
const LISTED = 25;

/** What was done, the latest first: choosing one goes back to before it. */
function Steps() {
  const { done } = workbook().history;
  if (done.length < 2) return null;
  const words = 'What was done, to go back to before it';
  return (
    <button
      type="button"
      class="steps"
      aria-haspopup="menu"
      title={words}
      onClick={({ currentTarget }) => {
        const { left, bottom } = currentTarget.getBoundingClientRect();
        const items = done
          .slice(-LISTED)
          .reverse()
          .map((step, at) => ({
            label: `${at + 1}. ${sayMessage(step.done.message)}`,
            keys: undefined,
            why: undefined,
            run: () => undoSteps(at + 1),
          }));
        showMenu({ x: left - 120, y: bottom + 4, label: words, sets: [items] });
      }}
    >
      <span aria-hidden="true">{'\u25be'}</span>
      <span class="spoken">{words}</span>
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
      return `kept on this computer, ${whenSeenFrom(Date.now(), state.at)}`;
    case 'failed':
      return 'not kept: save to a file';
  }
}
