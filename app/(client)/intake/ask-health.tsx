'use client';
import { HEALTH_ASKED, HEALTH_QUESTIONS } from '#lib/domain/intake/health-questions.ts';
import { Choice } from '../check-in/choice.tsx';
import type { AskProps } from './ask-props.ts';
import { FieldError, TextField } from './fields.tsx';

const YES_NO = [
  { value: 'no' as const, label: 'No' },
  { value: 'yes' as const, label: 'Yes' },
];

export function AskHealth({ page, change, error, coach }: AskProps<'health'>) {
  const yes = HEALTH_QUESTIONS.some((question) => page.said[question] === 'yes');
  return (
    <>
      <h1 className="tight">Your health</h1>
      <p className="quiet">
        Some of the work is upside down. With a yes to one of these a doctor has to say first that it is fine
        for you. Until {coach} has written that down, upside-down drills wait; the rest of your training goes
        on.
      </p>
      {HEALTH_QUESTIONS.map((question) => (
        <div key={question} className="intake-yes-no">
          <h2 id={`asked-${question}`}>{HEALTH_ASKED[question]}</h2>
          <Choice
            name={HEALTH_ASKED[question]}
            options={YES_NO}
            value={page.said[question] ?? null}
            columns={2}
            onChange={(said) => {
              const { [question]: _before, ...others } = page.said;
              change('health', { said: said === null ? others : { ...others, [question]: said } });
            }}
          />
          <FieldError id={`${question}-error`} error={error(`health.${question}`)} />
        </div>
      ))}
      {yes ? (
        <p className="problem">
          Upside-down drills will wait for a doctor’s word. Ask yours; tell {coach} who said what, and when.
        </p>
      ) : null}
      <TextField
        id="health-words"
        kind="words"
        label="Anything else about your health (may be left out)"
        value={page.words}
        onChange={(words) => change('health', { words })}
      />
    </>
  );
}
