import type { ReactNode } from 'react';
import type { ReasonLoaded } from '#lib/usecases/load-reason.ts';
import type { WorkingView } from '#lib/views/working/working.ts';
import { Windows } from '../../_page/windows.tsx';
import styles from './working.module.css';

type Props = { loaded: ReasonLoaded; view: WorkingView; children: ReactNode };

/** Right of the line: what would clear it, what to do, what became of it, what loaded it, what it does not say. */
export function BesideWorking({ loaded, view, children }: Props) {
  const { reason } = loaded;
  return (
    <aside className={styles.right} aria-label="What to do with it">
      <h2>{reason.closedAt === null ? 'What would clear it' : 'What would have cleared it'}</h2>
      <p className={styles.sentence}>{view.clears}</p>
      <h2>Proposed next step</h2>
      <p>{reason.step.text}</p>
      {children}
      <Since loaded={loaded} />
      {view.loaded.length > 0 ? (
        <>
          <h2>What loaded it</h2>
          <ul className={styles.plain}>
            {view.loaded.map((one) => (
              <li key={one.name}>
                {one.name} <b>{one.said}</b>
              </li>
            ))}
          </ul>
        </>
      ) : null}
      <h2>What this does not say</h2>
      <p>{view.doubt}</p>
      {view.criticism ? (
        <details>
          <summary>Known criticism of load ratios</summary>
          <p>{view.criticism.said}</p>
          <ul className={styles.sources}>
            {view.criticism.sources.map((source) => (
              <li key={source}>{source}</li>
            ))}
          </ul>
        </details>
      ) : null}
      <Verdicts loaded={loaded} />
    </aside>
  );
}

/** What was tried, or that nothing was, and what was so many days later. */
function Since({ loaded: { tried, alone, reason } }: { loaded: ReasonLoaded }) {
  if (tried.length === 0 && alone.length === 0) return null;
  return (
    <>
      <h2 id="since">Better since?</h2>
      {tried.map((step) => (
        <div key={step.id}>
          <p>
            <b>{step.what}</b> on <span title={step.exact}>{step.when}</span>, {step.by}.
            {step.words && step.words !== reason.step.text ? ` ${step.words}` : ''}
          </p>
          {step.windows.length > 0 ? <Windows windows={step.windows} /> : <p>{step.notFollowed}</p>}
        </div>
      ))}
      {alone.length > 0 ? (
        <>
          <p>Nothing was done about it.</p>
          <Windows windows={alone} />
        </>
      ) : null}
    </>
  );
}

/** How often this kind was right to tell in this team, and what was said of this one. Counts only. */
function Verdicts({ loaded: { verdicts, reason } }: { loaded: ReasonLoaded }) {
  const all = verdicts.right + verdicts.notNeeded;
  return (
    <>
      <h2>Was it right to tell?</h2>
      {reason.verdicts.map((verdict) => (
        <p key={`${verdict.by} ${verdict.text}`}>
          {verdict.by}: {verdict.rightToTell ? 'right to tell' : 'not needed'}
          {verdict.text ? `, “${verdict.text}”` : ''}
        </p>
      ))}
      <p>
        {all === 0
          ? 'Nobody in the team has said it of this kind yet.'
          : `This kind so far in the team: right to tell ${verdicts.right}, not needed ${verdicts.notNeeded}.`}
      </p>
    </>
  );
}
