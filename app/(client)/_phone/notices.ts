import { postJson } from './post-json.ts';

export type PhoneNotices = 'impossible' | 'refused' | 'off' | 'on';

/** Whether this browser tells of answers. `endpoints`: what the server holds of this client. */
export async function phoneNotices(endpoints: readonly string[]): Promise<PhoneNotices> {
  if (!('serviceWorker' in navigator) || !('PushManager' in window) || !('Notification' in window))
    return 'impossible';
  const registration = await navigator.serviceWorker.getRegistration();
  if (!registration) return 'impossible';
  if (Notification.permission === 'denied') return 'refused';
  const held = await registration.pushManager.getSubscription();
  return held && endpoints.includes(held.endpoint) ? 'on' : 'off';
}

/** Asks the browser, then tells the server. Null when it is on, else what happened and what to do. */
export async function turnOn(pushKey: string): Promise<string | null> {
  const permission = await Notification.requestPermission();
  if (permission !== 'granted')
    return 'Off: the browser was not allowed to show notices. Allow it in its settings for this page, then tap again.';
  try {
    const { pushManager } = await navigator.serviceWorker.ready;
    // One made with another key of the server takes no notices from this one.
    await (await pushManager.getSubscription())?.unsubscribe();
    const made = await pushManager.subscribe({ userVisibleOnly: true, applicationServerKey: pushKey });
    const { endpoint, keys } = made.toJSON();
    const failed = await postJson('/api/notices/push', { endpoint, keys });
    if (failed) await made.unsubscribe();
    return failed && 'Off: this was not kept. Try again when there is signal.';
  } catch {
    return 'Off: the browser could not reach its own notice service. Try again later, with signal.';
  }
}

/** Tells the server, then the browser. Null when it is off, else what happened. */
export async function turnOff(): Promise<string | null> {
  const registration = await navigator.serviceWorker.getRegistration();
  const held = await registration?.pushManager.getSubscription();
  if (!held) return null;
  const failed = await postJson('/api/notices/push/off', { endpoint: held.endpoint });
  // Without signal the browser alone ends it: its service refuses the next notice, and the server then forgets it.
  const ended = await held.unsubscribe().catch(() => false);
  return failed && !ended ? 'Still on: no connection. Try again when there is signal.' : null;
}

/** Before signing out: the next person on this phone is not told of somebody else's answers. */
export async function leavePhone(): Promise<void> {
  if (!('serviceWorker' in navigator) || !('PushManager' in window)) return;
  await turnOff().catch(() => undefined);
}
