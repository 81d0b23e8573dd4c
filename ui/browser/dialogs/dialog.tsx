// The frame of a dialog that is one form: its title, what it holds, the buttons that leave it or take it.

import type { ComponentChildren } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';

export interface DialogProps {
  readonly id: string;
  readonly title: string;
  /** What stands on the button that does it; absent: there is nothing to do but to shut it. */
  readonly takes?: string;
  readonly canTake?: boolean;
  readonly leaves?: string;
  readonly class?: string;
  readonly onTake?: () => void;
  readonly onLeave: () => void;
  readonly children: ComponentChildren;
}

export function Dialog(props: DialogProps) {
  const { id, title, takes, canTake = true, leaves = 'Leave it', onTake, onLeave, children } = props;
  const box = useRef<HTMLDialogElement>(null);
  useLayoutEffect(() => {
    const before = document.activeElement;
    const dialog = box.current;
    if (dialog?.open === false) dialog.showModal();
    // Whoever shuts it goes on where they were.
    return () => {
      dialog?.close();
      if (before instanceof HTMLElement && before.isConnected) before.focus();
    };
  }, []);
  return (
    <dialog class={`dialog ${props.class ?? ''}`} ref={box} aria-labelledby={`${id}-title`} onClose={onLeave}>
      <h2 id={`${id}-title`}>{title}</h2>
      <form
        class="dialog-form"
        onSubmit={(event) => {
          event.preventDefault();
          onTake?.();
        }}
      >
        {children}
        <div class="dialog-acts">
          <button type="button" onClick={onLeave}>
            {takes === undefined ? 'Close' : leaves}
          </button>
          {takes === undefined ? null : (
            <button type="submit" class="primary" disabled={!canTake}>
              {takes}
            </button>
          )}
        </div>
      </form>
    </dialog>
  );
}
