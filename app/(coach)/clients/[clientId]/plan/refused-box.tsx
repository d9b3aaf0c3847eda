'use client';

import { useEffect, useRef } from 'react';
import type { PlanTyped } from '#lib/views/plan-form.ts';
import forms from '../../_parts/forms.module.css';

export type Refused = { message: string; fields: Record<string, string> };
type Props = { refused: Refused | null; typed: PlanTyped };

/** What was refused, with a link to each field; it takes the focus. What was typed is still in the form. */
export function RefusedBox({ refused, typed }: Props) {
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (refused) box.current?.focus();
  }, [refused]);
  if (!refused) return null;
  const places = Object.entries(refused.fields).flatMap(([path, message]) => {
    const place = placeOf(path, typed);
    return place ? [{ ...place, message }] : [];
  });
  return (
    <div ref={box} role="alert" tabIndex={-1} className={forms.refusal}>
      <p>{places.length > 0 ? 'Not saved. What you typed is still here.' : refused.message}</p>
      {places.length > 0 ? (
        <ul>
          {places.map((place) => (
            <li key={place.id + place.message}>
              <a href={`#${place.id}`}>{place.name}</a>: {place.message}
            </li>
          ))}
        </ul>
      ) : null}
    </div>
  );
}

const NAMES: Record<string, string> = {
  from: 'First day',
  until: 'Last day',
  sessionsPerWeek: 'Sessions a week',
  why: 'Why this change',
  notes: 'Words to the client',
  rungId: 'rung',
  side: 'side',
  sets: 'sets',
  target: 'target',
  minutes: 'minutes',
  timesPerWeek: 'times a week',
  support: 'done on',
  stopRule: 'when to stop',
  pairedWith: 'pyramid with',
  noKitRungId: 'without kit',
  session: 'session',
  restSeconds: 'rest',
  warmUp: 'warm-up',
  warmUpMinutes: 'warm-up minutes',
};

/** The control of a refused field and what it is called: "A2, target". */
function placeOf(path: string, typed: PlanTyped): { id: string; name: string } | undefined {
  const [list = '', at = '', field = ''] = path.split('.');
  const named = NAMES[field] ?? field;
  if (list === 'items') {
    const row = typed.rows[Number(at)];
    if (!row) return undefined;
    const place = typed.rows.filter(({ session }) => session === row.session).indexOf(row) + 1;
    return { id: `drill-${row.key}-${field}`, name: `${row.session}${place}, ${named}` };
  }
  if (list === 'sessions') {
    const used = typed.sessions.filter(({ label }) => typed.rows.some((row) => row.session === label));
    const label = used[Number(at)]?.label;
    return label ? { id: `session-${label}-${field}`, name: `Session ${label}, ${named}` } : undefined;
  }
  if (list === 'goals') {
    const goal = typed.goals[Number(at)];
    return goal ? { id: `goal-${goal.skillId}`, name: 'Skills in focus' } : undefined;
  }
  return at === '' && NAMES[list] ? { id: list, name: NAMES[list] } : undefined;
}
