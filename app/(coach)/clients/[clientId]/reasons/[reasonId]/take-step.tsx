'use client';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { DraftDoes, type ShownDraft, StepDraftForm } from '../../../../_board/step-draft-form.tsx';
import { type ActSent, useAct } from '../../../../_board/use-act.ts';

/** The draft of the step, taken for this reason alone; with its undo. */
export function TakeStep({ clientId, name, draft }: { clientId: string; name: string; draft: ShownDraft }) {
  const router = useRouter();
  const [done, setDone] = useState<ActSent | null>(null);
  const { busy, problem, send, undo: takeBack } = useAct();
  async function act(body: Record<string, unknown>) {
    const sent = await send({ clientId, reasonId: draft.reasonId, ...body }, name);
    if (sent) setDone(sent);
  }
  async function undo() {
    if (!done || !(await takeBack(done.actId))) return;
    setDone(null);
    router.refresh();
  }
  return (
    <div>
      {done ? (
        <p>
          {done.line}{' '}
          <button type="button" onClick={undo} disabled={busy}>
            Undo
          </button>
        </p>
      ) : (
        <>
          <DraftDoes draft={draft} />
          <StepDraftForm clientId={clientId} name={name} draft={draft} busy={busy} act={act} />
        </>
      )}
      <p role="status">{problem}</p>
    </div>
  );
}
