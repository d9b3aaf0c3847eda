'use client';
import { useEffect, useState } from 'react';
import { cautionsOf } from '#lib/domain/caution.ts';
import { REGION_LABELS } from '#lib/domain/labels.ts';
import { PAIN_REGIONS, type PainRegion } from '#lib/domain/vocabulary.ts';
import type { AnswerStartTest } from '#lib/schemas/start-tests.ts';
import type { PhoneTest } from '#lib/views/start/phone-tests.ts';
import { CautionBox } from '../check-in/caution-box.tsx';
import { Choice } from '../check-in/choice.tsx';
import { Tenths } from '../check-in/tenths.tsx';
import { loadTestDraft, saveTestDraft } from './kept-answers.ts';
import type { TestDraft } from './test-draft.ts';
import { TestResults } from './test-results.tsx';

type Props = {
  test: PhoneTest;
  testsId: string;
  coach: string;
  under18: boolean;
  onAnswer: (body: AnswerStartTest) => void;
  /** Leaves it as it was; absent where there is nothing to go back to. */
  onLeave?: (() => void) | undefined;
};

const OUTCOMES = [
  { value: 'done', label: 'I did it' },
  { value: 'cannot', label: 'Cannot yet' },
  { value: 'hurts', label: 'It hurts' },
] as const;
const YES_NO = [
  { value: true, label: 'All clean' },
  { value: false, label: 'Not all' },
] as const;
const PAIN_WORDS = { 0: 'none', 3: 'clear', 6: 'strong', 10: 'worst' };

/** One test on one side: how it is done, what came of it. */
export function TestForm({ test, testsId, coach, under18, onAnswer, onLeave }: Props) {
  const [draft, setDraft] = useState<TestDraft>(() => draftOf(test));
  useEffect(() => {
    const kept = loadTestDraft<TestDraft>(testsId, test.key);
    if (kept) setDraft(kept);
  }, [testsId, test.key]);
  const change = (patch: Partial<TestDraft>) => {
    const next = { ...draft, ...patch };
    setDraft(next);
    saveTestDraft(testsId, test.key, next);
  };
  const missing = missingIn(draft, test);
  const send = () => {
    saveTestDraft(testsId, test.key, null);
    onAnswer(bodyOf(draft, test));
  };
  const side = test.side === 'both' ? ('middle' as const) : test.side;
  const told =
    draft.outcome === 'hurts' && draft.region && draft.pain !== null
      ? [{ region: draft.region, side, value: draft.pain, kind: 'joint' as const }]
      : [];
  return (
    <section className="test" aria-label={`${test.name}${test.about ? `, ${test.about}` : ''}`}>
      <h2>
        {test.name}
        {test.about ? <small>{test.about}</small> : null}
      </h2>
      <p>{test.how}</p>
      {test.clean ? <p className="quiet">Clean: {test.clean}.</p> : null}
      {test.kit.length > 0 ? <p className="quiet">Needs {test.kit.join(', ')}.</p> : null}
      {test.camera ? <p className="quiet">Please film it. Camera: {test.camera}</p> : null}
      <Choice
        name="What came of it"
        options={OUTCOMES}
        value={draft.outcome}
        columns={3}
        onChange={(outcome) => change({ outcome })}
      />
      {draft.outcome === 'done' ? (
        <>
          <TestResults test={test} draft={draft} onChange={change} />
          {test.counting === 'sets' ? (
            <>
              <p className="asked">Was every set clean?</p>
              <Choice
                name="Was every set clean"
                options={YES_NO}
                value={draft.clean}
                columns={2}
                onChange={(clean) => change({ clean })}
              />
            </>
          ) : null}
        </>
      ) : null}
      {draft.outcome === 'hurts' ? (
        <>
          <p className="asked">How much, in a joint or tendon?</p>
          <Tenths name="Pain" value={draft.pain} words={PAIN_WORDS} onChange={(pain) => change({ pain })} />
          <label className="field">
            Where
            <select
              className="text"
              value={draft.region ?? ''}
              onChange={(event) => change({ region: (event.target.value || null) as PainRegion | null })}
            >
              <option value="">Choose</option>
              {PAIN_REGIONS.map((region) => (
                <option key={region} value={region}>
                  {REGION_LABELS[region]}
                </option>
              ))}
            </select>
          </label>
          <CautionBox cautions={cautionsOf({ pain: told, dangerSigns: [] }, under18)} coach={coach} />
        </>
      ) : null}
      <button type="button" className="act act-filled" disabled={missing !== ''} onClick={send}>
        {missing || 'Save and go on'}
      </button>
      {onLeave ? (
        <p className="centre">
          <button type="button" className="word-act" onClick={onLeave}>
            Leave it as it was
          </button>
        </p>
      ) : null}
    </section>
  );
}

function draftOf({ answer, sets, counting }: PhoneTest): TestDraft {
  const length = counting === 'sets' ? sets : 1;
  return {
    outcome: answer?.outcome ?? null,
    values: Array.from({ length }, (_, at) => answer?.values[at] ?? null),
    tried: answer?.tried ?? (counting === 'tries' ? sets : null),
    clean: answer?.clean ?? null,
    pain: answer?.pain ?? null,
    region: answer?.region ?? null,
  };
}

function missingIn(draft: TestDraft, test: PhoneTest): string {
  if (draft.outcome === null) return 'Choose what came of it';
  if (draft.outcome === 'cannot') return '';
  if (draft.outcome === 'hurts') {
    if (draft.pain === null) return 'Say how much it hurts';
    return draft.region === null ? 'Say where it hurts' : '';
  }
  if (draft.values.every((value) => value === null)) return 'Write what you did';
  return test.counting === 'sets' && draft.clean === null ? 'Say whether it was clean' : '';
}

function bodyOf(draft: TestDraft, test: PhoneTest): AnswerStartTest {
  const { ladderId, rungId, side } = test;
  const isDone = draft.outcome === 'done';
  const hurts = draft.outcome === 'hurts';
  return {
    ladderId,
    rungId,
    side,
    answer: {
      ladderId,
      rungId,
      side,
      outcome: draft.outcome ?? 'cannot',
      values: isDone ? draft.values.flatMap((value) => value ?? []) : [],
      tried: isDone && test.counting === 'tries' ? draft.tried : null,
      clean: isDone ? draft.clean : null,
      pain: hurts ? draft.pain : null,
      region: hurts ? draft.region : null,
    },
  };
}
