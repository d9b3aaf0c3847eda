'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import type { StartPage } from '#lib/usecases/start/load-start.ts';
import type { AskLine } from '#lib/views/start/start-page.ts';
import { Field } from '../../_parts/field.tsx';
import forms from '../../_parts/forms.module.css';
import { postJson } from '../../_parts/post-json.ts';
import { RungOptions } from '../../_parts/rung-options.tsx';
import styles from './start.module.css';

/** The tests proposed, to drop, add and send. Nothing is asked until it is sent. */
export function AskForm({ page }: { page: StartPage }) {
  const router = useRouter();
  const [lines, setLines] = useState<AskLine[]>(page.proposed);
  const [more, setMore] = useState('');
  const [words, setWords] = useState('');
  const [allowed, setAllowed] = useState(false);
  const [said, setSaid] = useState('');
  const [busy, setBusy] = useState(false);
  const { ladders } = page;
  const change = (rungId: string, patch: Partial<AskLine>) =>
    setLines((all) => all.map((one) => (one.rungId === rungId ? { ...one, ...patch } : one)));

  function add() {
    const ladder = ladders.find(({ rungs }) => rungs.some(({ id }) => id === more));
    const rung = ladder?.rungs.find(({ id }) => id === more);
    if (!ladder || !rung || lines.some(({ rungId }) => rungId === more)) return;
    const line = {
      ladderId: ladder.id,
      rungId: rung.id,
      sets: rung.sets,
      film: false,
      on: true,
      ladder: ladder.name,
      name: rung.label,
      how: '',
      why: 'Added by you.',
    };
    setLines((all) => [...all, line]);
    setMore('');
  }

  async function send(event: FormEvent) {
    event.preventDefault();
    setBusy(true);
    const tests = lines
      .filter(({ on }) => on)
      .map(({ ladderId, rungId, sets, film }) => ({ ladderId, rungId, sets, film }));
    const kit = page.kit.filter(({ on }) => on).map(({ key }) => key);
    const body = { aims: page.aims, kit, under18Allowed: allowed, tests, words };
    const answer = await postJson(`/api/clients/${page.clientId}/start-tests`, body);
    setBusy(false);
    if (answer.ok) {
      router.push(`/clients/${page.clientId}/start`);
      router.refresh();
    } else setSaid(answer.message);
  }

  const count = lines.filter(({ on }) => on).length;
  return (
    <form className={forms.wide} onSubmit={send}>
      <h2>Tests</h2>
      <p className={forms.hint}>
        Asked one after the other, easiest first. A harder one of a ladder comes up only when the easier one
        was clean to three quarters of its pass mark, and only when what must stand before it stands.
      </p>
      <ul className={styles.tests} aria-label="Tests">
        {lines.map((line) => (
          <li key={line.rungId}>
            <label className={forms.tick}>
              <input
                type="checkbox"
                checked={line.on}
                onChange={() => change(line.rungId, { on: !line.on })}
              />
              <span>
                {line.name}
                <small>
                  {line.ladder}. {line.why} {line.how}
                </small>
              </span>
            </label>
            <label className={forms.tick}>
              <input
                type="checkbox"
                checked={line.film}
                disabled={!line.on}
                aria-label={`Film: ${line.name}`}
                onChange={() => change(line.rungId, { film: !line.film })}
              />
              film
            </label>
          </li>
        ))}
      </ul>
      <div className={styles.add}>
        <Field id="more" label="One more">
          {(control) => (
            <select {...control} value={more} onChange={(event) => setMore(event.target.value)}>
              <option value="">choose a rung</option>
              <RungOptions ladders={ladders} />
            </select>
          )}
        </Field>
        <button type="button" className={forms.other} disabled={more === ''} onClick={add}>
          Add
        </button>
      </div>
      {page.under18 ? (
        <label className={forms.tick}>
          <input type="checkbox" checked={allowed} onChange={() => setAllowed(!allowed)} />I allow this
          client, who is under 18, what opens only so (false grip, back lever)
        </label>
      ) : null}
      <Field id="words" label="Words to the client (can be left out)">
        {(control) => (
          <textarea {...control} rows={2} value={words} onChange={(event) => setWords(event.target.value)} />
        )}
      </Field>
      <div className={forms.acts}>
        <button type="submit" className={forms.main} disabled={busy || count === 0}>
          Send {count === 1 ? 'one test' : `${count} tests`}
        </button>
        <span role="status">{said}</span>
      </div>
    </form>
  );
}
