'use client';

import type { FormEvent } from 'react';
import { ActSaid } from '../../../team/_parts/act-said.tsx';
import { useTeamAct } from '../../../team/_parts/use-team-act.ts';
import { Field } from '../../_parts/field.tsx';

type Props = { clientId: string; name: string; others: { id: string; name: string }[] };

/** Moves this one client to another coach, with a note and a way back. */
export function MoveClient({ clientId, name, others }: Props) {
  const team = useTeamAct();
  async function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const form = event.currentTarget;
    const data = new FormData(form);
    const toId = String(data.get('toId'));
    const to = others.find(({ id }) => id === toId)?.name;
    const body = { clientIds: [clientId], toId, note: data.get('note') ?? '' };
    const moved = await team.act('/api/team/moves', body, (value) => ({
      line: `${name} is with ${to} now.`,
      back: { address: '/api/team/moves/undo', body: value },
    }));
    if (moved) form.reset();
  }
  return (
    <>
      {others.length > 0 && (
        <form onSubmit={send} noValidate>
          <Field id="move-to" label="Move to" error={team.fields.toId}>
            {(control) => (
              <select {...control} name="toId" defaultValue="">
                <option value="">choose a coach</option>
                {others.map((coach) => (
                  <option key={coach.id} value={coach.id}>
                    {coach.name}
                  </option>
                ))}
              </select>
            )}
          </Field>
          <Field id="move-note" label="Note to that coach" error={team.fields.note}>
            {(control) => <textarea {...control} name="note" />}
          </Field>
          <p>
            <button type="submit" disabled={team.busy}>
              Move {name}
            </button>
          </p>
        </form>
      )}
      <ActSaid {...team} />
    </>
  );
}
