'use client';
import type { IntakeDraft } from '#lib/domain/intake/draft.ts';
import { type IntakeNow, readIntake } from '#lib/domain/intake/read-intake.ts';
import { answerLines, STEP_TITLES } from '#lib/views/intake/answer-lines.ts';
import type { Place } from './use-intake.ts';

type Props = { draft: IntakeDraft; now: IntakeNow; coach: string; go: (to: Place) => void };

/** Everything before it is sent, each part with its way back. */
export function LookThrough({ draft, now, coach, go }: Props) {
  const read = readIntake(draft, now);
  if ('refusals' in read)
    return (
      <>
        <h1 className="tight">Not whole yet</h1>
        <ul className="rights-lines">
          {read.refusals.map(({ step, field, message }) => (
            <li key={field}>
              {STEP_TITLES[step]}: {message}{' '}
              <button type="button" className="word-act" onClick={() => go(step)}>
                Go there
              </button>
            </li>
          ))}
        </ul>
      </>
    );
  return (
    <>
      <h1 className="tight">Is this right?</h1>
      <p className="quiet">
        It goes to {coach} once. After that {coach} changes it for you.
      </p>
      {answerLines(read.answers).map(({ step, title, lines }) => (
        <section key={step} className="intake-told" aria-label={title}>
          <div className="between">
            <h2>{title}</h2>
            <button
              type="button"
              className="word-act"
              aria-label={`Change: ${title}`}
              onClick={() => go(step)}
            >
              Change
            </button>
          </div>
          <ul>
            {lines.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </section>
      ))}
    </>
  );
}
