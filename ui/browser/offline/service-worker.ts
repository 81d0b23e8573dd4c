// What stands between the page and the network: keeps every part of one build, so that the page works without a network from
// its first load on, and hands out that build until the person takes a new one. Built into one file of its own
// (ui/offline-parts.ts), which puts the build's name and its parts in place of the two words below; imports nothing.

// A module, so that `self` may be what it is in a service worker.
export {};

/** The build and its parts, addresses within the page's folder. */
declare const BUILD: string;
declare const PARTS: readonly string[];

// What the language's library for pages does not list of a worker like this.
interface Waiting extends Event {
  waitUntil(work: Promise<unknown>): void;
}
interface Fetching extends Waiting {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}
interface Scope {
  readonly registration: { readonly scope: string };
  readonly clients: { claim(): Promise<void> };
  skipWaiting(): Promise<void>;
  addEventListener(type: 'install' | 'activate', hear: (event: Waiting) => void): void;
  addEventListener(type: 'fetch', hear: (event: Fetching) => void): void;
  addEventListener(type: 'message', hear: (event: MessageEvent<unknown>) => void): void;
}
declare const self: Scope;
const scope = self;

/** Pages under other addresses of the same origin have shelves of their own. */
const OURS = `dibble build ${scope.registration.scope} `;
const SHELF = OURS + BUILD;

scope.addEventListener('install', (event) => {
  event.waitUntil(keepAll());
});

/** All parts or none: a build that is only half there is never handed out. */
async function keepAll(): Promise<void> {
  const shelf = await caches.open(SHELF);
  await shelf.addAll(PARTS.map((part) => new Request(addressOf(part), { cache: 'no-cache' })));
}

scope.addEventListener('activate', (event) => {
  event.waitUntil(takeOver());
});

/** Tabs of the build before go on with its parts until they are loaded again: the latest shelf before this one stays. */
async function takeOver(): Promise<void> {
  const shelves = (await caches.keys()).filter((name) => name.startsWith(OURS) && name !== SHELF);
  await Promise.all(shelves.slice(0, -1).map((name) => caches.delete(name)));
  await scope.clients.claim();
}

scope.addEventListener('message', ({ data }) => {
  // The person takes the new build.
  if (data === 'take over') void scope.skipWaiting();
});

scope.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method === 'GET' && request.url.startsWith(scope.registration.scope)) {
    event.respondWith(answer(request));
  }
});

async function answer(request: Request): Promise<Response> {
  const bare = new URL(request.url);
  bare.search = '';
  bare.hash = '';
  const wanted = request.mode === 'navigate' ? addressOf('index.html') : bare.href;
  const own = await (await caches.open(SHELF)).match(wanted);
  // Parts carry their content's mark in their names, so that one of an earlier build is never taken for one of this.
  const kept = own ?? (await caches.match(wanted));
  return kept ?? fetch(request);
}

function addressOf(part: string): string {
  return new URL(part, scope.registration.scope).href;
}
