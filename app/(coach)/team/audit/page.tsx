import Link from 'next/link';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { auditFilter } from '#lib/schemas/rights.ts';
import { loadAudit } from '#lib/usecases/rights/load-audit.ts';
import { momentAsSaid } from '#lib/views/phone-dates.ts';
import { auditWords, byWhom } from '#lib/views/rights/audit-words.ts';
import forms from '../../clients/_parts/forms.module.css';
import styles from './audit.module.css';
import { AuditFilters } from './audit-filters.tsx';

export const metadata = { title: 'Record of acts' };

type Props = { searchParams: Promise<Record<string, string | string[] | undefined>> };

/** Who looked, what was taken out, who may do what, what was deleted: lines that nobody can change. */
export default async function AuditPage({ searchParams }: Props) {
  const actor = await requireActor('keep-records');
  const filter = auditFilter.parse(await searchParams);
  const at = now();
  const page = await loadAudit(actor, filter, at);
  const kept = new URLSearchParams(
    Object.entries({ kind: filter.kind, client: filter.client, who: filter.who }).flatMap(([key, value]) =>
      value ? [[key, value]] : [],
    ),
  );
  return (
    <main id="main" tabIndex={-1} className={forms.page}>
      <h1>Record of acts</h1>
      <p className={forms.lead}>
        Every line was written with the act and is never changed, by nobody. A client sees the lines about
        their own record. Looking at a record stands here once an hour for each person.{' '}
        <Link href="/team/records">How long records are kept</Link>
      </p>
      <AuditFilters filter={filter} clients={page.clients} members={page.members} />
      {page.lines.length === 0 ? <p>No line fits this. Choose everything, of everybody.</p> : null}
      <ul className={styles.lines}>
        {page.lines.map((line) => (
          <li key={line.id}>
            <time dateTime={line.at.toISOString()}>{momentAsSaid(line.at, page.zone, at)}</time>
            <span>
              <b>{byWhom(line)}</b> {auditWords(line)}
              {line.fields.length > 0 && line.action !== 'record-read' ? (
                <small> ({line.fields.join(', ')})</small>
              ) : null}
            </span>
          </li>
        ))}
      </ul>
      <p className={styles.pages}>
        {filter.before ? <Link href={`/team/audit?${kept}`}>Newest lines</Link> : null}
        {page.older ? <Link href={`/team/audit?${kept}&before=${page.older}`}>Older lines</Link> : null}
      </p>
    </main>
  );
}
