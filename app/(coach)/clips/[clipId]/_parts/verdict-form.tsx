'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import { FAULT_LABELS } from '#lib/domain/labels.ts';
import { CLIP_VERDICTS, type ClipVerdict, type Fault } from '#lib/domain/vocabulary.ts';
import type { SetToJudge } from '#lib/views/looking/sets-to-judge.ts';
import { verdictInWords } from '#lib/views/looking/verdict-words.ts';
import { Field } from '../../../clients/_parts/field.tsx';
import forms from '../../../clients/_parts/forms.module.css';
import { postJson, textIn } from '../../../clients/_parts/post-json.ts';
import styles from './looking.module.css';

const VERDICT_LABELS: Record<ClipVerdict, string> = {
  clean: 'clean',
  'not-clean': 'not clean',
  'cannot-see': 'cannot see',
};

export type Judged = {
  sets: SetToJudge[];
  first: string;
  faults: Fault[];
  /** What clean means on this ladder. */
  clean: string;
  looked: string;
  /** Something was said of the film: it cannot wait again. */
  hasWords: boolean;
};
type Props = Judged & { clipId: string };

/** What a set looked like, kept beside what the client told; and what was said of sets before, with its undo. */
export function VerdictForm({ clipId, sets, first, faults, clean, looked, hasWords }: Props) {
  const router = useRouter();
  const [set, setSet] = useState(first);
  const [verdict, setVerdict] = useState<ClipVerdict | null>(null);
  const [named, setNamed] = useState<Fault[]>([]);
  const [said, setSaid] = useState('');
  const [refused, setRefused] = useState('');
  const [busy, setBusy] = useState(false);

  async function post(body: object) {
    setBusy(true);
    const answer = await postJson(`/api/clips/${clipId}/verdict`, body);
    setBusy(false);
    setRefused(answer.ok ? '' : answer.message);
    setSaid(answer.ok ? textIn(answer.value, 'line') : '');
    if (answer.ok) router.refresh();
    return answer.ok;
  }
  async function keep(event: FormEvent) {
    event.preventDefault();
    const place = sets.find(({ key }) => key === set)?.place;
    if (!place || !verdict) return setRefused('Choose a set, and what it looked like.');
    const kept = await post({
      act: 'verdict',
      set: place,
      verdict,
      faults: verdict === 'not-clean' ? named : [],
    });
    if (!kept) return;
    setVerdict(null);
    setNamed([]);
  }
  const seen = sets.filter((one) => one.seen);
  return (
    <section aria-labelledby="sets-head">
      <h2 id="sets-head">What the sets look like</h2>
      {clean && (
        <p className={styles.clean}>
          <b>Clean here:</b> {clean}
        </p>
      )}
      <form className={forms.form} onSubmit={(event) => void keep(event)}>
        <Field id="set-judged" label="Set">
          {(control) => (
            <select {...control} value={set} onChange={(event) => setSet(event.target.value)}>
              {sets.map(({ key, label, told }) => (
                <option key={key} value={key}>
                  {told ? `${label}, ${told}` : label}
                </option>
              ))}
            </select>
          )}
        </Field>
        <fieldset className={forms.fieldset}>
          <legend>On this film it is</legend>
          <div className={styles.verdicts}>
            {CLIP_VERDICTS.map((one) => (
              <label key={one} className={`${forms.tick} ${forms.choice}`}>
                <input
                  type="radio"
                  name="verdict"
                  checked={verdict === one}
                  onChange={() => setVerdict(one)}
                />
                {VERDICT_LABELS[one]}
              </label>
            ))}
          </div>
        </fieldset>
        {verdict === 'not-clean' && (
          <fieldset className={forms.fieldset}>
            <legend>What is seen</legend>
            <div className={styles.faults}>
              {faults.map((fault) => (
                <label key={fault} className={forms.tick}>
                  <input
                    type="checkbox"
                    checked={named.includes(fault)}
                    onChange={(event) =>
                      setNamed(
                        event.target.checked ? [...named, fault] : named.filter((one) => one !== fault),
                      )
                    }
                  />
                  {FAULT_LABELS[fault]}
                </label>
              ))}
            </div>
          </fieldset>
        )}
        <div className={forms.acts}>
          <button type="submit" className={forms.main} disabled={busy}>
            Keep
          </button>
          {!looked && (
            <button
              type="button"
              className={forms.other}
              disabled={busy}
              onClick={() => void post({ act: 'looked' })}
            >
              Looked at, nothing to say
            </button>
          )}
          <span role="status">{said}</span>
        </div>
        {refused && (
          <p role="alert" className={forms.error}>
            {refused}
          </p>
        )}
      </form>
      {seen.length > 0 && (
        <ul className={styles.list} aria-label="Seen on this film">
          {seen.map(
            ({ key, label, told, seen: one }) =>
              one && (
                <li key={key}>
                  <span>
                    {label}: <b>{verdictInWords(one)}</b>
                    {told && <span className={styles.hint}> ({told})</span>}, {one.by}
                  </span>
                  <button
                    type="button"
                    className={forms.plain}
                    disabled={busy}
                    onClick={() => void post({ act: 'undo', id: one.id })}
                  >
                    Undo<span className="heard-only"> of {label}</span>
                  </button>
                </li>
              ),
          )}
        </ul>
      )}
      {looked && (
        <p className={styles.hint}>
          {looked}{' '}
          {seen.length === 0 && !hasWords && (
            <button
              type="button"
              className={forms.plain}
              disabled={busy}
              onClick={() => void post({ act: 'undo', id: clipId })}
            >
              Let it wait again
            </button>
          )}
        </p>
      )}
    </section>
  );
}
