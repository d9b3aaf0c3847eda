'use client';
import type { FormEvent } from 'react';
import { Field } from '../../clients/_parts/field.tsx';
import forms from '../../clients/_parts/forms.module.css';
import { textIn } from '../../clients/_parts/post-json.ts';
import { ActSaid } from './act-said.tsx';
import styles from './team.module.css';
import { useTeamAct } from './use-team-act.ts';

type Coach = { id: string; name: string };
export type CoverLine = {
  id: string;
  words: string;
  mayEnd: boolean;
  memberId: string;
  coveredById: string;
  from: string;
  to: string;
};
type Props = { covers: CoverLine[]; coaches: Coach[]; away: Coach[]; self: string; today: string };

/** Who has whose clients during days away: now and to come, and a form for one more. */
export function Covers({ covers, coaches, away, self, today }: Props) {
  const team = useTeamAct();
  async function set(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const form = event.currentTarget;
    const body = Object.fromEntries(new FormData(form));
    const done = await team.act('/api/team/covers', body, (value) => ({
      line: 'The cover is set. Both see it at the head of their board while it lasts.',
      back: { address: `/api/team/covers/${textIn(value, 'coverId')}/end`, body: {} },
    }));
    if (done) form.reset();
  }
  const end = ({ id, memberId, coveredById, from, to }: CoverLine) =>
    void team.act(`/api/team/covers/${id}/end`, {}, () => ({
      line: 'The cover is ended.',
      back: {
        address: '/api/team/covers',
        body: { memberId, coveredById, from: from < today ? today : from, to },
      },
    }));
  return (
    <>
      {covers.length === 0 ? (
        <p className={forms.lead}>Nobody is away.</p>
      ) : (
        <ul className={styles.list} aria-label="Covers">
          {covers.map((cover) => (
            <li key={cover.id}>
              <span className={styles.words}>{cover.words}</span>
              {cover.mayEnd && (
                <button
                  type="button"
                  disabled={team.busy}
                  aria-label={`End it: ${cover.words}`}
                  onClick={() => end(cover)}
                >
                  End it
                </button>
              )}
            </li>
          ))}
        </ul>
      )}
      {away.length > 0 && (
        <form className={styles.form} onSubmit={set} noValidate>
          <CoachField id="cover-away" name="memberId" label="Away" coaches={away} chosen={self} team={team} />
          <CoachField
            id="cover-by"
            name="coveredById"
            label="Covered by"
            coaches={coaches}
            chosen=""
            team={team}
          />
          <div className={styles.row}>
            <Field id="cover-from" label="First day" error={team.fields.from}>
              {(control) => (
                <input {...control} name="from" type="date" className={forms.date} defaultValue={today} />
              )}
            </Field>
            <Field id="cover-to" label="Last day" error={team.fields.to}>
              {(control) => <input {...control} name="to" type="date" className={forms.date} />}
            </Field>
          </div>
          <div className={forms.acts}>
            <button type="submit" className={forms.other} disabled={team.busy}>
              Set the cover
            </button>
          </div>
        </form>
      )}
      <ActSaid {...team} />
    </>
  );
}

type CoachFieldProps = {
  id: string;
  name: string;
  label: string;
  coaches: Coach[];
  chosen: string;
  team: { fields: Record<string, string> };
};

function CoachField({ id, name, label, coaches, chosen, team }: CoachFieldProps) {
  return (
    <Field id={id} label={label} error={team.fields[name]}>
      {(control) => (
        <select {...control} name={name} defaultValue={chosen}>
          {chosen === '' && <option value="">choose a coach</option>}
          {coaches.map((coach) => (
            <option key={coach.id} value={coach.id}>
              {coach.name}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}
