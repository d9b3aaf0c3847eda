'use client';
import { useState } from 'react';
import { dropAct, keepAct } from './acts-store.ts';

export type ActSent = { actId: string; line: string; folds: boolean };
/** Of an act on several rows: what each says now, and who was left out. */
type ManySent = { actId: string; line: string; done: { clientId: string; line: string }[] };
export type ActState = {
  busy: boolean;
  /** What went wrong, in words; null when nothing did. */
  problem: string | null;
  send: (body: Record<string, unknown> & { clientId: string }, name: string) => Promise<ActSent | undefined>;
  sendMany: (body: Record<string, unknown>) => Promise<ManySent | undefined>;
  undo: (actId: string) => Promise<boolean>;
};

/** Sends an act of the board. Says what happened when it could not be done; nothing is lost on the page. */
export function useAct(): ActState {
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  async function post<Sent>(body: Record<string, unknown>): Promise<Sent | undefined> {
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
  return {
    busy,
    problem,
    async send(body, whom) {
      const sent = await post<ActSent>(body);
      if (!sent) return undefined;
      const questionId = body.act === 'answer' ? String(body.questionId) : undefined;
      keepAct({ ...sent, whom, lines: new Map([[body.clientId, sent.line]]), questionId });
      return sent;
    },
    async sendMany(body) {
      const sent = await post<ManySent>(body);
      if (!sent) return undefined;
      const lines = new Map(sent.done.map((one) => [one.clientId, one.line]));
      keepAct({ actId: sent.actId, whom: '', line: sent.line, folds: true, lines });
      return sent;
    },
    async undo(actId) {
      const undone = await post<object>({ act: 'undo', actId });
      if (undone) dropAct(actId);
      return undone !== undefined;
    },
  };
}

type Refusal = { error?: { message?: string; fields?: Record<string, string> } };

function problemOf({ error }: Refusal): string {
  const [first] = Object.values(error?.fields ?? {});
  return first ?? error?.message ?? 'This could not be done. Nothing was changed.';
}
