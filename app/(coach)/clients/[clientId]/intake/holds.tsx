import type { StartPage } from '#lib/usecases/intake/load-start-page.ts';
import styles from './intake.module.css';
import { ToldWordForm } from './told-word-form.tsx';

/** What a yes holds, with the form that records the word it waits for; then the words on record. */
export function Holds({ page, mayEdit }: { page: StartPage; mayEdit: boolean }) {
  return (
    <>
      <h2>Waits for a clinician’s word</h2>
      {page.holds.length === 0 ? <p className={styles.said}>Nothing is held.</p> : null}
      <ul className={styles.lines}>
        {page.holds.map(({ told, what, since }) => (
          <li key={told}>
            <strong>{what}</strong>: {since}.
            {mayEdit ? <ToldWordForm clientId={page.id} told={told} what={what} today={page.today} /> : null}
          </li>
        ))}
      </ul>
      {page.words.length > 0 ? (
        <>
          <h3>Words on record</h3>
          <ul className={styles.lines}>
            {page.words.map(({ key, what, said, words }) => (
              <li key={key}>
                <strong>{what}</strong>: {said}. “{words}”
              </li>
            ))}
          </ul>
        </>
      ) : null}
    </>
  );
}
