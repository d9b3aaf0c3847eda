import type { Draft } from './draft.ts';
import { remove as forget, write as keep, read } from './storage.ts';
import type { Body } from './to-body.ts';

/**
 * What the phone keeps: the draft that is being filled in and what was not sent yet, for one client. Nothing that has
 * been sent stays here but its time. Local storage is written before the call returns, so a killed tab loses nothing.
 */
export type Unsent = {
  body: Body;
  savedAt: string;
  triedAt: string | null;
  problem: string | null;
  /** The phone has to be signed in again first; it is tried again by itself. Absent: no. */
  signedOut?: boolean | undefined;
  /** The consent to a new text comes first; it is tried again by itself. Absent: no. */
  needsConsent?: boolean | undefined;
};
export type LastSent = { id: string; at: string; date: string };

const CHANGED = 'plumbline-kept';

const draftKey = (clientId: string, slot: string) => `draft:${clientId}:${slot}`;
/** Health data stay on a phone only as long as they are needed: an unsent draft a week. */
const LONGEST_DRAFT_MS = 7 * 86_400_000;
const unsentKey = (clientId: string) => `unsent:${clientId}`;
const sentKey = (clientId: string) => `sent:${clientId}`;

/** `slot`: one draft for training, one for a day without, one for each check-in under correction. */
export function loadDraft(clientId: string, slot: string): Draft | null {
  const draft = read<Draft>(draftKey(clientId, slot));
  const isOurs = draft?.version === 1 && Date.now() - Date.parse(draft.startedAt) < LONGEST_DRAFT_MS;
  return isOurs ? draft : null;
}
export function saveDraft(clientId: string, slot: string, draft: Draft): boolean {
  return write(draftKey(clientId, slot), draft);
}
export function clearDraft(clientId: string, slot: string): void {
  remove(draftKey(clientId, slot));
}

export function loadUnsent(clientId: string): Unsent[] {
  return read<Unsent[]>(unsentKey(clientId)) ?? [];
}
export function addUnsent(clientId: string, body: Body, now: Date): boolean {
  const others = loadUnsent(clientId).filter((one) => one.body.id !== body.id);
  const added: Unsent = { body, savedAt: now.toISOString(), triedAt: null, problem: null };
  return write(unsentKey(clientId), [...others, added]);
}
export function changeUnsent(clientId: string, id: string, change: Partial<Unsent>): void {
  write(
    unsentKey(clientId),
    loadUnsent(clientId).map((one) => (one.body.id === id ? { ...one, ...change } : one)),
  );
}
export function dropUnsent(clientId: string, id: string): void {
  const left = loadUnsent(clientId).filter((one) => one.body.id !== id);
  if (left.length > 0) write(unsentKey(clientId), left);
  else remove(unsentKey(clientId));
}

export function loadLastSent(clientId: string): LastSent | null {
  return read<LastSent>(sentKey(clientId));
}
export function saveLastSent(clientId: string, sent: LastSent): void {
  write(sentKey(clientId), sent);
}

/** Calls back whenever this or another tab changes what is kept. */
export function onKeptChange(listener: () => void): () => void {
  window.addEventListener(CHANGED, listener);
  window.addEventListener('storage', listener);
  return () => {
    window.removeEventListener(CHANGED, listener);
    window.removeEventListener('storage', listener);
  };
}

/** Says so to this tab; the browser tells the others. */
function write(key: string, value: unknown): boolean {
  const isKept = keep(key, value);
  if (isKept) window.dispatchEvent(new Event(CHANGED));
  return isKept;
}
function remove(key: string): void {
  forget(key);
  window.dispatchEvent(new Event(CHANGED));
}
