'use client';
import { type FormEvent, useState } from 'react';
import { ROLE_LABELS } from '#lib/views/team-page.ts';
import { Field } from '../../clients/_parts/field.tsx';
import forms from '../../clients/_parts/forms.module.css';
import { textIn } from '../../clients/_parts/post-json.ts';
import { ActSaid } from './act-said.tsx';
import styles from './team.module.css';
import { useTeamAct } from './use-team-act.ts';

export type InvitationLine = { id: string; email: string; words: string };

/** Who is asked in and has not come yet, and a form to ask somebody else. A new link is shown this once. */
export function Invitations({ waiting }: { waiting: InvitationLine[] }) {
  const team = useTeamAct();
  const [link, setLink] = useState('');
  const told = (value: unknown) => {
    setLink(textIn(value, 'url'));
    return { line: `A link is mailed to ${textIn(value, 'mailedTo')}. It works once, within 7 days.` };
  };
  async function invite(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const form = event.currentTarget;
    const data = new FormData(form);
    const body = { email: data.get('email'), role: data.get('role') };
    if (await team.act('/api/team/invitations', body, told)) form.reset();
  }
  const renew = (id: string) => void team.act(`/api/team/invitations/${id}`, { do: 'renew' }, told);
  const withdraw = ({ id, email }: InvitationLine) => {
    const address = `/api/team/invitations/${id}`;
    setLink('');
    void team.act(address, { do: 'withdraw' }, () => ({
      line: `The invitation of ${email} is withdrawn; its link does not open any more.`,
      back: { address, body: { do: 'restore' } },
    }));
  };
  return (
    <>
      {waiting.length === 0 ? (
        <p className={forms.lead}>Nobody is asked in and still to come.</p>
      ) : (
        <ul className={styles.list} aria-label="Invitations that wait">
          {waiting.map((one) => (
            <li key={one.id}>
              <span className={styles.words}>{one.words}</span>
              <button
                type="button"
                disabled={team.busy}
                aria-label={`New link for ${one.email}`}
                onClick={() => renew(one.id)}
              >
                New link
              </button>
              <button
                type="button"
                disabled={team.busy}
                aria-label={`Withdraw ${one.email}`}
                onClick={() => withdraw(one)}
              >
                Withdraw
              </button>
            </li>
          ))}
        </ul>
      )}
      <form className={styles.form} onSubmit={invite} noValidate>
        <Field id="invite-email" label="E-mail" error={team.fields.email}>
          {(control) => <input {...control} name="email" type="email" autoComplete="off" />}
        </Field>
        <Field id="invite-role" label="As" error={team.fields.role}>
          {(control) => (
            <select {...control} name="role" defaultValue="coach">
              {Object.entries(ROLE_LABELS).map(([role, label]) => (
                <option key={role} value={role}>
                  {label}
                </option>
              ))}
            </select>
          )}
        </Field>
        <div className={forms.acts}>
          <button type="submit" className={forms.other} disabled={team.busy}>
            Ask into the team
          </button>
        </div>
      </form>
      {link && (
        <p className={forms.wide} style={{ maxWidth: 640, marginTop: 12 }}>
          <output className={forms.link} aria-label="Link into the team">
            {link}
          </output>
        </p>
      )}
      <ActSaid {...team} />
    </>
  );
}
