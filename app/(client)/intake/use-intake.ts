'use client';
import { useCallback, useEffect, useRef, useState } from 'react';
import type { Caution } from '#lib/domain/caution.ts';
import {
  EMPTY_PAGES,
  INTAKE_STEPS,
  type IntakeDraft,
  type IntakePages,
  type IntakeStep,
  mergeDrafts,
} from '#lib/domain/intake/draft.ts';
import { type IntakeNow, refusalsOf } from '#lib/domain/intake/read-intake.ts';
import { clockWords } from '../_phone/clock-words.ts';
import { forget, keep, loadKept } from './kept-intake.ts';
import { postDraft, postIntake } from './post-intake.ts';

export type Place = IntakeStep | 'all';
export type IntakeProps = {
  clientId: string;
  coach: string;
  year: number;
  draft: IntakeDraft;
  skills: string[];
  guardianNamed: boolean;
  under18: boolean;
  /** ISO, of the server. */
  now: string;
};
export type ChangePage = <Step extends IntakeStep>(step: Step, patch: Partial<IntakePages[Step]>) => void;
type Sent = { sentAt: string; cautions: Caution[] };

const WAIT_MS = 700;

/** The intake that is filled in: kept on this phone at every change, on the server as soon as there is signal. */
export function useIntake(props: IntakeProps) {
  const { clientId } = props;
  const [draft, setDraft] = useState<IntakeDraft>(props.draft);
  const [place, setPlace] = useState<Place | null>(null);
  const [saved, setSaved] = useState('');
  const [problem, setProblem] = useState('');
  const [sent, setSent] = useState<Sent | null>(null);
  const [isSending, setSending] = useState(false);
  const key = useRef('');
  const latest = useRef(draft);
  const timer = useRef<number | undefined>(undefined);
  /** How far this phone's clock is behind the server's: what is told now must not look old. */
  const behindMs = useRef(0);
  const instant = useCallback(() => new Date(Date.now() + behindMs.current).toISOString(), []);

  const save = useCallback(async () => {
    window.clearTimeout(timer.current);
    const posted = latest.current;
    if (Object.keys(posted).length === 0) return; // nothing was told yet
    const answer = await postDraft(posted);
    if (answer.ok) {
      setSaved(`saved ${clockWords(new Date().toISOString())}`);
      if (latest.current === posted) forget(clientId);
      return;
    }
    if (answer.status === null) return setSaved('saved on this phone, no signal');
    setProblem(answer.message);
  }, [clientId]);

  // biome-ignore lint/correctness/useExhaustiveDependencies: once, when the phone's storage can be read
  useEffect(() => {
    behindMs.current = Date.parse(props.now) - Date.now();
    const kept = loadKept(clientId);
    key.current = kept?.key ?? crypto.randomUUID();
    const merged = kept ? mergeDrafts(props.draft, kept.draft) : props.draft;
    latest.current = merged;
    setDraft(merged);
    setPlace(firstOpen(merged, nowOf(props, instant())));
    if (kept) void save();
    const online = () => void save();
    window.addEventListener('online', online);
    return () => {
      window.removeEventListener('online', online);
      window.clearTimeout(timer.current);
    };
  }, []);

  const change: ChangePage = useCallback(
    (step, patch) => {
      const before = latest.current;
      const page = { ...(before[step]?.page ?? EMPTY_PAGES[step]), ...patch };
      const after = { ...before, [step]: { at: instant(), page } } as IntakeDraft;
      latest.current = after;
      setDraft(after);
      setProblem('');
      const isKept = keep(clientId, { draft: after, key: key.current });
      setSaved(isKept ? 'saved on this phone' : 'not saved: this browser keeps nothing');
      window.clearTimeout(timer.current);
      timer.current = window.setTimeout(() => void save(), WAIT_MS);
    },
    [clientId, save, instant],
  );

  const send = async () => {
    if (isSending || sent) return; // a second tap sends nothing
    setSending(true);
    window.clearTimeout(timer.current);
    keep(clientId, { draft: latest.current, key: key.current });
    const answer = await postIntake(key.current, latest.current);
    setSending(false);
    if (!answer.ok) return setProblem(answer.message);
    forget(clientId);
    setSent(answer.body);
  };

  const go = (to: Place) => {
    setProblem('');
    setPlace(to);
    window.scrollTo(0, 0);
  };
  return { draft, place, saved, problem, sent, isSending, change, send, go, now: nowOf(props, instant()) };
}

function nowOf({ year, guardianNamed }: IntakeProps, now: string): IntakeNow {
  return { now, year, guardianNamed };
}

/** Where to go on: the first page that is not whole yet, or that says how it was and has to say how it is. */
function firstOpen(draft: IntakeDraft, at: IntakeNow): Place {
  return INTAKE_STEPS.find((step) => refusalsOf(step, draft, at).length > 0) ?? 'all';
}
