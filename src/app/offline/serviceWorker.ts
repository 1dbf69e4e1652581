// The service worker: keeps every file of one version of the page, and answers from what is kept, so that nothing waits for
// a network. `FILES` and `VERSION` are put in when the page is built (scripts/offline.mjs). A new version is fetched whole,
// each file held to its hash, and waits until the page says that it may take over: never by itself, never in mid-exit.

declare const VERSION: string;
/** Address and content hash (as in an `integrity` attribute) of every file of this version. */
declare const FILES: readonly (readonly [address: string, hash: string])[];

/** What the page's types do not know of a service worker's own world. */
interface Lasting extends Event {
  readonly waitUntil: (work: Promise<unknown>) => void;
}
interface Fetching extends Lasting {
  readonly request: Request;
  readonly respondWith: (answer: Promise<Response>) => void;
}
interface Worker extends EventTarget {
  readonly skipWaiting: () => Promise<void>;
  readonly clients: { readonly claim: () => Promise<void> };
}

const worker = globalThis as unknown as Worker;

const PREFIX = 'doffline-page-';
const OWN = PREFIX + VERSION;
const PAGE = '/index.html';

/** All files or none: a file that is not the one this version was built with makes the whole attempt fail. */
async function keepAll(): Promise<void> {
  const cache = await caches.open(OWN);
  await cache.addAll(
    FILES.map(([address, integrity]) => new Request(address, { integrity, cache: 'no-cache' })),
  );
}

/**
 * Keeps one older version beside this one: a page that is still open from before may yet ask for its own files, whose names
 * hold their hashes. Newest last, by the order in which they were made.
 */
async function dropOld(): Promise<void> {
  const older = (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== OWN);
  await Promise.all(older.slice(0, -1).map((name) => caches.delete(name)));
}

/** A place inside the page ('/write') and not a file ('/a.js'), as the server sees it too. */
const isPlace = (path: string): boolean => !path.slice(path.lastIndexOf('/') + 1).includes('.');

async function kept(request: Request, path: string): Promise<Response> {
  const cache = await caches.open(OWN);
  const page = path === '/' || (request.mode === 'navigate' && isPlace(path));
  const found = (await cache.match(page ? PAGE : path)) ?? (await caches.match(path));
  return found ?? fetch(request);
}

/** The server's own: never kept, never answered for. */
const isServers = (path: string): boolean => /^\/(api|health|metrics|address)(\/|$)/.test(path);

worker.addEventListener('install', (event) => (event as Lasting).waitUntil(keepAll()));

worker.addEventListener('activate', (event) =>
  (event as Lasting).waitUntil(dropOld().then(async () => worker.clients.claim())),
);

worker.addEventListener('fetch', (event) => {
  const fetching = event as Fetching;
  const { request } = fetching;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== 'GET' || origin !== location.origin || isServers(pathname)) return;
  fetching.respondWith(kept(request, pathname));
});

worker.addEventListener('message', (event) => {
  if ((event as MessageEvent).data === 'take-over') worker.skipWaiting().catch(() => undefined);
});
