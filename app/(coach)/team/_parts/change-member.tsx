'use client';
import type { FormEvent } from 'react';
import { LEAVE_LABELS, type MemberLine, ROLE_LABELS } from '#lib/views/team-page.ts';
import { Field } from '../../clients/_parts/field.tsx';
import forms from '../../clients/_parts/forms.module.css';
import { textIn } from '../../clients/_parts/post-json.ts';
import { ActSaid } from './act-said.tsx';
import styles from './team.module.css';
import { type TeamAct, useTeamAct } from './use-team-act.ts';

type Props = { member: MemberLine; others: { id: string; name: string }[] };

/** Another role, leave for kinds of act, or leaving; each with its way back. */
export function ChangeMember({ member, others }: Props) {
  const team = useTeamAct();
  return (
    <details>
      <summary aria-label={`Change ${member.name}`}>Change</summary>
      <div className={styles.forms}>
        <RoleForm member={member} team={team} />
        {member.role === 'assistant' && <LeaveForm member={member} team={team} />}
        <LeavingForm member={member} others={others} team={team} />
      </div>
      <ActSaid {...team} />
    </details>
  );
}

type Part = { member: MemberLine; team: TeamAct };

function RoleForm({ member, team }: Part) {
  const address = `/api/team/members/${member.id}/role`;
  function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const role = String(new FormData(event.currentTarget).get('role'));
    void team.act(address, { role }, (value) => ({
      line: `${member.name} is now ${role === 'assistant' ? 'an' : 'a'} ${role}.`,
      back: { address, body: { role: textIn(value, 'before') } },
    }));
  }
  return (
    <form className={styles.form} onSubmit={send}>
      <Field id={`role-${member.id}`} label="Role" error={team.fields.role}>
        {(control) => (
          <select {...control} key={member.role} name="role" defaultValue={member.role}>
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
          Give this role
        </button>
      </div>
    </form>
  );
}

function LeaveForm({ member, team }: Part) {
  const address = `/api/team/members/${member.id}/leaves`;
  function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const acts = new FormData(event.currentTarget).getAll('act').map(String);
    const said = acts.map((act) => LEAVE_LABELS[act as keyof typeof LEAVE_LABELS]).join(', ');
    void team.act(address, { acts }, () => ({
      line:
        acts.length > 0
          ? `Without approval from now on: ${said}.`
          : 'Everything waits for approval from now on.',
      back: { address, body: { acts: member.leaves } },
    }));
  }
  return (
    <form className={styles.form} onSubmit={send}>
      <fieldset className={forms.fieldset}>
        <legend>Does without approval</legend>
        {Object.entries(LEAVE_LABELS).map(([act, label]) => (
          <label key={`${act} ${member.leaves.join()}`} className={forms.tick}>
            <input type="checkbox" name="act" value={act} defaultChecked={member.leaves.includes(act)} />{' '}
            {label}
          </label>
        ))}
      </fieldset>
      <div className={forms.acts}>
        <button type="submit" className={forms.other} disabled={team.busy}>
          Save the leave
        </button>
      </div>
    </form>
  );
}

function LeavingForm({ member, others, team }: Part & Pick<Props, 'others'>) {
  const address = `/api/team/members/${member.id}`;
  function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const body = { clientsTo: form.get('clientsTo') ?? null, note: form.get('note') ?? '' };
    void team.act(`${address}/end`, body, (value) => ({
      line: `${member.name} has left the team and is signed out everywhere. What they wrote stays.`,
      back: { address: `${address}/return`, body: { moveIds: idsIn(value) } },
    }));
  }
  const count = member.clients === 1 ? 'the client' : `the ${member.clients} clients`;
  return (
    <form className={styles.form} onSubmit={send}>
      {member.clients > 0 ? (
        <>
          <Field
            id={`to-${member.id}`}
            label={`Who takes ${count} of ${member.name}`}
            error={team.fields.clientsTo ?? team.fields.toId}
          >
            {(control) => (
              <select {...control} name="clientsTo" defaultValue="">
                <option value="">choose a coach</option>
                {others.map(({ id, name }) => (
                  <option key={id} value={id}>
                    {name}
                  </option>
                ))}
              </select>
            )}
          </Field>
          <Field id={`note-${member.id}`} label="Note to that coach" error={team.fields.note}>
            {(control) => <textarea {...control} name="note" rows={2} />}
          </Field>
        </>
      ) : (
        <p className={styles.small}>
          {member.name} has no clients. Leaving signs them out at once; what they wrote stays with their name.
        </p>
      )}
      <div className={forms.acts}>
        <button type="submit" className={forms.other} disabled={team.busy}>
          {member.self ? 'Leave the team' : `${member.name} leaves the team`}
        </button>
      </div>
    </form>
  );
}

function idsIn(value: unknown): unknown {
  return typeof value === 'object' && value !== null && 'moveIds' in value ? value.moveIds : [];
}
