import { asSentence } from '#lib/domain/labels.ts';
import type { PlanChange } from '#lib/usecases/own-plan-changes.ts';
import { dayAsSaid } from '#lib/views/phone-dates.ts';
import { unbrokenDose } from '#lib/views/unbroken-dose.ts';

/** The last versions of the plan: since when, and what became different. */
export function PlanChanges({ changes, today }: { changes: PlanChange[]; today: string }) {
  if (changes.length === 0) return null;
  return (
    <section className="ladder-block">
      <h2>What changed in my plan</h2>
      {changes.map(({ version, from, by, notes, lines }) => (
        <div key={version} className="plan-change">
          <h3>
            {asSentence(dayAsSaid(from, today))}
            {by ? `, ${by}` : ''}
          </h3>
          {lines.length > 0 ? (
            <ul>
              {lines.map((line) => (
                <li key={line}>{unbrokenDose(line)}</li>
              ))}
            </ul>
          ) : (
            <p className="quiet">{version === 1 ? 'The first plan.' : 'The same drills.'}</p>
          )}
          {notes ? <blockquote>“{notes}”</blockquote> : null}
        </div>
      ))}
    </section>
  );
}
