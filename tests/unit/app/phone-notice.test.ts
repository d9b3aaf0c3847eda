import { expect, it } from 'vitest';
import { phoneWorker } from '#app/sw.js/worker.ts';

type Listener = (event: unknown) => void;

/** The worker as its own text runs it, with a scope that keeps what it does. */
function startWorker() {
  const listeners = new Map<string, Listener>();
  const shown: unknown[] = [];
  const opened: string[] = [];
  const scope = {
    location: { origin: 'https://low-wall.example' },
    addEventListener: (kind: string, listener: Listener) => listeners.set(kind, listener),
    registration: {
      showNotification: async (title: string, options: object) => shown.push({ title, ...options }),
    },
    clients: { openWindow: async (address: string) => opened.push(address) },
  };
  const start = new Function('scope', `(${phoneWorker.toString()})(scope, 'build')`);
  start(scope);
  const tell = (kind: string, event: object) => {
    let isWaitedFor = false;
    listeners.get(kind)?.({ ...event, waitUntil: () => (isWaitedFor = true) });
    return isWaitedFor;
  };
  return { tell, shown, opened };
}

it('shows what was pushed, once a tag', () => {
  const { tell, shown } = startWorker();
  const told = { title: 'An answer from Ines', text: 'On your Answers page.', tag: 'a1' };
  expect(tell('push', { data: { json: () => told } })).toBe(true);
  expect(shown).toEqual([{ title: told.title, body: told.text, tag: 'a1', icon: '/icon1.png' }]);
});

it.each([
  ['no data', null],
  ['no JSON', { json: () => JSON.parse('<') }],
  ['null', { json: () => null }],
  ['other fields', { json: () => ({ title: 7 }) }],
])('shows a push with %s too: browsers stop pushes that show nothing', (_, data) => {
  const { tell, shown } = startWorker();
  tell('push', { data });
  expect(shown).toMatchObject([{ title: 'From your coach', body: 'On your Answers page.' }]);
});

it('opens the answers when the notice is tapped, and closes it', () => {
  const { tell, opened } = startWorker();
  let isClosed = false;
  expect(tell('notificationclick', { notification: { close: () => (isClosed = true) } })).toBe(true);
  expect({ isClosed, opened }).toEqual({ isClosed: true, opened: ['/answers'] });
});
