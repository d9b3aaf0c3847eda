'use client';
import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import type { AnsweringHours } from '#lib/domain/history.ts';
import { WEEKDAYS } from '#lib/views/replies/answering-words.ts';
import { Field } from '../../clients/_parts/field.tsx';
import { postJson } from '../../clients/_parts/post-json.ts';
import styles from './replies.module.css';

type Props = { answering: AnsweringHours | null; zone: string; zones: string[] };
type Refused = { message: string; fields: Record<string, string> };
const OFFICE = { days: [1, 2, 3, 4, 5], from: '09:00', to: '17:00' };

/** The hours in which the team answers: waiting is counted in them, here and by the check. */
export function HoursForm({ answering, zone, zones }: Props) {
  const router = useRouter();
  const [counted, setCounted] = useState(answering !== null);
  const [said, setSaid] = useState('');
  const [refused, setRefused] = useState<Refused | null>(null);
  const set = { ...OFFICE, zone, ...answering };
  const error = (name: string) => refused?.fields[`hours.${name}`];
  async function onSubmit(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const text = (name: string) => String(form.get(name) ?? '');
    const days = form.getAll('day').map(Number);
    const hours = counted ? { zone: text('zone'), days, from: text('from'), to: text('to') } : null;
    const answer = await postJson('/api/replies/hours', { hours });
    setRefused(answer.ok ? null : answer);
    setSaid(answer.ok ? 'Set. This page counts by it now, the checks from their next run.' : '');
    if (answer.ok) router.refresh();
  }
  return (
    <form className={styles.form} onSubmit={onSubmit} noValidate>
      <label className={styles.tick}>
        <input type="checkbox" checked={!counted} onChange={(event) => setCounted(!event.target.checked)} />
        Count round the clock
      </label>
      {counted && (
        <>
          <fieldset aria-describedby="hours-days-error">
            <legend>Days</legend>
            <div className={styles.ticks}>
              {WEEKDAYS.map(({ day, name }) => (
                <label key={day} className={styles.tick}>
                  <input type="checkbox" name="day" value={day} defaultChecked={set.days.includes(day)} />
                  {name}
                </label>
              ))}
            </div>
            <p id="hours-days-error" className={styles.problem}>
              {error('days')}
            </p>
          </fieldset>
          <div className={styles.inline}>
            <Field id="hours-from" label="From" error={error('from')}>
              {(control) => <input {...control} name="from" type="time" defaultValue={set.from} />}
            </Field>
            <Field id="hours-to" label="To" error={error('to')}>
              {(control) => <input {...control} name="to" type="time" defaultValue={set.to} />}
            </Field>
            <Field id="hours-zone" label="Time zone" error={error('zone')}>
              {(control) => (
                <select {...control} name="zone" defaultValue={set.zone}>
                  {zones.map((one) => (
                    <option key={one}>{one}</option>
                  ))}
                </select>
              )}
            </Field>
          </div>
        </>
      )}
      <p className={styles.acted}>
        <button type="submit" data-outlined>
          Set the hours
        </button>
        <span role="status">{said}</span>
      </p>
      {refused && Object.keys(refused.fields).length === 0 && (
        <p role="alert" className={styles.problem}>
          {refused.message}
        </p>
      )}
    </form>
  );
}
