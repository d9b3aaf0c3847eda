'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import type { AskedTests, StartPage } from '#lib/usecases/start/load-start.ts';
import forms from '../../_parts/forms.module.css';
import { postJson } from '../../_parts/post-json.ts';
import styles from './start.module.css';

/** The rungs proposed with why, each to be changed, all taken in one act; and the way back while no plan stands on it. */
export function PlaceForm({ page, tests }: { page: StartPage; tests: AskedTests }) {
  const router = useRouter();
  const [rungs, setRungs] = useState(() => new Map(tests.places.map(({ key, rungId }) => [key, rungId])));
  const [said, setSaid] = useState('');
  const [busy, setBusy] = useState(false);
  const address = `/api/clients/${page.clientId}/start-tests/${tests.id}`;
  const isPlaced = tests.placedOn !== null;

  async function post(path: string, body: object, done: string) {
    setBusy(true);
    const answer = await postJson(`${address}/${path}`, body);
    setBusy(false);
    setSaid(answer.ok ? done : answer.message);
    if (answer.ok) router.refresh();
  }
  const places = tests.places.map(({ key, ladderId, side }) => ({
    ladderId,
    side,
    rungId: rungs.get(key) ?? '',
  }));
  const count = places.filter(({ rungId }) => rungId !== '').length;
  return (
    <section className={styles.section} aria-labelledby="places">
      <h2 id="places">{isPlaced ? 'Where the tests placed' : 'Proposed rungs'}</h2>
      <p className={forms.hint}>
        The highest rung whose pass mark was met or came to three quarters, clean and without pain of 3 or
        more (common practice, no source), never above one that is not open.
        {tests.done || isPlaced ? '' : ` Not all is answered yet: ${tests.left} to go.`}
      </p>
      <ul className={styles.places}>
        {tests.places.map((place) => (
          <li key={place.key}>
            <label>
              <span>{place.ladder}</span>
              <select
                value={rungs.get(place.key) ?? ''}
                disabled={isPlaced || !page.mayEdit}
                onChange={(event) => setRungs(new Map(rungs).set(place.key, event.target.value))}
              >
                <option value="">on none for now</option>
                {place.rungs.map((rung) => (
                  <option key={rung.id} value={rung.id}>
                    {rung.label}
                  </option>
                ))}
              </select>
            </label>
            <p>
              {place.why}
              {place.doubts.map((doubt) => (
                <strong key={doubt}> {doubt}</strong>
              ))}
            </p>
          </li>
        ))}
      </ul>
      {page.mayEdit ? (
        <div className={forms.acts}>
          {isPlaced ? (
            <button
              type="button"
              className={forms.other}
              disabled={busy}
              onClick={() => void post('undo', {}, 'The placing is taken back.')}
            >
              Undo the placing
            </button>
          ) : (
            <button
              type="button"
              className={forms.main}
              disabled={busy || count === 0}
              onClick={() => void post('place', { places }, 'Placed.')}
            >
              Place on {count === 1 ? 'one rung' : `all ${count} rungs`}
            </button>
          )}
          <span role="status">{said}</span>
        </div>
      ) : null}
    </section>
  );
}
