import type { PlanVersionLine } from '#lib/views/plan-form.ts';

/** Every version that was ever saved, newest first; none is rewritten. */
export function PlanVersions({ versions }: { versions: PlanVersionLine[] }) {
  if (versions.length === 0) return null;
  return (
    <section aria-labelledby="versions" id="all-versions">
      <h2 id="versions">Versions</h2>
      {versions.map((version) => (
        <details key={version.title}>
          <summary>
            {version.title}
            {version.why ? `: ${version.why}` : ''}
          </summary>
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
