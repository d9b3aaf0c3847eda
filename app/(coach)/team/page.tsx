import Link from 'next/link';
import { may } from '#lib/auth/permissions.ts';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { loadTeam } from '#lib/usecases/team/load-team.ts';
import { coverLines, invitationLines, memberLines, ROLE_MEANINGS } from '#lib/views/team-page.ts';
import forms from '../clients/_parts/forms.module.css';
import { Covers } from './_parts/covers.tsx';
import { Invitations } from './_parts/invite.tsx';
import { MemberRows } from './_parts/member-rows.tsx';
import styles from './_parts/team.module.css';

export const metadata = { title: 'Team' };

/** Who is in the team, who has whose clients, who is asked in. Everybody reads it; a lead changes it. */
export default async function TeamPage() {
  const actor = await requireActor('see-team');
  const { members, covers, invitations, waiting, today } = await loadTeam(actor, now());
  const leads = may(actor.role, 'manage-team');
  const arranges = may(actor.role, 'arrange-cover');
  const coaches = members.filter(({ role }) => role !== 'assistant');
  const self = actor.memberId ?? '';
  return (
    <main id="main" tabIndex={-1} className={forms.page}>
      <h1>Team</h1>
      <p className={forms.lead}>
        Everybody of this team sees every client. Each client has one coach and stands in that coach’s
        morning.
      </p>
      <p className={styles.links}>
        <Link href="/team/approvals">
          {waiting === 0 ? 'Nothing waits for approval' : `Waiting for approval: ${waiting}`}
        </Link>
        {arranges && <Link href="/team/move">Move clients to another coach</Link>}
        {arranges && <Link href="/clients/import">Import a list of clients</Link>}
        {may(actor.role, 'keep-records') && (
          <Link href="/team/records">Records: how long, and everything out</Link>
        )}
        {may(actor.role, 'keep-records') && <Link href="/team/audit">Record of acts</Link>}
      </p>
      <MemberRows members={memberLines(members, covers, actor.memberId)} mayChange={leads} />
      <dl className={styles.meanings}>
        {Object.entries(ROLE_MEANINGS).map(([role, meaning]) => (
          <div key={role}>
            <dt>{role}</dt>
            <dd>{meaning}</dd>
          </div>
        ))}
      </dl>
      <div className={leads ? styles.columns : undefined}>
        <section aria-labelledby="cover">
          <h2 id="cover">Cover</h2>
          <Covers
            covers={coverLines(covers, { self, leads })}
            coaches={coaches}
            away={leads ? coaches : coaches.filter(({ id }) => arranges && id === self)}
            self={self}
            today={today}
          />
        </section>
        {leads && (
          <section aria-labelledby="asked">
            <h2 id="asked">Asked in</h2>
            <Invitations waiting={invitationLines(invitations, now())} />
          </section>
        )}
      </div>
    </main>
  );
}
