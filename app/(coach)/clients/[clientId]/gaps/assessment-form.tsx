'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useMemo, useState } from 'react';
import { PLAN_SESSIONS } from '#lib/domain/plan-sessions.ts';
import type { AskRole } from '#lib/planning/gaps/gap-types.ts';
import { type FormPart, type FormSide, type GapFormModel, gapBody } from '#lib/views/gaps/gap-form.ts';
import { refusedParts } from '#lib/views/gaps/refused-parts.ts';
import forms from '../../_parts/forms.module.css';
import { postJson, textIn } from '../../_parts/post-json.ts';
import { RefusedPlaces } from '../../_parts/refused-places.tsx';
import { PartFields } from './part-fields.tsx';

type Refused = { message: string; fields: Record<string, string> };

const GROUPS: { title: string; lead: string; roles: AskRole[] }[] = [
  {
    title: 'Parts of the skill',
    lead: 'What one slow lowering or attempt shows of each, and the last result.',
    roles: ['aim', 'part'],
  },
  {
    title: 'What has to stand before',
    lead: 'Asked by the openings of these ladders.',
    roles: ['opening'],
  },
  {
    title: 'Mobility that belongs to the parts',
    lead: 'Comes along with the drills unless the range is there.',
    roles: ['mobility'],
  },
];

/** What was seen of each part, filled in from the history; nothing is kept until it is saved. */
export function AssessmentForm({ model: start }: { model: GapFormModel }) {
  const router = useRouter();
  const [model, setModel] = useState(start);
  const [parts, setParts] = useState(start.parts);
  const [refused, setRefused] = useState<Refused | null>(null);
  const [busy, setBusy] = useState(false);
  const error = (path: string) => refused?.fields[path];
  // Names and places of the fields are those of the form that was sent.
  const places = useMemo(() => refusedParts(refused?.fields ?? {}, start.parts), [refused, start]);

  const change = (ladderId: string, patch: Partial<FormPart>) =>
    setParts((all) => all.map((part) => (part.ladderId === ladderId ? { ...part, ...patch } : part)));
  const changeSide = (ladderId: string, at: number, patch: Partial<FormSide>) =>
    setParts((all) =>
      all.map((part) =>
        part.ladderId === ladderId
          ? {
              ...part,
              sides: part.sides.map((side, index) => (index === at ? { ...side, ...patch } : side)),
            }
          : part,
      ),
    );
  const toggleKit = (key: string) =>
    setModel((all) => ({
      ...all,
      kit: all.kit.map((one) => (one.key === key ? { ...one, on: !one.on } : one)),
    }));
  const toggleSession = (name: string) =>
    setModel((all) => ({
      ...all,
      sessions: PLAN_SESSIONS.filter((one) => (one === name) !== all.sessions.includes(one)),
    }));

  async function send(event: FormEvent) {
    event.preventDefault();
    setBusy(true);
    const answer = await postJson(`/api/clients/${model.clientId}/assessments`, gapBody(model, parts));
    setBusy(false);
    if (answer.ok) {
      router.push(`/clients/${model.clientId}/gaps?assessment=${textIn(answer.value, 'assessmentId')}#found`);
      router.refresh();
    } else setRefused(answer);
  }

  return (
    <form className={forms.wide} onSubmit={send} noValidate>
      {refused ? <RefusedPlaces message={refused.message} places={places} /> : null}
      {GROUPS.map(({ title, lead, roles }) => {
        const here = parts.filter((part) => roles.includes(part.role));
        return here.length === 0 ? null : (
          <section key={title} aria-label={title}>
            <h2>{title}</h2>
            <p className={forms.hint}>{lead}</p>
            {here.map((part) => (
              <PartFields
                key={part.ladderId}
                part={part}
                error={(name) => error(`parts.${parts.indexOf(part)}.${name}`)}
                onChange={(patch) => change(part.ladderId, patch)}
                onSide={(at, patch) => changeSide(part.ladderId, at, patch)}
              />
            ))}
          </section>
        );
      })}
      <fieldset className={forms.fieldset}>
        <legend>Kit at hand, beside a floor and a wall</legend>
        <div className={forms.inline}>
          {model.kit.map(({ key, label, on }) => (
            <label key={key} className={forms.tick}>
              <input type="checkbox" checked={on} onChange={() => toggleKit(key)} />
              {label}
            </label>
          ))}
        </div>
      </fieldset>
      <fieldset className={forms.fieldset}>
        <legend>Sessions to put drills in</legend>
        <div className={forms.inline}>
          {PLAN_SESSIONS.map((name) => (
            <label key={name} className={forms.tick}>
              <input
                id={`session-${name}`}
                type="checkbox"
                checked={model.sessions.includes(name)}
                onChange={() => toggleSession(name)}
              />
              {name}
            </label>
          ))}
        </div>
        {error('sessions') ? <p className={forms.error}>{error('sessions')}</p> : null}
      </fieldset>
      {model.under18 ? (
        <label className={forms.tick}>
          <input
            type="checkbox"
            checked={model.under18Allowed}
            onChange={() => setModel({ ...model, under18Allowed: !model.under18Allowed })}
          />
          I allow this client, who is under 18, what opens only so (false grip, back lever)
        </label>
      ) : null}
      <div className={forms.acts}>
        <button type="submit" className={forms.main} disabled={busy}>
          Save and find the gaps
        </button>
        <a className={forms.other} href={`/clients/${model.clientId}`}>
          Leave without saving
        </a>
      </div>
    </form>
  );
}
