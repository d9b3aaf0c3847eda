'use client';
import Link from 'next/link';
import { useEffect, useRef, useState } from 'react';
import { clockWords } from '../_phone/clock-words.ts';
import type { Draft, Step } from '../_phone/draft.ts';
import { Back } from '../_phone/icons.tsx';
import { Under18 } from '../_phone/under18.ts';
import { aboutOf } from './about.ts';
import { DayChoice, WhichDay } from './day-choice.tsx';
import { SentScreen } from './sent-screen.tsx';
import { StepEffort } from './step-effort.tsx';
import { StepMorning } from './step-morning.tsx';
import { StepPain } from './step-pain.tsx';
import { StepScore } from './step-score.tsx';
import { StepSets } from './step-sets.tsx';
import { plannedSession, type ScreenProps, sessionOf, useDraft } from './use-draft.ts';

/** The check-in: one screen a step, saved on this phone at every change, sent at the end. */
export function CheckInScreen(props: ScreenProps & { under18?: boolean | undefined }) {
  return (
    <Under18 value={props.under18 === true}>
      <Filling {...props} />
    </Under18>
  );
}

function Filling(props: ScreenProps) {
  const { draft, sent, isKept, change, send, correct } = useDraft(props);
  const top = useRef<HTMLDivElement>(null);
  const place = draft ? `${draft.step} ${draft.placeAt}` : '';
  const shown = useRef(place);
  useEffect(() => {
    if (shown.current && shown.current !== place) top.current?.focus(); // the next screen begins at its top
    shown.current = place;
  }, [place]);

  const session = draft ? sessionOf(props.sessions, draft) : null;
  if (sent) {
    return (
      <SentScreen
        clientId={props.clientId}
        body={sent}
        sessions={session ? [session] : props.sessions}
        coach={props.coach}
        onCorrect={correct}
      />
    );
  }
  const planned = draft ? plannedSession(props.sessions, draft) : null;
  const others = props.otherDrills ?? [];
  const shared = draft && { draft, session, change, send, coach: props.coach };
  return (
    <div className="phone phone-plain">
      <header className="phone-head" ref={top} tabIndex={-1}>
        <BackAct
          draft={draft}
          hasSets={(session?.drills.length ?? 0) + others.length > 0}
          onBack={(patch) => change(patch)}
        />
        {draft ? <DayChoice draft={draft} today={props.today} change={change} /> : null}
        <span className="state" role="status">
          {stateInWords(draft, isKept)}
        </span>
      </header>
      {draft && aboutOf(window.location.search) === 'day' ? <WhichDay draft={draft} change={change} /> : null}
      {shared?.draft.step === 'sets' ? (
        <StepSets
          {...shared}
          planned={planned}
          sessions={props.sessions}
          planVersion={props.planVersion}
          otherDrills={others}
          isToday={draft?.date === props.today && draft.correctsId === null}
        />
      ) : null}
      {shared?.draft.step === 'effort' ? <StepEffort {...shared} /> : null}
      {shared?.draft.step === 'pain' ? <AskPain {...shared} morning={props.morning ?? null} /> : null}
      {shared?.draft.step === 'score' ? (
        <StepScore {...shared} lastPain={props.lastPain} today={props.today} />
      ) : null}
    </div>
  );
}

type AskProps = Omit<Parameters<typeof StepPain>[0], 'hurts'> & { morning: ScreenProps['morning'] };

/** The morning after asks about yesterday first; "it hurts today" goes straight to where. */
function AskPain({ morning, ...shared }: AskProps) {
  const [elsewhere, setElsewhere] = useState(false);
  const about = shared.draft.kind === 'rest' ? aboutOf(window.location.search) : 'day';
  if (about === 'morning' && morning && !elsewhere)
    return <StepMorning {...shared} morning={morning} onElsewhere={() => setElsewhere(true)} />;
  return <StepPain {...shared} hurts={about === 'pain' || elsewhere} />;
}

function stateInWords(draft: Draft | null, isKept: boolean): string {
  if (!isKept) return 'not saved: this browser keeps nothing';
  return draft?.savedAt ? `saved on this phone ${clockWords(draft.savedAt)}` : '';
}

type BackProps = { draft: Draft | null; hasSets: boolean; onBack: (patch: Partial<Draft>) => void };

function BackAct({ draft, hasSets, onBack }: BackProps) {
  const before = draft ? stepBefore(draft, hasSets) : null;
  if (!before) {
    return (
      <Link className="back" href="/today" aria-label="Back to Today" prefetch={false}>
        <Back />
      </Link>
    );
  }
  return (
    <button type="button" className="back" aria-label="Back" onClick={() => onBack(before)}>
      <Back />
    </button>
  );
}

function stepBefore(draft: Draft, hasSets: boolean): { step: Step; placeAt?: number } | null {
  if (draft.step === 'score')
    return draft.placeAt > 0 ? { step: 'score', placeAt: draft.placeAt - 1 } : { step: 'pain' };
  if (draft.step === 'pain') return draft.kind === 'rest' ? null : { step: 'effort' };
  if (draft.step === 'effort') return hasSets ? { step: 'sets' } : null;
  return null;
}
