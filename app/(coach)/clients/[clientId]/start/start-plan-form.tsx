'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import type { AskedTests, StartPage } from '#lib/usecases/start/load-start.ts';
import { Field } from '../../_parts/field.tsx';
import forms from '../../_parts/forms.module.css';
import { postJson, textIn } from '../../_parts/post-json.ts';
import styles from './start.module.css';

/** Four weeks from a kept plan of the team with the client's own rungs; without one the fewest drills. */
export function StartPlanForm({ page, tests }: { page: StartPage; tests: AskedTests }) {
  const router = useRouter();
  const [templateId, setTemplateId] = useState(page.templates.find(({ fits }) => fits > 0)?.id ?? '');
  const [said, setSaid] = useState('');
  const [later, setLater] = useState('');
  const [busy, setBusy] = useState(false);
  const fit = page.templates.find(({ id }) => id === templateId);

  async function make(how: 'draft' | 'save') {
    setBusy(true);
    const answer = await postJson(`/api/clients/${page.clientId}/start-tests/${tests.id}/plan`, {
      templateId,
      how,
    });
    setBusy(false);
    if (!answer.ok) {
      setSaid(answer.message);
      return;
    }
    setLater(textIn(answer.value, 'laterAddress'));
    const address = textIn(answer.value, 'address');
    if (textIn(answer.value, 'laterAddress') === '') router.push(address);
    else {
      setSaid('Two drafts are made.');
      setFirst(address);
    }
  }
  const [first, setFirst] = useState('');
  return (
    <section className={styles.section} aria-labelledby="start-plan">
      <h2 id="start-plan">Start plan of four weeks</h2>
      <p className={forms.hint}>
        Each line of a kept plan on the client’s own rung, only what can be done with the kit at hand and is
        not ruled out. The first week has two sets fewer than the dose (common practice, no source). The plan
        editor shows what it comes to against the told usual week.
        {tests.placedOn ? '' : ' Place first: until then it goes by the rungs proposed.'}
      </p>
      <Field id="template" label="From">
        {(control) => (
          <select {...control} value={templateId} onChange={(event) => setTemplateId(event.target.value)}>
            {page.templates.map((one) => (
              <option key={one.id} value={one.id}>
                {one.name}: {one.fits} of {one.of} lines fit
              </option>
            ))}
            <option value="">No kept plan: the fewest drills for the first skill</option>
          </select>
        )}
      </Field>
      {fit?.foreseen.map((line) => (
        <p key={line}>{line}</p>
      ))}
      {fit && fit.leftOut.length > 0 ? (
        <details>
          <summary>Left out: {fit.leftOut.length}</summary>
          <ul>
            {fit.leftOut.map((line) => (
              <li key={line}>{line}.</li>
            ))}
          </ul>
        </details>
      ) : null}
      <div className={forms.acts}>
        <button type="button" className={forms.main} disabled={busy} onClick={() => void make('draft')}>
          Open as a draft
        </button>
        {fit ? (
          <button
            type="button"
            className={forms.other}
            disabled={busy || fit.fits === 0}
            onClick={() => void make('save')}
          >
            Save the plan
          </button>
        ) : null}
        <span role="status">{said}</span>
      </div>
      {first ? (
        <p>
          <a href={first}>First week in the plan editor</a>; when it is saved,{' '}
          <a href={later}>from the second week on</a>.
        </p>
      ) : null}
    </section>
  );
}
