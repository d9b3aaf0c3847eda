'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import type { AskedTests, StartPage } from '#lib/usecases/start/load-start.ts';
import forms from '../../_parts/forms.module.css';
import { postJson } from '../../_parts/post-json.ts';
import styles from './start.module.css';

/** What is asked and what came of it, with the way to take it back. */
export function Came({ page, tests }: { page: StartPage; tests: AskedTests }) {
  const router = useRouter();
  const [said, setSaid] = useState('');
  async function takeBack() {
    const answer = await postJson(`/api/clients/${page.clientId}/start-tests/${tests.id}/end`, {});
    if (answer.ok) router.refresh();
    else setSaid(answer.message);
  }
  return (
    <section className={styles.section} aria-labelledby="came">
      <h2 id="came">What came</h2>
      <div className={styles.scroll}>
        <table className={styles.came}>
          <thead>
            <tr>
              <th scope="col">Test</th>
              <th scope="col">Ladder</th>
              <th scope="col">Result</th>
            </tr>
          </thead>
          <tbody>
            {tests.came.map((line) => (
              <tr key={line.key} data-state={line.state}>
                <th scope="row">{line.name}</th>
                <td>{line.ladder}</td>
                <td>{line.said}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {page.mayEdit && tests.placedOn === null ? (
        <div className={forms.acts}>
          <button type="button" className={forms.other} onClick={() => void takeBack()}>
            Take the tests back
          </button>
          <span role="status">{said}</span>
        </div>
      ) : null}
    </section>
  );
}
