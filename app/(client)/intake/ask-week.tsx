'use client';
import { Choice } from '../check-in/choice.tsx';
import { Tenths } from '../check-in/tenths.tsx';
import type { AskProps } from './ask-props.ts';
import { FieldError, Question, TextField } from './fields.tsx';

const YES_NO = [
  { value: 'yes' as const, label: 'Yes' },
  { value: 'no' as const, label: 'No' },
];
/** Anchor words of the 0-10 scale of effort (Foster 2001, the CR-10 scale as he modified it). */
const EFFORT_WORDS = { 0: 'rest', 2: 'easy', 5: 'hard', 7: 'very hard', 10: 'maximal' };

export function AskWeek({ page, change, error, coach }: AskProps<'week'>) {
  const set = (patch: Partial<typeof page>) => change('week', patch);
  return (
    <>
      <h1 className="tight">Your usual week</h1>
      <p className="quiet">All training together, as it was in the last two months. A guess will do.</p>
      <Question title="Have you trained in the last three weeks?">
        <Choice
          name="Trained in the last three weeks"
          options={YES_NO}
          value={page.trains}
          columns={2}
          onChange={(trains) => set({ trains })}
        />
        <FieldError id="trains-error" error={error('trains')} />
      </Question>
      {page.trains === 'no' ? (
        <TextField
          id="break-weeks"
          kind="number"
          label="How many weeks without training?"
          hint={`${coach} then begins lower and comes up in steps.`}
          value={page.breakWeeks}
          error={error('breakWeeks')}
          onChange={(breakWeeks) => set({ breakWeeks })}
        />
      ) : null}
      <TextField
        id="week-days"
        kind="number"
        label={page.trains === 'no' ? 'Days a week, before the break' : 'Days a week'}
        value={page.days}
        error={error('days')}
        onChange={(days) => set({ days })}
      />
      <TextField
        id="week-minutes"
        kind="number"
        label="Minutes a session"
        value={page.minutes}
        error={error('minutes')}
        onChange={(minutes) => set({ minutes })}
      />
      <Question title="How hard is a usual session?">
        <Tenths
          name="How hard a usual session is"
          value={page.effort}
          words={EFFORT_WORDS}
          onChange={(effort) => set({ effort })}
        />
        <FieldError id="effort-error" error={error('effort')} />
      </Question>
      <TextField
        id="other-sport"
        kind="words"
        label="Other sport (may be left out)"
        hint="What, and how often."
        value={page.otherSport}
        onChange={(otherSport) => set({ otherSport })}
      />
      <TextField
        id="job"
        kind="words"
        label="Your work (may be left out)"
        hint="Sitting, lifting, on your hands, night shifts."
        value={page.job}
        onChange={(job) => set({ job })}
      />
    </>
  );
}
