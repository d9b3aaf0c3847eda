'use client';

import { type FormEvent, useState } from 'react';
import { REGION_LABELS } from '#lib/domain/labels.ts';
import { PAIN_REGIONS, PAIN_SIDES } from '#lib/domain/vocabulary.ts';
import type { LookedAt } from '#lib/usecases/import/log/import-log.ts';
import type { DateOrder } from '#lib/usecases/import/log/log-date.ts';
import type { LogMapping } from '#lib/usecases/import/log/shape-log.ts';
import { LOG_COLUMN_LABELS, LOG_COLUMNS, type LogColumn } from '#lib/views/old-log/log-columns.ts';
import { Field } from '../../_parts/field.tsx';
import forms from '../../_parts/forms.module.css';
import styles from './log.module.css';

type Props = {
  looked: LookedAt;
  busy: boolean;
  look: (columns: LogMapping['columns']) => void;
  check: (mapping: LogMapping) => void;
};

const ORDERS: Record<DateOrder, string> = {
  'year-first': 'year, month, day: 2025-03-31',
  'day-first': 'day, month, year: 31.3.2025',
  'month-first': 'month, day, year: 3/31/2025',
};

/** What each column and each drill of the log is, by examples from it. */
export function MatchLog({ looked, busy, look, check }: Props) {
  const columns = looked.columns.map(({ means }) => means);
  // What was chosen by hand; the rest is as it was guessed, also of drills that came with another column.
  const [chosen, setChosen] = useState<Record<string, string>>({});
  const rungs = { ...namesOf(looked), ...chosen };
  const byName = new Map(looked.rungs.map(({ id, name }) => [name, id]));
  const unknown = looked.drills.filter(({ word }) => rungs[word] && !byName.has(rungs[word] ?? ''));

  function change(at: number, means: LogColumn) {
    look(columns.map((one, index) => (index === at ? means : one)));
  }
  function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const order = String(form.get('order') ?? '') as DateOrder;
    check({
      columns,
      dateOrder: order,
      drills: looked.drills.map(({ word }) => ({ word, rungId: byName.get(rungs[word] ?? '') ?? null })),
      pain: columns.includes('pain')
        ? ({ region: form.get('region'), side: form.get('side') } as LogMapping['pain'])
        : null,
    });
  }
  return (
    <form onSubmit={send} aria-labelledby="log-columns">
      <h2 id="log-columns">What its columns are</h2>
      <p className={styles.note}>
        {looked.rows} rows. The examples are the first different ones of each column.
      </p>
      <div className={styles.columns}>
        {looked.columns.map(({ head, examples, means }, at) => (
          <Field
            // biome-ignore lint/suspicious/noArrayIndexKey: two columns may have one name
            key={at}
            id={`column-${at}`}
            label={head || `column ${at + 1}`}
            hint={examples.length > 0 ? examples.join(' · ') : 'empty'}
          >
            {(control) => (
              <select
                {...control}
                value={means}
                disabled={busy}
                onChange={(event) => change(at, event.target.value as LogColumn)}
              >
                {LOG_COLUMNS.map((column) => (
                  <option key={column} value={column}>
                    {LOG_COLUMN_LABELS[column]}
                  </option>
                ))}
              </select>
            )}
          </Field>
        ))}
      </div>
      {columns.includes('date') && <Orders orders={looked.dateOrders} />}
      {columns.includes('pain') && <PainPlace />}
      {looked.drills.length > 0 && (
        <section aria-labelledby="log-drills">
          <h2 id="log-drills">What its drills are</h2>
          <p className={styles.note}>
            Choose the rung that each wording means. Left empty, its rows are kept among the words of their
            day and count for no check.
          </p>
          <datalist id="log-rungs">
            {looked.rungs.map(({ id, name }) => (
              <option key={id} value={name} />
            ))}
          </datalist>
          <div className={styles.columns}>
            {looked.drills.map(({ word, rows, example }, at) => (
              <Field
                key={word}
                id={`drill-${at}`}
                label={word}
                hint={`${rows} ${rows === 1 ? 'row' : 'rows'}${example ? `, such as ${example}` : ''}`}
                error={unknown.some((one) => one.word === word) ? 'is no rung of your ladders' : undefined}
              >
                {(control) => (
                  <input
                    {...control}
                    list="log-rungs"
                    autoComplete="off"
                    value={rungs[word] ?? ''}
                    onChange={(event) => setChosen({ ...chosen, [word]: event.target.value })}
                  />
                )}
              </Field>
            ))}
          </div>
        </section>
      )}
      <div className={`${forms.acts} ${styles.acts}`}>
        <button type="submit" className={forms.main} disabled={busy || unknown.length > 0}>
          Look through the days
        </button>
      </div>
    </form>
  );
}

function Orders({ orders }: { orders: DateOrder[] }) {
  const [only] = orders;
  if (orders.length === 1 && only)
    return (
      <p className={styles.note}>
        <input type="hidden" name="order" value={only} />
        Dates are written {ORDERS[only]}.
      </p>
    );
  if (orders.length === 0)
    return (
      <p className={styles.note}>
        <input type="hidden" name="order" value="year-first" />
        Not every row has a day that can be read; the days show which.
      </p>
    );
  return (
    <fieldset className={`${forms.fieldset} ${styles.acts}`}>
      <legend>Dates such as 03/04/2025 can be read two ways. Which is it?</legend>
      {orders.map((order) => (
        <label key={order} className={`${forms.tick} ${forms.choice}`}>
          <input type="radio" name="order" value={order} required /> {ORDERS[order]}
        </label>
      ))}
    </fieldset>
  );
}

function PainPlace() {
  return (
    <div className={`${forms.inline} ${styles.place}`}>
      <Field id="pain-region" label="The pain column speaks of">
        {(control) => (
          <select {...control} name="region" required defaultValue="">
            <option value="" disabled>
              choose a place
            </option>
            {PAIN_REGIONS.map((region) => (
              <option key={region} value={region}>
                {REGION_LABELS[region]}
              </option>
            ))}
          </select>
        )}
      </Field>
      <Field id="pain-side" label="Side">
        {(control) => (
          <select {...control} name="side" required>
            {PAIN_SIDES.map((side) => (
              <option key={side} value={side}>
                {side}
              </option>
            ))}
          </select>
        )}
      </Field>
    </div>
  );
}

function namesOf({ drills, rungs }: LookedAt): Record<string, string> {
  const byId = new Map(rungs.map(({ id, name }) => [id, name]));
  return Object.fromEntries(drills.map(({ word, rungId }) => [word, byId.get(rungId ?? '') ?? '']));
}
