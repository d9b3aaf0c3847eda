'use client';
import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import { Field } from '../clients/_parts/field.tsx';
import { postJson } from '../clients/_parts/post-json.ts';
import styles from '../replies/_parts/replies.module.css';

type Props = { mail: 'off' | 'when-new' | 'always'; hour: number; zone: string; zones: string[] };
const CHOICES = [
  {
    value: 'when-new',
    word: 'When something is new',
    says: 'A reason raised, reopened or worse, a question, a client the night missed, or anything in “now”.',
  },
  { value: 'always', word: 'Every morning', says: 'Also when the checks found nothing.' },
  { value: 'off', word: 'Never', says: 'The board says the same.' },
] as const;
const HOURS = Array.from({ length: 24 }, (_, hour) => hour);

export function MorningForm({ mail, hour, zone, zones }: Props) {
  const router = useRouter();
  const [said, setSaid] = useState('');
  const [problem, setProblem] = useState('');
  async function onSubmit(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const answer = await postJson('/api/morning-mail', Object.fromEntries(form));
    setSaid(answer.ok ? 'Set.' : '');
    setProblem(answer.ok ? '' : (Object.values(answer.fields)[0] ?? answer.message));
    if (answer.ok) router.refresh();
  }
  return (
    <form className={styles.form} onSubmit={onSubmit}>
      <fieldset>
        <legend>When it comes</legend>
        {CHOICES.map(({ value, word, says }) => (
          <label key={value} className={styles.tick}>
            <input type="radio" name="mail" value={value} defaultChecked={value === mail} />
            <span>
              <b>{word}.</b> {says}
            </span>
          </label>
        ))}
      </fieldset>
      <div className={styles.inline}>
        <Field id="morning-hour" label="From">
          {(control) => (
            <select {...control} name="hour" defaultValue={hour}>
              {HOURS.map((one) => (
                <option key={one} value={one}>{`${String(one).padStart(2, '0')}:00`}</option>
              ))}
            </select>
          )}
        </Field>
        <Field id="morning-zone" label="Your time zone">
          {(control) => (
            <select {...control} name="zone" defaultValue={zone}>
              {zones.map((one) => (
                <option key={one}>{one}</option>
              ))}
            </select>
          )}
        </Field>
      </div>
      <p className={styles.hint}>Your time zone also says what the board calls today.</p>
      <p className={styles.acted}>
        <button type="submit" data-filled>
          Set
        </button>
        <span role="status">{said}</span>
      </p>
      <p role="alert" className={styles.problem}>
        {problem}
      </p>
    </form>
  );
}
