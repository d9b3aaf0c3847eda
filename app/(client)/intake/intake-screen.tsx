'use client';
import Link from 'next/link';
import { useEffect, useRef, useState } from 'react';
import { agedSteps, INTAKE_STEPS, type IntakeStep } from '#lib/domain/intake/draft.ts';
import { type IntakeRefusal, pagesOf, refusalsOf } from '#lib/domain/intake/read-intake.ts';
import { Back } from '../_phone/icons.tsx';
import { AskGoals } from './ask-goals.tsx';
import { AskHealth } from './ask-health.tsx';
import { AskKit } from './ask-kit.tsx';
import { AskPain } from './ask-pain.tsx';
import { AskSigns } from './ask-signs.tsx';
import { AskWeek } from './ask-week.tsx';
import { AskYou } from './ask-you.tsx';
import { LookThrough } from './look-through.tsx';
import { SentNow } from './sent-now.tsx';
import { StillSo } from './still-so.tsx';
import { type IntakeProps, type Place, useIntake } from './use-intake.ts';

/** The questions of the start: one page a theme, saved at every change, everything shown before it is sent. */
export function IntakeScreen(props: IntakeProps) {
  const intake = useIntake(props);
  const { draft, place, saved, problem, sent, change, go, now } = intake;
  const [tried, setTried] = useState<IntakeStep | null>(null);
  const top = useRef<HTMLDivElement>(null);
  const shown = useRef<Place | null>(null);
  useEffect(() => {
    if (shown.current !== null && shown.current !== place) top.current?.focus(); // the next page begins at its top
    shown.current = place;
  }, [place]);

  if (sent) return <SentNow {...sent} draft={draft} coach={props.coach} />;
  const pages = pagesOf(draft);
  const at = place === null ? -1 : stepNumber(place);
  // Said once Next was pressed, and gone as soon as it is mended.
  const refused: IntakeRefusal[] = tried !== null && tried === place ? refusalsOf(tried, draft, now) : [];
  const error = (field: string) => refused.find((one) => one.field === field)?.message;
  const next = (step: IntakeStep) => {
    const isWhole = refusalsOf(step, draft, now).length === 0;
    setTried(isWhole ? null : step);
    if (isWhole) go(INTAKE_STEPS[at + 1] ?? 'all');
    else window.setTimeout(showFirstProblem);
  };
  const back = () => {
    setTried(null);
    go(INTAKE_STEPS[at - 1] ?? 'you');
  };
  const shared = { change, error, coach: props.coach };
  return (
    <div className="phone phone-plain intake">
      <header className="phone-head" ref={top} tabIndex={-1}>
        {at > 0 ? (
          <button type="button" className="back" aria-label="Back" onClick={back}>
            <Back />
          </button>
        ) : (
          <Link className="back" href="/today" aria-label="Back to Today" prefetch={false}>
            <Back />
          </Link>
        )}
        <span>{at < 0 ? '' : `${at + 1} of ${INTAKE_STEPS.length + 1}`}</span>
        <span className="state" role="status">
          {saved}
        </span>
      </header>
      <main>
        {place === 'you' ? (
          <AskYou {...shared} page={pages.you} under18={props.under18} guardianNamed={props.guardianNamed} />
        ) : null}
        {place === 'health' ? <AskHealth {...shared} page={pages.health} /> : null}
        {place === 'signs' ? (
          <>
            <StillSo step="signs" draft={draft} aged={agedSteps(draft, now.now)} change={change} />
            <AskSigns {...shared} page={pages.signs} />
          </>
        ) : null}
        {place === 'pain' ? (
          <>
            <StillSo step="pain" draft={draft} aged={agedSteps(draft, now.now)} change={change} />
            <AskPain {...shared} page={pages.pain} under18={props.under18 || pages.you.adult === 'no'} />
          </>
        ) : null}
        {place === 'week' ? <AskWeek {...shared} page={pages.week} /> : null}
        {place === 'kit' ? <AskKit {...shared} page={pages.kit} /> : null}
        {place === 'goals' ? <AskGoals {...shared} page={pages.goals} skills={props.skills} /> : null}
        {place === 'all' ? <LookThrough draft={draft} now={now} coach={props.coach} go={go} /> : null}
        {problem ? (
          <p className="problem" role="alert">
            {problem}
          </p>
        ) : null}
      </main>
      <div className="phone-foot">
        {refused.length > 0 && place !== 'all' ? (
          <p className="why" role="alert">
            {refused.length === 1 ? 'One thing is missing' : `${refused.length} things are missing`}:{' '}
            {refused[0]?.message}
          </p>
        ) : null}
        {place === null || place === 'all' ? (
          <button
            type="button"
            className="act act-filled"
            disabled={place === null || intake.isSending || missingAnywhere(intake)}
            onClick={intake.send}
          >
            {intake.isSending ? 'Sending' : `Send to ${props.coach}`}
          </button>
        ) : (
          <button type="button" className="act act-filled" onClick={() => next(place)}>
            Next
          </button>
        )}
      </div>
    </div>
  );
}

function showFirstProblem(): void {
  document.querySelector('.intake main .problem')?.scrollIntoView({ block: 'center' });
}

function stepNumber(place: Place): number {
  return place === 'all' ? INTAKE_STEPS.length : INTAKE_STEPS.indexOf(place);
}

function missingAnywhere({ draft, now }: Pick<ReturnType<typeof useIntake>, 'draft' | 'now'>): boolean {
  return INTAKE_STEPS.some((step) => refusalsOf(step, draft, now).length > 0);
}
