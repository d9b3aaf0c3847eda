/** The little of a service worker's own names that is used here: TypeScript's library of them excludes that of pages. */
type Lifetime = Event & { waitUntil: (work: Promise<unknown>) => void };
type Asked = Event & { request: Request; respondWith: (answer: Promise<Response>) => void };
type WorkerScope = {
  location: Location;
  skipWaiting: () => Promise<void>;
  clients: { claim: () => Promise<void> };
  addEventListener(kind: 'install' | 'activate', listener: (event: Lifetime) => void): void;
  addEventListener(kind: 'fetch', listener: (event: Asked) => void): void;
};

/**
 * What opens the check-in without signal. Runs in the phone's worker: it is sent as its own text, so it may use nothing
 * from outside but its two arguments. Keeps the built files and one page that holds nothing of anybody; never a page
 * with somebody's data.
 */
export function phoneWorker(scope: WorkerScope, build: string): void {
  const shell = '/without-signal';
  const name = `plumbline-${build}`;
  /** Pages that the one page can stand in for. */
  const standsFor = ['/today', '/check-in', '/rest-day'];
  /** How long a page may take before the kept one is shown: a bar of signal that leads nowhere is no signal. */
  const patience = 8_000;

  const keepShell = async () => {
    const cache = await caches.open(name);
    const answer = await fetch(shell, { cache: 'reload', credentials: 'omit' });
    if (!answer.ok) throw new Error(`the page without signal answered ${answer.status}`);
    const html = await answer.clone().text();
    const files = new Set(html.match(/\/_next\/static\/[^"'\\ )<>]+/g) ?? []);
    await Promise.all([...files].map((file) => cache.add(file)));
    await cache.put(shell, answer);
  };

  /** This build's and the one before: an open page may still ask for files of its own build. */
  const dropOld = async () => {
    const ours = (await caches.keys()).filter((key) => key.startsWith('plumbline-') && key !== name);
    await Promise.all(ours.slice(0, -1).map((key) => caches.delete(key)));
  };

  const builtFile = async (request: Request) => {
    const kept = await caches.match(request);
    if (kept) return kept;
    const answer = await fetch(request);
    if (answer.ok) {
      const cache = await caches.open(name);
      await cache.put(request, answer.clone());
    }
    return answer;
  };

  const page = async (request: Request) => {
    const kept = await caches.match(shell);
    if (!kept) return fetch(request);
    const late = new Promise<'late'>((resolve) => setTimeout(() => resolve('late'), patience));
    const answer = await Promise.race([fetch(request).catch(() => 'failed' as const), late]);
    // Between two versions of the server stands an answer that is no page of ours.
    const isGone = typeof answer === 'string' || [502, 503, 504].includes(answer.status);
    return isGone ? kept : answer;
  };

  scope.addEventListener('install', (event) => {
    event.waitUntil(keepShell().then(() => scope.skipWaiting()));
  });
  scope.addEventListener('activate', (event) => {
    event.waitUntil(dropOld().then(() => scope.clients.claim()));
  });
  scope.addEventListener('fetch', (event) => {
    const { request } = event;
    const { origin, pathname } = new URL(request.url);
    if (request.method !== 'GET' || origin !== scope.location.origin) return;
    if (pathname.startsWith('/_next/static/')) event.respondWith(builtFile(request));
    else if (request.mode === 'navigate' && standsFor.includes(pathname)) event.respondWith(page(request));
  });
}
