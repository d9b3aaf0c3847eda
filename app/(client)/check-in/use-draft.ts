'use client';
import { useCallback, useEffect, useState } from 'react';
import type { HistoryCheckIn } from '#lib/domain/history.ts';
import { groupOfRegion } from '#lib/domain/pain-groups.ts';
import type { MorningQuestion } from '#lib/views/phone-morning.ts';
import type { OtherDrill } from '#lib/views/phone-other-drills.ts';
import type { PhoneSession } from '#lib/views/phone-session.ts';
import { type Draft, draftOf, newDraft } from '../_phone/draft.ts';
import { extrasTaken, withExtras } from '../_phone/extras.ts';
import { addUnsent, clearDraft, dropUnsent, loadDraft, loadUnsent, saveDraft } from '../_phone/kept.ts';
import { phoneZone } from '../_phone/phone-zone.ts';
import { sendUnsent } from '../_phone/send-unsent.ts';
import { swapsTaken, withSwaps } from '../_phone/swaps.ts';
import { type Body, toBody } from '../_phone/to-body.ts';

export type ScreenProps = {
  clientId: string;
  kind: 'training' | 'rest';
  today: string;
  coach: string;
  planVersion: number | null;
  usualMinutes: number | null;
  sessions: PhoneSession[];
  /** What can be added though it was not planned; absent: nothing. */
  otherDrills?: readonly OtherDrill[] | undefined;
  /** Asked the morning after; absent or null: not today. */
  morning?: MorningQuestion | null | undefined;
  lastPain: { region: string; side: string; value: number; date: string }[];
  /** A check-in that has arrived and is to be corrected. */
  kept: HistoryCheckIn | null;
  /** One that could not be sent and is to be changed. */
  unsentId: string | null;
};

export type Change = (patch: Partial<Draft>) => void;
type Filling = {
  draft: Draft | null;
  sent: Body | null;
  /** False when this browser keeps nothing: said on the screen. */
  isKept: boolean;
  change: Change;
  send: (patch?: Partial<Draft>) => void;
  correct: () => void;
};

const freshId = () => crypto.randomUUID();

/** The check-in that is being filled in: taken up where it was left, saved on the phone at every change. */
export function useDraft(props: ScreenProps): Filling {
  const { clientId, sessions } = props;
  const slot = props.kept ? `correct-${props.kept.id}` : (props.unsentId ?? props.kind);
  const [draft, setDraft] = useState<Draft | null>(null);
  const [sent, setSent] = useState<Body | null>(null);
  const [isKept, setKept] = useState(true);

  // biome-ignore lint/correctness/useExhaustiveDependencies: once, when the phone's storage can be read
  useEffect(() => setDraft(loadDraft(clientId, slot) ?? begin(props)), []);

  const change: Change = useCallback(
    (patch) =>
      setDraft((before) => {
        if (!before) return before;
        const after = { ...before, ...patch, savedAt: new Date().toISOString() };
        setKept(saveDraft(clientId, slot, after));
        return after;
      }),
    [clientId, slot],
  );

  const send = (patch: Partial<Draft> = {}) => {
    if (!draft || sent) return; // a second tap sends nothing
    const body = toBody({ ...draft, ...patch }, sessionOf(sessions, draft), new Date());
    setKept(addUnsent(clientId, body, new Date()));
    if (props.unsentId && props.unsentId !== body.id) dropUnsent(clientId, props.unsentId);
    clearDraft(clientId, slot);
    setSent(body);
    void sendUnsent(clientId);
  };

  const correct = () => {
    if (!sent) return;
    const again = draftOf(sent, { id: freshId(), groupOf: groupOfRegion, now: new Date() });
    const swaps = swapsTaken(plannedSession(sessions, again), sent.sets);
    setDraft({ ...again, swaps, extras: draft?.extras });
    setSent(null);
  };
  return { draft, sent, isKept, change, send, correct };
}

/** The session as it is trained: with the swaps that were taken and the drills that were added. */
export function sessionOf(sessions: PhoneSession[], draft: Draft): PhoneSession | null {
  const planned = plannedSession(sessions, draft);
  return withExtras(planned && withSwaps(planned, draft.swaps), draft);
}

/** The session as the plan and the client's limits say it. */
export function plannedSession(sessions: PhoneSession[], draft: Draft): PhoneSession | null {
  return sessions.find((session) => session.label === (draft.session ?? '')) ?? null;
}

function begin(props: ScreenProps): Draft {
  const now = new Date();
  const refused = loadUnsent(props.clientId).find((one) => one.body.id === props.unsentId);
  if (props.kept) return draftOf(props.kept, { id: freshId(), groupOf: groupOfRegion, now });
  if (refused) {
    const draft = draftOf(refused.body, { id: freshId(), groupOf: groupOfRegion, now });
    const swaps = swapsTaken(plannedSession(props.sessions, draft), refused.body.sets);
    const extras = extrasTaken(sessionOf(props.sessions, { ...draft, swaps }), draft, props.otherDrills);
    const { correctsId, question } = refused.body;
    return { ...draft, swaps, extras, correctsId, question: question ?? '' };
  }
  const { kind, today, planVersion, usualMinutes, sessions } = props;
  return newDraft({
    kind,
    date: today,
    zone: phoneZone(),
    planVersion,
    session: sessions[0] ?? null,
    usualMinutes,
    canAdd: (props.otherDrills?.length ?? 0) > 0,
    now,
    id: freshId(),
  });
}
