'use client';
import { useState } from 'react';
import type { ShownDraft } from './step-draft-form.tsx';

/** Fetches the draft of a row's step; null: there is none. Undefined with a problem said: it could not be had. */
export function useStepDraft(clientId: string) {
  const [draft, setDraft] = useState<ShownDraft | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  async function load(): Promise<ShownDraft | null | undefined> {
    setProblem(null);
    try {
      const answer = await fetch(`/api/clients/${clientId}/step-draft`);
      const said = await answer.json();
      if (!answer.ok) throw new Error(said?.error?.message);
      setDraft(said.draft);
      return said.draft;
    } catch (cause) {
      const words = cause instanceof Error && cause.message !== '' ? cause.message : '';
      setProblem(words || 'No connection: nothing was changed. Try again.');
      return undefined;
    }
  }
  return { draft, problem, load };
}
