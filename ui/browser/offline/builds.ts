// The page without a network, and new builds of it: a worker of its own keeps all parts of this build. A new build waits until
// the person takes it, and is never loaded over changes that are not kept.

import { settleKeeping } from '../keeping/showing.ts';
import { tell } from '../store/notices.ts';

/** Begins once the page stands. Where the browser has no such workers, or refuses them, the page works with a network only. */
export function startOffline(): void {
  const serviceWorker = workers();
  if (!import.meta.env.BUILT || serviceWorker === undefined) return;
  const before = serviceWorker.controller;
  let taking = false;
  const take = async (waiting: ServiceWorker): Promise<void> => {
    if (!(await settleKeeping())) {
      tell('What you changed is not kept yet. Save it to a file first, then take the new Dibble.', 'refusal', {
        label: 'Take the new Dibble',
        run: () => void take(waiting),
      });
      return;
    }
    taking = true;
    waiting.postMessage('take over');
  };
  serviceWorker.addEventListener('controllerchange', () => {
    if (taking) location.reload();
    else if (before !== null) offerReload();
  });
  serviceWorker.register('./service-worker.js', { updateViaCache: 'none' }).then(
    (registration) => {
      offer(registration, take);
      registration.addEventListener('updatefound', () => {
        const fresh = registration.installing;
        fresh?.addEventListener('statechange', () => offer(registration, take));
      });
      // A page that stays open for days looks for a new build when a person comes back to it.
      document.addEventListener('visibilitychange', () => {
        if (document.visibilityState === 'visible') void registration.update().catch(() => undefined);
      });
    },
    () => undefined,
  );
}

function workers(): ServiceWorkerContainer | undefined {
  try {
    return 'serviceWorker' in navigator ? navigator.serviceWorker : undefined;
  } catch {
    // Where the browser refuses them, merely naming them may throw.
    return undefined;
  }
}

/** Of the first build there is none before it, and nothing to take. */
function offer({ waiting, active }: ServiceWorkerRegistration, take: (waiting: ServiceWorker) => Promise<void>): void {
  if (waiting === null || active === null) return;
  tell('There is a new Dibble. This one works on until you take it.', 'refusal', {
    label: 'Take the new Dibble',
    run: () => void take(waiting),
  });
}

/** Another tab took the new build. */
function offerReload(): void {
  tell('A new Dibble was taken in another tab. This one works on as it is.', 'refusal', {
    label: 'Load this page again',
    run: () => {
      void settleKeeping().then((kept) => {
        if (kept) location.reload();
        else tell('What you changed is not kept yet: save it to a file first.', 'refusal');
      });
    },
  });
}
