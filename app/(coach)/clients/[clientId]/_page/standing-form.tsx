'use client';

import { type FormEvent, useState } from 'react';
import { NEXT_STANDINGS } from '#lib/domain/standing-steps.ts';
import type { Standing } from '#lib/domain/vocabulary.ts';
import { STANDING_LABELS, STANDING_MEANINGS } from '#lib/views/standing-labels.ts';
import { ActSaid } from '../../../team/_parts/act-said.tsx';
import { useTeamAct } from '../../../team/_parts/use-team-act.ts';
import { Field } from '../../_parts/field.tsx';
import { textIn } from '../../_parts/post-json.ts';

type Props = {
  clientId: string;
  standing: Standing;
  today: string;
  /** A standing that begins on a day to come. */
  ahead: { changeId: string; words: string } | null;
};

/** The standings that may follow, each with what it does; from which day and why; with its way back. */
export function StandingForm({ clientId, standing, today, ahead }: Props) {
  const team = useTeamAct();
  const next = NEXT_STANDINGS[standing];
  const [chosen, setChosen] = useState<Standing>(next[0] ?? standing);
  const to = next.includes(chosen) ? chosen : (next[0] ?? standing);
  const address = `/api/clients/${clientId}/standing`;
  const undoOf = (changeId: string) => ({ address: `${address}/undo`, body: { changeId } });

  function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const body = { standing: to, from: form.get('from'), why: form.get('why') };
    void team.act(address, body, (value) => ({
      line: textIn(value, 'line'),
      back: undoOf(textIn(value, 'changeId')),
    }));
  }
  const drop = (changeId: string) => {
    const way = undoOf(changeId);
    void team.act(way.address, way.body, () => ({ line: 'It stays as it is now.' }));
  };

  return (
    <form onSubmit={send} noValidate>
      <p>
        Now: {STANDING_LABELS[standing]}. {STANDING_MEANINGS[standing]}
      </p>
      {ahead && (
        <p>
          {ahead.words}.{' '}
          <button type="button" onClick={() => drop(ahead.changeId)}>
            Not any more
          </button>
        </p>
      )}
      <Field id="standing" label="Change it to" hint={STANDING_MEANINGS[to]} error={team.fields.standing}>
        {(control) => (
          <select {...control} value={to} onChange={(event) => setChosen(event.target.value as Standing)}>
            {next.map((one) => (
              <option key={one} value={one}>
                {STANDING_LABELS[one]}
              </option>
            ))}
          </select>
        )}
      </Field>
      <Field id="standing-from" label="From" error={team.fields.from}>
        {(control) => <input {...control} name="from" type="date" defaultValue={today} />}
      </Field>
      <Field id="standing-why" label="Why (can be left out)" error={team.fields.why}>
        {(control) => <input {...control} name="why" autoComplete="off" />}
      </Field>
      <p>
        <button type="submit" disabled={team.busy}>
          Save the standing
        </button>
      </p>
      <ActSaid {...team} />
    </form>
  );
}
