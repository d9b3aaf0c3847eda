'use client';
import { useSyncExternalStore } from 'react';

/** An act done on this page, on one row or on many; kept here so that it can be undone after its row is gone. */
export type KeptAct = {
  actId: string;
  /** Whom it was on, in words: a name, or "12 clients". */
  whom: string;
  line: string;
  folds: boolean;
  /** What each row says of it. */
  lines: ReadonlyMap<string, string>;
  questionId?: string | undefined;
  /** The board was read again since: its rows say by themselves how they stand. */
  settled?: boolean;
};

type State = { acts: readonly KeptAct[]; chosen: ReadonlySet<string> };
const NOTHING: State = { acts: [], chosen: new Set() };
let state = NOTHING;
const listeners = new Set<() => void>();

function set(next: State): void {
  state = next;
  for (const listener of listeners) listener();
}
function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

export function keepAct(act: KeptAct): void {
  const chosen = new Set([...state.chosen].filter((id) => !(act.folds && act.lines.has(id))));
  set({ acts: [...state.acts, act], chosen });
}
export function dropAct(actId: string): void {
  set({ ...state, acts: state.acts.filter((act) => act.actId !== actId) });
}
export function choose(clientId: string, on: boolean): void {
  const chosen = new Set(state.chosen);
  if (on) chosen.add(clientId);
  else chosen.delete(clientId);
  set({ ...state, chosen });
}
export function chooseNobody(): void {
  set({ ...state, chosen: new Set() });
}
/** Clients that were acted on since the board was read: what became of their rows is no news. */
export function actedOn(): ReadonlySet<string> {
  return new Set(state.acts.filter(isFresh).flatMap((act) => [...act.lines.keys()]));
}
let readAs = '';
/** The board stands here as read now. The same prints again are the same reading, gone back to. */
export function settleActs(prints: string): void {
  if (readAs !== '' && readAs !== prints)
    set({ ...state, acts: state.acts.map((act) => ({ ...act, settled: true })) });
  readAs = prints;
}
function isFresh(act: KeptAct): boolean {
  return act.settled !== true;
}

export function useActs(): readonly KeptAct[] {
  return useSyncExternalStore(
    subscribe,
    () => state.acts,
    () => NOTHING.acts,
  );
}
export function useActOn(clientId: string): KeptAct | undefined {
  const find = () => state.acts.findLast((act) => isFresh(act) && act.lines.has(clientId));
  return useSyncExternalStore(subscribe, find, () => undefined);
}
export function useChosen(): ReadonlySet<string> {
  return useSyncExternalStore(
    subscribe,
    () => state.chosen,
    () => NOTHING.chosen,
  );
}
export function useIsChosen(clientId: string): boolean {
  return useSyncExternalStore(
    subscribe,
    () => state.chosen.has(clientId),
    () => false,
  );
}
