'use client';
import { useState } from 'react';

export type ActSent = { actId: string; line: string; folds: boolean };
export type ActState = {
  busy: boolean;
  /** What went wrong, in words; null when nothing did. */
  problem: string | null;
  send: (body: Record<string, unknown>) => Promise<ActSent | undefined>;
};

/** Sends an act of the board. Says what happened when it could not be done; nothing is lost on the page. */
export function useAct(): ActState {
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  async function send(body: Record<string, unknown>): Promise<ActSent | undefined> {
    setBusy(true);
    setProblem(null);
    try {
      const answer = await fetch('/api/board/acts', {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify(body),
      });
      const said = await answer.json();
      if (answer.ok) return said;
      setProblem(problemOf(said));
    } catch {
      setProblem('No connection: nothing was changed. What you wrote is still here; try again.');
    } finally {
      setBusy(false);
    }
    return undefined;
  }
  return { busy, problem, send };
}

type Refusal = { error?: { message?: string; fields?: Record<string, string> } };

function problemOf({ error }: Refusal): string {
  const [first] = Object.values(error?.fields ?? {});
  return first ?? error?.message ?? 'This could not be done. Nothing was changed.';
}
