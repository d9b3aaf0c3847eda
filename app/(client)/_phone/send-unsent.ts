import { changeUnsent, dropUnsent, loadUnsent, saveLastSent, type Unsent } from './kept.ts';

const PATIENCE_MS = 20_000;
/** Answers that another try would not change: the check-in stays on the phone with the reason. */
const FINAL = [400, 403, 404, 409, 413];

type Answer = 'sent' | 'kept' | 'stop';

/** Sends what is kept, oldest first, by whichever tab holds the lock. Stops at the first sign of no connection. */
export async function sendUnsent(clientId: string): Promise<void> {
  const send = async () => {
    for (const one of loadUnsent(clientId)) {
      if (one.problem !== null) continue;
      if ((await sendOne(clientId, one)) === 'stop') return;
    }
  };
  if (!('locks' in navigator)) return send(); // the server keeps one of two equal ids
  await navigator.locks.request(`plumbline-send-${clientId}`, send);
}

async function sendOne(clientId: string, one: Unsent): Promise<Answer> {
  const { id, date } = one.body;
  let response: Response;
  try {
    response = await fetch('/api/check-ins', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(one.body),
      signal: AbortSignal.timeout(PATIENCE_MS),
    });
    if (response.ok) await response.text();
  } catch {
    changeUnsent(clientId, id, {
      triedAt: new Date().toISOString(),
      signedOut: false,
      needsConsent: false,
    });
    return 'stop';
  }
  if (response.ok) {
    saveLastSent(clientId, { id, at: new Date().toISOString(), date });
    dropUnsent(clientId, id);
    return 'sent';
  }
  const problem = FINAL.includes(response.status) ? await reasonOf(response) : null;
  const signedOut = response.status === 401;
  const needsConsent = response.status === 428;
  changeUnsent(clientId, id, { triedAt: new Date().toISOString(), problem, signedOut, needsConsent });
  return problem === null ? 'stop' : 'kept';
}

async function reasonOf(response: Response): Promise<string> {
  const answer = (await response.json().catch(() => null)) as { error?: { message?: string } } | null;
  return answer?.error?.message ?? `the server answered ${response.status}`;
}
