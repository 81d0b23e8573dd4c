// A button that does a command of the table: disabled with the reason as its hint where it can't be done, else with its keys.

import type { ComponentChildren } from 'preact';
import { useSteady } from '../store/steady.ts';
import { carryOut, refusalOf } from './carry-out.ts';
import type { PageCommand } from './command.ts';
import { Situation } from './situation.ts';
import { commandNamed } from './table.ts';

export interface CommandButtonProps {
  readonly id: string;
  /** What stands on it; the command's label where absent. */
  readonly children?: ComponentChildren;
  /** Its hint where it can be done; the label and the keys where absent. */
  readonly title?: string;
  readonly class?: string;
  /** Done after it. */
  readonly then?: () => void;
}

/** Nothing where the command doesn't apply. */
export function CommandButton({ id, children, title, class: className, then }: CommandButtonProps) {
  const command = commandNamed(id);
  const { applies, why, label } = useSteady(command, standing);
  if (!applies) return null;
  const keys = command.keys?.[0];
  return (
    <button
      type="button"
      class={className}
      disabled={why !== undefined}
      title={why ?? title ?? (keys === undefined ? label : `${label} (${keys})`)}
      onClick={() => {
        carryOut(command, new Situation('page'));
        then?.();
      }}
    >
      {children ?? label}
    </button>
  );
}

/** Whether it applies, why it can't be done, and what it is called just now. */
function standing(command: PageCommand): {
  readonly applies: boolean;
  readonly why: string | undefined;
  readonly label: string;
} {
  const now = new Situation('page');
  if (command.applies?.(now) === false) return { applies: false, why: undefined, label: '' };
  return { applies: true, why: refusalOf(command, now), label: command.says?.(now) ?? command.label };
}
