'use client';
import type { AskProps } from './ask-props.ts';
import { Question, Several, TextField } from './fields.tsx';

const NO_SKILLS = ['Every skill on the hands', 'Mobility'];

export function AskGoals({ page, change, error, skills }: AskProps<'goals'> & { skills: string[] }) {
  const options = skills
    .filter((skill) => !NO_SKILLS.includes(skill))
    .map((skill) => ({ value: skill, label: skill }));
  return (
    <>
      <h1 className="tight">What do you want to be able to do?</h1>
      <Question title="Skills" hint="One or two go best at a time.">
        <Several
          name="Skills"
          options={options}
          values={page.skills}
          onChange={(chosen) => change('goals', { skills: chosen })}
        />
      </Question>
      <TextField
        id="goal"
        kind="words"
        label="In your words"
        value={page.goal}
        error={error('goal')}
        onChange={(goal) => change('goals', { goal })}
      />
      <TextField
        id="why"
        kind="words"
        label="Why this? (may be left out)"
        hint="It helps when it gets slow."
        value={page.why}
        onChange={(why) => change('goals', { why })}
      />
    </>
  );
}
