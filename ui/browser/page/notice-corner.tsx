// Shows the page's notices in a corner and holds the live region that screen readers follow. The page mounts it once.

import { announced, dismiss, notices } from '../store/notices.ts';

export function NoticeCorner() {
  return (
    <>
      {notices.value.length === 0 ? null : (
        <section class="messages" aria-label="Messages">
          {notices.value.map(({ id, text, tone, acts }) => (
            <div key={id} class={`message tone-${tone}`}>
              <p>{text}</p>
              {acts.map((act) => (
                <button
                  key={act.label}
                  type="button"
                  class="quiet"
                  onClick={() => {
                    dismiss(id);
                    act.run();
                  }}
                >
                  {act.label}
                </button>
              ))}
              <button type="button" class="quiet" onClick={() => dismiss(id)}>
                Close
              </button>
            </div>
          ))}
        </section>
      )}
      <p class="spoken" role="status" aria-live="polite">
        {announced.value}
      </p>
    </>
  );
}
