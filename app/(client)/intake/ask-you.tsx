'use client';
import { Choice } from '../check-in/choice.tsx';
import type { AskProps } from './ask-props.ts';
import { FieldError, Question, TextField } from './fields.tsx';

type Props = AskProps<'you'> & { under18: boolean; guardianNamed: boolean };
const YES_NO = [
  { value: 'yes' as const, label: 'Yes' },
  { value: 'no' as const, label: 'No, under 18' },
];

export function AskYou({ page, change, error, coach, under18, guardianNamed }: Props) {
  const set = (patch: Partial<typeof page>) => change('you', patch);
  return (
    <>
      <h1 className="tight">First, about you</h1>
      <p className="quiet">
        Eight short pages, about ten minutes. Each answer is saved as you give it: stop any time and go on
        later. {coach} and the team read it. It is no diagnosis.
      </p>
      <Question title="Are you 18 or older?">
        <Choice
          name="18 or older"
          options={YES_NO}
          value={page.adult}
          columns={2}
          onChange={(adult) => set({ adult })}
        />
        <FieldError id="adult-error" error={error('adult')} />
      </Question>
      {page.adult === 'yes' && under18 ? (
        <p className="quiet small">
          {coach} has you as under 18. Until they change it, a parent or guardian still has to agree.
        </p>
      ) : null}
      <TextField
        id="birth-year"
        kind="number"
        label="The year you were born"
        value={page.birthYear}
        error={error('birthYear')}
        onChange={(birthYear) => set({ birthYear })}
      />
      {page.adult === 'no' ? (
        <>
          <TextField
            id="guardian-name"
            label={
              guardianNamed
                ? 'Another parent or guardian (may be left out)'
                : 'Your parent or guardian: their name'
            }
            hint={`They have to agree before you train. ${coach} sends them a link of their own.`}
            value={page.guardianName}
            error={error('guardianName')}
            onChange={(guardianName) => set({ guardianName })}
          />
          <TextField
            id="guardian-email"
            kind="email"
            label="Their e-mail address (may be left out)"
            hint="For the link, and to tell them when something hurts much."
            value={page.guardianEmail}
            error={error('guardianEmail')}
            onChange={(guardianEmail) => set({ guardianEmail })}
          />
        </>
      ) : null}
      <TextField
        id="body-mass"
        kind="number"
        label="Body mass in kilograms (may be left out)"
        hint="Your body is the weight you train with. It is used to work out the load on your hands, and for nothing else."
        value={page.bodyMassKg}
        error={error('bodyMassKg')}
        onChange={(bodyMassKg) => set({ bodyMassKg })}
      />
    </>
  );
}
