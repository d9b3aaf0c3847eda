'use client';
import { type FormEvent, useRef, useState } from 'react';
import type { Movable } from '#lib/usecases/team/load-movable.ts';
import { Field } from '../../clients/_parts/field.tsx';
import forms from '../../clients/_parts/forms.module.css';
import { ActSaid } from './act-said.tsx';
import styles from './team.module.css';
import { useTeamAct } from './use-team-act.ts';

/** Ticks, a coach, a note. */
export function MoveForm({ clients, coaches }: Movable) {
  const team = useTeamAct();
  const form = useRef<HTMLFormElement>(null);
  const [from, setFrom] = useState('');
  const shown = clients.filter(({ coachId }) => from === '' || coachId === from);

  async function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const data = new FormData(event.currentTarget);
    const clientIds = data.getAll('client').map(String);
    const toId = String(data.get('toId'));
    const to = coaches.find(({ id }) => id === toId)?.name;
    const body = { clientIds, toId, note: data.get('note') ?? '' };
    const moved = await team.act('/api/team/moves', body, (value) => ({
      line: `${clientIds.length === 1 ? '1 client is' : `${clientIds.length} clients are`} with ${to} now.`,
      back: { address: '/api/team/moves/undo', body: value },
    }));
    if (moved) form.current?.reset();
  }
  function tick(on: boolean) {
    for (const box of form.current?.querySelectorAll<HTMLInputElement>('[name=client]') ?? [])
      box.checked = on;
  }
  return (
    <form ref={form} onSubmit={send} noValidate>
      <div className={styles.row}>
        <Field id="from-coach" label="Clients of">
          {(control) => (
            <select {...control} value={from} onChange={(event) => setFrom(event.target.value)}>
              <option value="">every coach</option>
              {coaches.map(({ id, name }) => (
                <option key={id} value={id}>
                  {name}
                </option>
              ))}
            </select>
          )}
        </Field>
        <button type="button" className={forms.plain} onClick={() => tick(true)}>
          Tick all {shown.length}
        </button>
        <button type="button" className={forms.plain} onClick={() => tick(false)}>
          Tick none
        </button>
      </div>
      <fieldset className={forms.fieldset} style={{ marginTop: 12 }}>
        <legend>Clients</legend>
        <ul className={styles.ticks}>
          {shown.map((client) => (
            <li key={client.id}>
              <label>
                <input type="checkbox" name="client" value={client.id} />
                <span>
                  {client.name} <small>{client.coach}</small>
                </span>
              </label>
            </li>
          ))}
        </ul>
        {team.fields.clientIds && <p className={forms.error}>{team.fields.clientIds}</p>}
      </fieldset>
      <div className={styles.form}>
        <Field id="to-coach" label="To" error={team.fields.toId}>
          {(control) => (
            <select {...control} name="toId" defaultValue="">
              <option value="">choose a coach</option>
              {coaches.map(({ id, name }) => (
                <option key={id} value={id}>
                  {name}
                </option>
              ))}
            </select>
          )}
        </Field>
        <Field id="move-note" label="Note to the new coach" error={team.fields.note}>
          {(control) => <textarea {...control} name="note" rows={3} />}
        </Field>
        <div className={forms.acts}>
          <button type="submit" className={forms.main} disabled={team.busy}>
            Move them
          </button>
        </div>
        <ActSaid {...team} />
      </div>
    </form>
  );
}
