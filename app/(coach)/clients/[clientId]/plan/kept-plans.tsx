'use client';

import { useRouter } from 'next/navigation';
import { useRef, useState } from 'react';
import forms from '../../_parts/forms.module.css';
import { postJson } from '../../_parts/post-json.ts';
import styles from './plan.module.css';

type Named = { id: string; name: string };

/** The kept plans by name, each to be deleted after a question: it cannot be brought back. */
export function KeptPlans({ templates }: { templates: Named[] }) {
  const router = useRouter();
  const [asked, setAsked] = useState<string | null>(null);
  const [said, setSaid] = useState({ done: '', error: '' });
  const [busy, setBusy] = useState(false);
  const status = useRef<HTMLParagraphElement>(null);

  async function drop({ id, name }: Named) {
    setBusy(true);
    const answer = await postJson(`/api/plan-templates/${id}/delete`, {});
    setBusy(false);
    setAsked(null);
    setSaid(answer.ok ? { done: `“${name}” was deleted.`, error: '' } : { done: '', error: answer.message });
    status.current?.focus();
    router.refresh();
  }

  return (
    <section aria-labelledby="kept-plans" className={styles.kept}>
      <h2 id="kept-plans">Kept plans</h2>
      <ul>
        {templates.map((one) => (
          <li key={one.id}>
            <span>{one.name}</span>
            {asked === one.id ? (
              <Question
                name={one.name}
                busy={busy}
                onAgree={() => drop(one)}
                onLeave={() => {
                  setAsked(null);
                  requestAnimationFrame(() => document.getElementById(`delete-${one.id}`)?.focus());
                }}
              />
            ) : (
              <button
                id={`delete-${one.id}`}
                type="button"
                onClick={() => setAsked(one.id)}
                aria-label={`Delete: ${one.name}`}
              >
                Delete
              </button>
            )}
          </li>
        ))}
      </ul>
      <p role="status" ref={status} tabIndex={-1} className={said.error ? forms.error : undefined}>
        {said.error || said.done}
      </p>
    </section>
  );
}

type Asking = { name: string; busy: boolean; onAgree: () => void; onLeave: () => void };

function Question({ name, busy, onAgree, onLeave }: Asking) {
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot stand in one line with the name in every browser
    <div
      role="group"
      aria-label={`Delete “${name}”?`}
      className={styles.acts}
      onKeyDown={(event) => event.key === 'Escape' && onLeave()}
    >
      <span>Delete it for good? Plans copied from it stay.</span>
      <button type="button" disabled={busy} onClick={onAgree} aria-label={`Delete it: ${name}`}>
        Delete it
      </button>
      <button
        type="button"
        onClick={onLeave}
        aria-label={`Leave it: ${name}`}
        // biome-ignore lint/a11y/noAutofocus: the button that was pressed is gone, the question stands in its place
        autoFocus
      >
        Leave it
      </button>
    </div>
  );
}
