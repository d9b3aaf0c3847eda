'use client';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { postJson } from '../../clients/_parts/post-json.ts';

/** Where an act is taken back, and with what. */
export type Way = { address: string; body: unknown };
type Told = { line: string; back?: Way | null };
type State = { busy: boolean; line: string; fields: Record<string, string>; back: Way | null };

const QUIET: State = { busy: false, line: '', fields: {}, back: null };

/** Sends an act of the team and keeps its way back for as long as the page stands. What is refused changes nothing. */
export function useTeamAct() {
  const router = useRouter();
  const [state, setState] = useState(QUIET);

  async function act(address: string, body: unknown, told: (value: unknown) => Told): Promise<boolean> {
    setState({ ...QUIET, busy: true });
    const answer = await postJson(address, body);
    if (!answer.ok) {
      setState({ ...QUIET, line: answer.message, fields: answer.fields });
      return false;
    }
    const { line, back = null } = told(answer.value);
    setState({ ...QUIET, line, back });
    router.refresh();
    return true;
  }
  async function undo(): Promise<void> {
    const { back } = state;
    if (!back) return;
    setState({ ...state, busy: true });
    const answer = await postJson(back.address, back.body);
    setState(answer.ok ? { ...QUIET, line: 'Taken back.' } : { ...QUIET, line: answer.message, back });
    if (answer.ok) router.refresh();
  }
  return { ...state, act, undo };
}
export type TeamAct = ReturnType<typeof useTeamAct>;
