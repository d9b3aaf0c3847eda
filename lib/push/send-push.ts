import { lookup as resolve } from 'node:dns';
import { request as overHttp } from 'node:http';
import { request as overHttps } from 'node:https';
import type { LookupFunction } from 'node:net';
import webPush from 'web-push';
import { env } from '#lib/config/env.ts';
import { isPublicAddress, mayBePublicHost } from './public-host.ts';
import { vapidKeys } from './vapid-keys.ts';

/** How long the push service keeps a notice for a phone that is off; our own choice. */
const KEPT_SECONDS = 3 * 24 * 3600;
const PATIENCE_MS = 10_000;

export type PushTarget = { readonly endpoint: string; readonly p256dh: string; readonly auth: string };
export type Notice = { readonly title: string; readonly text: string; readonly tag: string };
/** `gone`: this target will never take a notice again. */
export type PushOutcome = { how: 'sent' } | { how: 'gone' } | { how: 'failed'; why: string };

/** Hands one notice to the push service of a phone. Never throws; the reason of a failure names no address. */
export async function sendPush(target: PushTarget, notice: Notice): Promise<PushOutcome> {
  const url = new URL(target.endpoint);
  if (!isLocalAllowed() && (url.protocol !== 'https:' || !mayBePublicHost(url.hostname)))
    return { how: 'gone' };
  let details: webPush.RequestDetails;
  try {
    details = webPush.generateRequestDetails(
      { endpoint: target.endpoint, keys: { p256dh: target.p256dh, auth: target.auth } },
      JSON.stringify(notice),
      {
        TTL: KEPT_SECONDS,
        urgency: 'normal',
        // A repeat takes the place of the same notice while it waits.
        topic: notice.tag.replaceAll('-', ''),
        vapidDetails: { subject: subject(), ...vapidKeys() },
      },
    );
  } catch {
    return { how: 'gone' }; // keys that nothing can be encrypted for
  }
  try {
    return outcome(await post(url, details));
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : 'no answer';
    return { how: 'failed', why: `the push service cannot be reached (${code})` };
  }
}

function outcome(status: number): PushOutcome {
  if (status >= 200 && status < 300) return { how: 'sent' };
  if (status === 404 || status === 410) return { how: 'gone' };
  return { how: 'failed', why: `the push service answered ${status}` };
}

/** Follows nothing: a redirect would lead past the look at the address. */
function post(url: URL, { headers, body }: webPush.RequestDetails): Promise<number> {
  return new Promise((done, fail) => {
    const send = url.protocol === 'https:' ? overHttps : overHttp;
    const signal = AbortSignal.timeout(PATIENCE_MS);
    const sent = send(
      url,
      { method: 'POST', headers, signal, lookup: publicLookup, agent: false },
      (answer) => {
        answer.destroy();
        done(answer.statusCode ?? 0);
      },
    );
    sent.on('error', fail);
    sent.end(body);
  });
}

/** Looks at the very addresses that are connected to: a name may lead elsewhere than a moment ago. */
const publicLookup: LookupFunction = (hostname, options, found) => {
  resolve(hostname, options, (error, address, family) => {
    const all = Array.isArray(address) ? address.map((each) => each.address) : [address];
    const isRefused = !error && !isLocalAllowed() && !all.every(isPublicAddress);
    const refusal = isRefused ? Object.assign(new Error('not public'), { code: 'EPRIVATE' }) : null;
    found(error ?? refusal, address, family);
  });
};

function isLocalAllowed(): boolean {
  return env().PLUMBLINE_PUSH_LOCAL === '1';
}

/** Where the push service's people find those of this server. */
function subject(): string {
  const origin = env().PLUMBLINE_ORIGIN;
  return origin.startsWith('https:') ? origin : `mailto:nobody@${new URL(origin).hostname}`;
}
