import Link from 'next/link';
import type { StepTried } from '#lib/views/steps/steps-tried.ts';
import styles from './steps-tried.module.css';
import { Windows } from './windows.tsx';

/** What was tried for this client, and what was so many days later. Better since, never because of it. */
export function StepsTried({ clientId, steps }: { clientId: string; steps: StepTried[] }) {
  const followed = steps.filter((step) => step.windows.length > 0);
  const others = steps.filter((step) => step.windows.length === 0);
  return (
    <section className={styles.section} aria-labelledby="steps-tried">
      <h2 id="steps-tried">Steps tried, and what was since</h2>
      {steps.length === 0 ? (
        <p>No step was taken yet. One taken on the board is followed from that day on, here.</p>
      ) : (
        <>
          <Steps clientId={clientId} steps={followed} />
          {others.length > 0 ? (
            <details open={followed.length === 0 && others.length <= FEW}>
              <summary>
                {others.length} {others.length === 1 ? 'step that is' : 'steps that are'} not followed
              </summary>
              <Steps clientId={clientId} steps={others} />
            </details>
          ) : null}
        </>
      )}
    </section>
  );
}

/** So few stand in the open where nothing else does. */
const FEW = 3;

function Steps({ clientId, steps }: { clientId: string; steps: StepTried[] }) {
  return (
    <ol className={styles.steps}>
      {steps.map((step) => (
        <li key={step.id}>
          <div className={styles.when}>
            <strong title={step.exact}>{step.when}</strong>
            <span>{step.by}</span>
          </div>
          <div>
            <p className={styles.what}>
              {step.reasonId ? (
                <Link href={`/clients/${clientId}/reasons/${step.reasonId}`}>{step.what}</Link>
              ) : (
                step.what
              )}
            </p>
            {step.words ? <p>{step.words}</p> : null}
            {step.windows.length > 0 ? <Windows windows={step.windows} /> : <p>{step.notFollowed}</p>}
          </div>
        </li>
      ))}
    </ol>
  );
}
