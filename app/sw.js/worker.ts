/** The little of a service worker's own names that is used here: TypeScript's library of them excludes that of pages. */
type Lifetime = Event & { waitUntil: (work: Promise<unknown>) => void };
type Asked = Event & { request: Request; respondWith: (answer: Promise<Response>) => void };
type Pushed = Lifetime & { data: { json: () => unknown } | null };
type Clicked = Lifetime & { notification: Notification };
type WorkerScope = {
  location: Location;
  skipWaiting: () => Promise<void>;
  clients: {
    claim: () => Promise<void>;
    openWindow: (address: string) => Promise<unknown>;
  };
  registration: { showNotification: (title: string, options: NotificationOptions) => Promise<void> };
  addEventListener(kind: 'install' | 'activate', listener: (event: Lifetime) => void): void;
  addEventListener(kind: 'push', listener: (event: Pushed) => void): void;
  addEventListener(kind: 'notificationclick', listener: (event: Clicked) => void): void;
  addEventListener(kind: 'fetch', listener: (event: Asked) => void): void;
};

/**
 * What opens the check-in without signal and shows notices of answers. Runs in the phone's worker: it is sent as its own text, so it may use nothing
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

  /** Browsers want every push shown, so one that cannot be read is shown too. The tag: a repeat shows once. */
  const show = (event: Pushed) => {
    let told: { title?: unknown; text?: unknown; tag?: unknown } = {};
    try {
      told = Object(event.data?.json());
    } catch {
      // not ours, or cut short
    }
    const title = typeof told.title === 'string' ? told.title : 'From your coach';
    const body = typeof told.text === 'string' ? told.text : 'On your Answers page.';
    const tag = typeof told.tag === 'string' ? told.tag : 'answer';
    return scope.registration.showNotification(title, { body, tag, icon: '/icon1.png' });
  };

  scope.addEventListener('push', (event) => event.waitUntil(show(event)));
  scope.addEventListener('notificationclick', (event) => {
    event.notification.close();
    // Never in a page that is open: a check-in may be half filled in there.
    event.waitUntil(scope.clients.openWindow('/answers'));
  });
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
