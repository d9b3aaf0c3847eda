'use client';
import Link from 'next/link';
import { useRouter } from 'next/navigation';
import { useCallback, useEffect, useState } from 'react';
import type { AnswerStartTest } from '#lib/schemas/start-tests.ts';
import type { PhoneTest, PhoneTests } from '#lib/views/start/phone-tests.ts';
import { dropAnswer, keepAnswer, sendAnswers, type Unsent, unsentAnswers } from './kept-answers.ts';
import { TestForm } from './test-form.tsx';

/** What waits, one after the other, easiest first; every answer is kept on the phone and sent when there is signal. */
export function TestsScreen({ asked }: { asked: PhoneTests }) {
  const router = useRouter();
  const { testsId } = asked;
  const [unsent, setUnsent] = useState<Unsent[]>([]);
  const [changing, setChanging] = useState<string | null>(null);
  const send = useCallback(async () => {
    const waiting = unsentAnswers(testsId).length;
    if (waiting === 0) return;
    await sendAnswers(testsId);
    const left = unsentAnswers(testsId);
    setUnsent(left);
    // Without signal a refresh would leave the page.
    if (left.length < waiting && navigator.onLine) router.refresh();
  }, [testsId, router]);
  useEffect(() => {
    setUnsent(unsentAnswers(testsId));
    void send();
    const again = () => void send();
    window.addEventListener('online', again);
    return () => window.removeEventListener('online', again);
  }, [testsId, send]);
  const answer = (key: string, body: AnswerStartTest) => {
    keepAnswer(testsId, key, body);
    setUnsent(unsentAnswers(testsId));
    setChanging(null);
    void send();
  };
  const drop = (key: string) => {
    dropAnswer(testsId, key);
    setUnsent(unsentAnswers(testsId));
  };
  const waits = (test: PhoneTest) => unsent.some((one) => one.key === test.key);
  const open = asked.tests.find((test) =>
    changing ? test.key === changing : test.state === 'next' && !waits(test),
  );
  const answered = asked.tests.filter((test) => test.state === 'answered' && test.key !== changing);
  const closed = asked.tests.filter(({ state }) => state === 'stopped' || state === 'closed');
  return (
    <main>
      <h1>Start tests</h1>
      <p className="quiet" role="status">
        {asked.progress}
        {unsent.length > 0
          ? `. ${unsent.length === 1 ? 'One answer is' : `${unsent.length} answers are`} saved on this phone and not sent yet.`
          : '. Each answer is saved at once: stop and go on when you like.'}
      </p>
      {asked.words ? (
        <p className="quiet">
          “{asked.words}”, {asked.coach}
        </p>
      ) : null}
      {unsent
        .filter(({ problem }) => problem !== null)
        .map((one) => (
          <div key={one.key} className="problem" role="alert">
            <p>{one.problem}</p>
            <p className="word-acts">
              <button type="button" className="word-act" onClick={() => void send()}>
                Try again
              </button>
              <button type="button" className="word-act" onClick={() => drop(one.key)}>
                Leave this answer out
              </button>
            </p>
          </div>
        ))}
      <StopRules />
      {open ? (
        <TestForm
          key={`${open.key} ${open.said}`}
          test={open}
          testsId={testsId}
          coach={asked.coach}
          under18={asked.under18}
          onAnswer={(body) => answer(open.key, body)}
          onLeave={changing ? () => setChanging(null) : undefined}
        />
      ) : (
        <p className="asked-none">
          {asked.done
            ? `That is all. ${asked.coach} sees it and places you.`
            : 'The next one opens when your answers have arrived.'}
        </p>
      )}
      <TestList title="Answered" tests={answered} onChange={setChanging} />
      <TestList title="Not now" tests={closed} />
      <p className="word-acts">
        <Link className="word-act" href="/today">
          Back to Today
        </Link>
      </p>
    </main>
  );
}

function StopRules() {
  return (
    <div className="test-stop">
      <p>Warm up first. Try nothing you have never done. “Cannot yet” is a full answer.</p>
      <p>
        Stop a test when it is no longer clean, at pain of 3 of 10 or more, or when you feel dizzy or numb.
        Numbness, weakness, a fall, dizziness or trouble seeing: stop for today and{' '}
        <Link href="/check-in">tell it in a check-in</Link>; see a licensed clinician. Chest pain, fainting,
        or a sudden worst headache: get medical help at once.
      </p>
    </div>
  );
}

type ListProps = { title: string; tests: PhoneTest[]; onChange?: (key: string) => void };

function TestList({ title, tests, onChange }: ListProps) {
  if (tests.length === 0) return null;
  return (
    <section aria-label={title}>
      <h2 className="tests-head">{title}</h2>
      <ul className="tests-list">
        {tests.map((test) => (
          <li key={test.key}>
            <span>
              {test.name}
              {test.about ? `, ${test.about}` : ''}
              <small>{test.said || test.why}</small>
            </span>
            {onChange ? (
              <button
                type="button"
                className="word-act"
                aria-label={`Change: ${test.name}${test.about ? `, ${test.about}` : ''}`}
                onClick={() => onChange(test.key)}
              >
                Change
              </button>
            ) : null}
          </li>
        ))}
      </ul>
    </section>
  );
}
