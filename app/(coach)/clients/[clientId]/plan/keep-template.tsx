'use client';

import { useState } from 'react';
import { templateBody } from '#lib/views/plan-body.ts';
import { Field } from '../../_parts/field.tsx';
import { postJson } from '../../_parts/post-json.ts';
import styles from './plan.module.css';
import type { Plan } from './use-plan.ts';

/** Keeps what is in the form under a name, for other clients; the plan of this client is not saved by it. */
export function KeepTemplate({ plan }: { plan: Plan }) {
  const [name, setName] = useState('');
  const [said, setSaid] = useState({ done: '', error: '' });
  const [busy, setBusy] = useState(false);

  async function keep() {
    setBusy(true);
    const answer = await postJson('/api/plan-templates', { name, body: templateBody(plan.typed) });
    setBusy(false);
    setSaid(
      answer.ok
        ? { done: `Kept as “${name.trim()}”. It can be copied into the plan of any client.`, error: '' }
        : { done: '', error: answer.fields.name ?? answer.message },
    );
  }

  return (
    <details className={styles.startFrom}>
      <summary>Keep this plan for other clients</summary>
      <div className={styles.choice}>
        <Field id="template-name" label="Name" error={said.error || undefined}>
          {(control) => (
            <input
              {...control}
              value={name}
              maxLength={100}
              onChange={(event) => setName(event.target.value)}
            />
          )}
        </Field>
        <button type="button" onClick={keep} disabled={busy}>
          Keep it
        </button>
      </div>
      <p role="status">{said.done}</p>
    </details>
  );
}
