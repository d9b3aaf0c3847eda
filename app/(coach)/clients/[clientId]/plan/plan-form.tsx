'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import { emptyRow, type FormRow, type PlanFormModel, weeksOf } from '#lib/views/plan-form.ts';
import { planWarnings } from '#lib/views/plan-warnings.ts';
import { Field } from '../../_parts/field.tsx';
import styles from '../../_parts/forms.module.css';
import { postJson, textIn } from '../../_parts/post-json.ts';
import { DrillRow } from './drill-row.tsx';

type Refused = { message: string; fields: Record<string, string> };

export function PlanForm({ model }: { model: PlanFormModel }) {
  const router = useRouter();
  const [rows, setRows] = useState(model.rows);
  const [dates, setDates] = useState({ from: model.from, until: model.until });
  const [easyWeeks, setEasyWeeks] = useState<string[]>(model.easyWeeks);
  const [refused, setRefused] = useState<Refused | null>(null);
  const [busy, setBusy] = useState(false);
  const error = (path: string) => refused?.fields[path];
  const weeks = weeksOf(dates.from, dates.until);
  const warnings = planWarnings(plannedDrills(rows, model));

  const change = (key: number, patch: Partial<FormRow>) =>
    setRows((all) => all.map((row) => (row.key === key ? { ...row, ...patch } : row)));
  const add = () =>
    setRows((all) => [
      ...all,
      emptyRow(Math.max(-1, ...all.map((row) => row.key)) + 1, all.at(-1)?.session ?? 'A'),
    ]);

  async function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    setBusy(true);
    const form = new FormData(event.currentTarget);
    const text = (name: string) => String(form.get(name) ?? '');
    const answer = await postJson(`/api/clients/${model.clientId}/plans`, {
      baseVersion: model.baseVersion,
      ...dates,
      sessionsPerWeek: text('sessionsPerWeek'),
      why: text('why'),
      notes: text('notes'),
      easyWeeks: easyWeeks.filter((week) => weeks.some(({ date }) => date === week)),
      items: rows.map(({ key: _key, ladderId: _ladderId, ...item }) => item),
    });
    setBusy(false);
    if (answer.ok) {
      router.push(
        `/clients/${model.clientId}?saved=${textIn(answer.value, 'version') || model.baseVersion + 1}`,
      );
      router.refresh();
    } else {
      setRefused(answer);
      window.scrollTo(0, 0);
    }
  }

  return (
    <form className={styles.wide} onSubmit={send} noValidate>
      {refused ? (
        <p role="alert" className={styles.refusal}>
          {refused.message}
        </p>
      ) : null}
      <div className={styles.inline}>
        <Field id="from" label="First day" error={error('from')}>
          {(control) => (
            <input
              {...control}
              type="date"
              className={styles.date}
              value={dates.from}
              onChange={(event) => setDates({ ...dates, from: event.target.value })}
            />
          )}
        </Field>
        <Field id="until" label="Last day" error={error('until')}>
          {(control) => (
            <input
              {...control}
              type="date"
              className={styles.date}
              value={dates.until}
              onChange={(event) => setDates({ ...dates, until: event.target.value })}
            />
          )}
        </Field>
        <Field id="sessionsPerWeek" label="Sessions a week" error={error('sessionsPerWeek')}>
          {(control) => (
            <input
              {...control}
              name="sessionsPerWeek"
              inputMode="numeric"
              className={styles.short}
              defaultValue={model.sessionsPerWeek}
            />
          )}
        </Field>
      </div>

      <section aria-labelledby="drills">
        <h2 id="drills">Drills</h2>
        {error('items') ? <p className={styles.error}>{error('items')}</p> : null}
        {rows.map((row, index) => (
          <DrillRow
            key={row.key}
            row={row}
            index={index}
            ladders={model.ladders}
            error={(name) => error(`items.${index}.${name}`)}
            onChange={(patch) => change(row.key, patch)}
            onRemove={() => setRows((all) => all.filter((one) => one.key !== row.key))}
          />
        ))}
        <button type="button" className={styles.plain} onClick={add}>
          Add a drill
        </button>
      </section>

      {warnings.length > 0 ? (
        <div role="status" aria-label="To think about before saving">
          <ul className={styles.warnings}>
            {warnings.map((warning) => (
              <li key={warning}>{warning}</li>
            ))}
          </ul>
        </div>
      ) : null}

      <fieldset className={styles.fieldset}>
        <legend>Easy weeks</legend>
        <div className={styles.inline}>
          {weeks.map((week) => (
            <label key={week.date} className={styles.tick}>
              <input
                type="checkbox"
                checked={easyWeeks.includes(week.date)}
                onChange={(event) =>
                  setEasyWeeks((all) =>
                    event.target.checked ? [...all, week.date] : all.filter((date) => date !== week.date),
                  )
                }
              />
              {week.label}
            </label>
          ))}
        </div>
      </fieldset>

      <div className={styles.form}>
        <Field id="why" label="Why this change" error={error('why')}>
          {(control) => <textarea {...control} name="why" rows={2} defaultValue={model.why} />}
        </Field>
        <Field id="notes" label="Words to the client about this plan" error={error('notes')}>
          {(control) => <textarea {...control} name="notes" rows={2} defaultValue={model.notes} />}
        </Field>
        <div className={styles.acts}>
          <button type="submit" className={styles.main} disabled={busy}>
            Save as version {model.baseVersion + 1}
          </button>
          <a className={styles.other} href={`/clients/${model.clientId}`}>
            Leave without saving
          </a>
        </div>
      </div>
    </form>
  );
}

function plannedDrills(rows: FormRow[], model: PlanFormModel) {
  return rows.flatMap((row) => {
    const ladder = model.ladders.find((one) => one.id === row.ladderId);
    return ladder && row.rungId
      ? [{ session: row.session, ladderId: ladder.id, skill: ladder.skill, family: ladder.family }]
      : [];
  });
}
