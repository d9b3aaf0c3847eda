import type { PlanVersionLine } from '#lib/views/plan-form.ts';
import styles from './plan.module.css';

/** Every version that was ever saved, newest first, with what it changed; none is rewritten. */
export function PlanVersions({ versions }: { versions: PlanVersionLine[] }) {
  if (versions.length === 0) return null;
  return (
    <section aria-labelledby="versions" id="all-versions" className={styles.versions}>
      <h2 id="versions">Versions</h2>
      {versions.map((version, index) => (
        <details key={version.version} open={index === 0}>
          <summary>
            {version.title}
            {version.why ? `: ${version.why}` : ''}
          </summary>
          {version.version > 1 ? (
            <>
              <h3>Changed against version {version.version - 1}</h3>
              {version.changes.length > 0 ? (
                <ul>
                  {version.changes.map((line) => (
                    <li key={line}>{line}</li>
                  ))}
                </ul>
              ) : (
                <p>Nothing in drills, sessions, weeks or focus.</p>
              )}
            </>
          ) : null}
          <h3>The whole plan</h3>
          <ul>
            {version.lines.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </details>
      ))}
    </section>
  );
}
