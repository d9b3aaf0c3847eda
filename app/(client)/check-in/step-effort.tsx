'use client';
import { asSentence, GROUND_LABELS } from '#lib/domain/labels.ts';
import { GROUNDS } from '#lib/domain/vocabulary.ts';
import type { PhoneSession } from '#lib/views/phone-session.ts';
import type { Draft } from '../_phone/draft.ts';
import { Choice } from './choice.tsx';
import { Stepper } from './stepper.tsx';
import { Tenths } from './tenths.tsx';
import type { Change } from './use-draft.ts';
import { WordsAndQuestion } from './words-and-question.tsx';

type Props = { draft: Draft; session: PhoneSession | null; change: Change; coach: string };

/** Anchor words of the 0-10 scale of effort (Foster 2001, the CR-10 scale as he modified it). */
const EFFORT_WORDS: Partial<Record<number, string>> = {
  0: 'rest',
  1: 'very, very easy',
  2: 'easy',
  3: 'moderate',
  4: 'somewhat hard',
  5: 'hard',
  7: 'very hard',
  10: 'maximal',
};
/** Those that find room under their cell; every word is said beside the question once its number is chosen. */
const UNDER_CELLS = [0, 2, 5, 7, 10];
const GROUND_OPTIONS = GROUNDS.map((value) => ({ value, label: asSentence(GROUND_LABELS[value]) }));
/** "Under 6" is kept as 5 hours, "8 h +" as 8. */
const SLEEP_OPTIONS = [
  { value: 5, label: 'under 6' },
  { value: 6, label: '6 h' },
  { value: 7, label: '7 h' },
  { value: 8, label: '8 h +' },
];
const MOST_MINUTES = 600;

export function StepEffort({ draft, session, change, coach }: Props) {
  return (
    <>
      <main>
        <div className="between">
          <h2>How hard was it?</h2>
          <span>
            {draft.effort === null
              ? ''
              : [`${draft.effort} of 10`, EFFORT_WORDS[draft.effort]].filter(Boolean).join(', ')}
          </span>
        </div>
        <Tenths
          name="How hard was it"
          value={draft.effort}
          words={EFFORT_WORDS}
          under={UNDER_CELLS}
          onChange={(effort) => change({ effort })}
        />
        <hr className="rule" />
        <div className="between">
          <h2>How long?</h2>
          <span className="quiet">{session?.minutes ? `planned ${session.minutes}` : ''}</span>
        </div>
        <Stepper
          label="minutes of training"
          value={draft.minutes}
          unit="min"
          kind="minutes"
          step={5}
          most={MOST_MINUTES}
          onChange={(minutes) => change({ minutes: Math.round(minutes) })}
        />
        <hr className="rule" />
        <LeaveOut title="Ground" />
        <Choice
          name="Ground"
          options={GROUND_OPTIONS}
          value={draft.ground}
          columns={3}
          onChange={(ground) => change({ ground })}
        />
        <hr className="rule" />
        <LeaveOut title="Sleep" />
        <Choice
          name="Sleep last night"
          options={SLEEP_OPTIONS}
          value={draft.sleepHours}
          columns={4}
          onChange={(sleepHours) => change({ sleepHours })}
        />
        <WordsAndQuestion draft={draft} change={change} coach={coach} />
      </main>
      <div className="phone-foot">
        {draft.effort === null || draft.minutes === null ? (
          <p className="why">Without how hard and how long, the load of this day stays unknown.</p>
        ) : null}
        <button type="button" className="act act-filled" onClick={() => change({ step: 'pain' })}>
          Next: pain
        </button>
      </div>
    </>
  );
}

function LeaveOut({ title }: { title: string }) {
  return (
    <div className="between">
      <h2>{title}</h2>
      <span className="quiet">may be left out</span>
    </div>
  );
}
