'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import { CameraDrawing } from '#app/_ui/camera-drawing.tsx';
import { FILM_ANGLES, SIDES } from '#lib/domain/vocabulary.ts';
import { cameraPlan } from '#lib/views/film/camera-plan.ts';
import { Field } from '../../_parts/field.tsx';
import { postJson } from '../../_parts/post-json.ts';

type Rung = { rungId: string; name: string; ladder: string; eachSide: boolean; camera: string };
type Props = { clientId: string; rungs: Rung[]; today: string };
type Refused = { message: string; fields: Record<string, string> };

/** Drill, side, from where, by when; the client gets the drawing that stands here. */
export function AskFilm({ clientId, rungs, today }: Props) {
  const router = useRouter();
  const [refused, setRefused] = useState<Refused | null>(null);
  const [said, setSaid] = useState('');
  const [rungId, setRungId] = useState(rungs[0]?.rungId ?? '');
  const [angle, setAngle] = useState<string>(FILM_ANGLES[0]);
  const rung = rungs.find((one) => one.rungId === rungId);
  const error = (name: string) => refused?.fields[name];

  async function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const form = event.currentTarget;
    const data = Object.fromEntries([...new FormData(form)].map(([name, value]) => [name, String(value)]));
    const body = { side: 'both', ...data, rungId, angle, byDate: data.byDate || null };
    const answer = await postJson(`/api/clients/${clientId}/films`, body);
    const line = answer.ok ? (answer.value as { line?: string } | null)?.line : undefined;
    setSaid(answer.ok ? (line ?? 'Asked for.') : answer.message);
    setRefused(answer.ok ? null : answer);
    if (answer.ok) router.refresh();
  }

  return (
    <form onSubmit={send} noValidate>
      <Field id="film-rung" label="What" error={error('rungId')}>
        {(control) => (
          <select {...control} value={rungId} onChange={(event) => setRungId(event.target.value)}>
            {[...new Set(rungs.map((one) => one.ladder))].map((ladder) => (
              <optgroup key={ladder} label={ladder}>
                {rungs
                  .filter((one) => one.ladder === ladder)
                  .map((one) => (
                    <option key={one.rungId} value={one.rungId}>
                      {one.name}
                    </option>
                  ))}
              </optgroup>
            ))}
          </select>
        )}
      </Field>
      {rung?.eachSide ? (
        <Field id="film-side" label="Side" error={error('side')}>
          {(control) => (
            <select {...control} name="side">
              {SIDES.map((side) => (
                <option key={side}>{side}</option>
              ))}
            </select>
          )}
        </Field>
      ) : null}
      <Field id="film-angle" label="From where" hint="In own words too" error={error('angle')}>
        {(control) => (
          <input
            {...control}
            list="film-angles"
            value={angle}
            autoComplete="off"
            onChange={(event) => setAngle(event.target.value)}
          />
        )}
      </Field>
      <datalist id="film-angles">
        {FILM_ANGLES.map((one) => (
          <option key={one} value={one} />
        ))}
      </datalist>
      <CameraDrawing plan={cameraPlan(angle, rung?.camera ?? '')} />
      <p>{rung?.camera ? `The drill says: ${rung.camera}` : null}</p>
      <Field id="film-by" label="By" hint="Can be left out" error={error('byDate')}>
        {(control) => <input {...control} name="byDate" type="date" min={today} />}
      </Field>
      <Field id="film-words" label="What you want to see (can be left out)" error={error('words')}>
        {(control) => <textarea {...control} name="words" />}
      </Field>
      <p>
        <button type="submit">Ask for it</button> <span role="status">{said}</span>
      </p>
    </form>
  );
}
