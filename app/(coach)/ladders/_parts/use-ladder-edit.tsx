'use client';

import { useRouter } from 'next/navigation';
import { type ReactNode, useMemo, useState, useTransition } from 'react';
import type { LadderEdited } from '#lib/usecases/edit-ladder.ts';
import { refusedPlaces } from '#lib/views/ladders/refused-places.ts';
import { postJson } from '../../clients/_parts/post-json.ts';
import { Refusal } from './refusal.tsx';
import { TouchDialog } from './touch-dialog.tsx';

type Asked = Extract<LadderEdited, { saved: false }>;
type Refused = { message: string; fields: Record<string, string> };
type LadderEditing = {
  send: (edit: object) => void;
  busy: boolean;
  error: (path: string) => string | undefined;
  /** What was refused, and the question whom an edit touches: to be shown above the form. */
  told: ReactNode;
};

/** Sends edits of one ladder: asks first when clients are touched, and says when somebody else was faster. */
export function useLadderEdit(
  { ladderId, base }: { ladderId: string; base: string },
  onSaved: () => void,
): LadderEditing {
  const router = useRouter();
  const [busy, setBusy] = useState(false);
  const [loading, startLoading] = useTransition();
  const [sent, setSent] = useState<{ edit: object; base: string } | null>(null);
  const [refused, setRefused] = useState<Refused | null>(null);
  const [asked, setAsked] = useState<Asked | null>(null);
  const [said, setSaid] = useState('');

  async function post(edit: object, on: string, agreed: string | null) {
    setBusy(true);
    setSent({ edit, base: on });
    setSaid('');
    const answer = await postJson(`/api/ladders/${ladderId}`, { base: on, agreed, edit });
    setBusy(false);
    setAsked(null);
    if (!answer.ok) {
      setRefused(answer);
      return;
    }
    setRefused(null);
    const edited = answer.value as LadderEdited;
    if (!edited.saved) return setAsked(edited);
    setSaid('Saved');
    // Busy until the ladder is here as it is now: an edit of the old one would be refused.
    startLoading(() => {
      onSaved();
      router.refresh();
    });
  }

  const newer = refused?.fields.base;
  const places = useMemo(() => (newer ? [] : refusedPlaces(refused?.fields ?? {})), [newer, refused]);
  return {
    send: (edit) => void post(edit, base, null),
    busy: busy || loading,
    error: (path) => refused?.fields[`edit.${path}`],
    told: (
      <>
        <p role="status" className="heard-only">
          {said}
        </p>
        {refused ? (
          <Refusal
            message={refused.message}
            places={places}
            seeHref={newer ? `/ladders/${ladderId}` : undefined}
            onOver={newer && sent ? () => void post(sent.edit, newer, null) : undefined}
          />
        ) : null}
        {asked && sent ? (
          <TouchDialog
            touches={asked.touches}
            busy={busy}
            onAgree={() => void post(sent.edit, sent.base, asked.agree)}
            onLeave={() => setAsked(null)}
          />
        ) : null}
      </>
    ),
  };
}
