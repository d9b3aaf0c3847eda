'use client';

import { useState } from 'react';
import { findRung } from '#lib/views/draft-lines.ts';
import type { FormLadder, FormSession } from '#lib/views/plan-form.ts';
import type { FormRow } from '#lib/views/plan-rows.ts';
import type { DoseOf } from '#lib/views/proposed-dose.ts';
import { Field } from '../../_parts/field.tsx';
import forms from '../../_parts/forms.module.css';
import { useDrag } from '../../_parts/use-drag.ts';
import { DrillRow } from './drill-row.tsx';
import styles from './plan.module.css';
import type { Plan } from './use-plan.ts';

type Props = {
  session: FormSession;
  isFirst: boolean;
  plan: Plan;
  ladders: FormLadder[];
  doseOf: DoseOf;
  /** "about 48 min". */
  minutes: string;
  error: (path: string) => string | undefined;
};

/** One session: its rest, warm-up and drills in order. */
export function SessionBlock({ session, isFirst, plan, ladders, doseOf, minutes, error }: Props) {
  const { label } = session;
  const title = label === 'short' ? 'Short session' : `Session ${label}`;
  const rows = plan.typed.rows.filter((row) => row.session === label);
  const at = plan.typed.sessions.indexOf(session);
  return (
    <section aria-labelledby={`session-${label}`} className={styles.session}>
      <div className={styles.sessionHead}>
        <h3 id={`session-${label}`}>{title}</h3>
        <span className={styles.minutes}>{minutes}</span>
        <div className={styles.acts}>
          {isFirst ? null : (
            <button type="button" onClick={() => plan.moveSession(label)} aria-label={`Earlier: ${title}`}>
              Earlier
            </button>
          )}
          <button type="button" onClick={() => plan.removeSession(label)} aria-label={`Take out ${title}`}>
            Take out
          </button>
        </div>
      </div>
      {error(`sessions.${at}.label`) ? <p className={forms.error}>{error(`sessions.${at}.label`)}</p> : null}
      <SessionFields session={session} plan={plan} error={(name) => error(`sessions.${at}.${name}`)} />
      <SessionRows plan={plan} rows={rows} label={label} ladders={ladders} doseOf={doseOf} error={error} />
      <button type="button" onClick={() => plan.addRow(label)}>
        Add a drill to {label === 'short' ? 'the short session' : `session ${label}`}
      </button>
    </section>
  );
}

type RowsProps = Pick<Props, 'plan' | 'ladders' | 'doseOf' | 'error'> & { rows: FormRow[]; label: string };

/** Drills in the order in which they are done: dragged by the grip, or moved by keys and buttons. */
function SessionRows({ plan, rows, label, ladders, doseOf, error }: RowsProps) {
  const [said, setSaid] = useState('');
  const { held, box, hold } = useDrag<HTMLDivElement>(
    rows.map((row) => String(row.key)),
    (id, to) => move(Number(id), to),
  );

  function move(key: number, to: number) {
    if (to < 0 || to >= rows.length) return;
    plan.moveRow(key, to);
    const row = rows.find((one) => one.key === key);
    const name = (row && findRung(ladders, row.rungId)?.rung.name) ?? 'The drill';
    setSaid(`${name} is now ${to + 1} of ${rows.length} in its session`);
  }

  return (
    <>
      <div {...box}>
        {rows.map((row, index) => {
          const sent = plan.typed.rows.indexOf(row);
          return (
            <DrillRow
              key={row.key}
              row={row}
              place={`${label}${index + 1}`}
              at={index}
              of={rows.length}
              isHeld={held === String(row.key)}
              onHold={hold(String(row.key))}
              ladders={ladders}
              doseOf={doseOf}
              others={rows.filter((other) => other !== row)}
              error={(name) => error(`items.${sent}.${name}`)}
              onChange={(patch) => plan.setRow(row.key, patch)}
              onRemove={() => plan.removeRow(row.key)}
              onMove={(to) => move(row.key, to)}
              onPart={() => plan.partSides(row.key)}
            />
          );
        })}
      </div>
      <p className="heard-only" role="status">
        {said}
      </p>
    </>
  );
}

type FieldProps = { session: FormSession; plan: Plan; error: (name: string) => string | undefined };

function SessionFields({ session, plan, error }: FieldProps) {
  const { label } = session;
  const id = (name: string) => `session-${label}-${name}`;
  const number = (name: 'restSeconds' | 'warmUpMinutes' | 'minutes', said: string, hint: string) => (
    <Field id={id(name)} label={said} error={error(name)}>
      {(control) => (
        <input
          {...control}
          inputMode="numeric"
          autoComplete="off"
          placeholder={hint}
          value={session[name]}
          onChange={(event) => plan.setSession(label, { [name]: event.target.value })}
        />
      )}
    </Field>
  );
  return (
    <div className={styles.sessionFields}>
      {number('restSeconds', 'Rest between sets, s', 'as usual')}
      {number('warmUpMinutes', 'Warm-up, min', '0')}
      {number('minutes', 'Said to the client, min', 'as estimated')}
      <Field id={id('warmUp')} label="Warm-up, a line each" error={error('warmUp')}>
        {(control) => (
          <textarea
            {...control}
            rows={2}
            value={session.warmUp}
            onChange={(event) => plan.setSession(label, { warmUp: event.target.value })}
          />
        )}
      </Field>
    </div>
  );
}
