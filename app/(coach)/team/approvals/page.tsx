import Link from 'next/link';
import { may } from '#lib/auth/permissions.ts';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { loadApprovals } from '#lib/usecases/team/load-approvals.ts';
import forms from '../../clients/_parts/forms.module.css';
import { ApprovalList } from '../_parts/approval-list.tsx';
import { CameBack } from '../_parts/came-back.tsx';

export const metadata = { title: 'Waiting for approval' };

/** What assistants prepared: a coach approves, changes or sends back; an assistant sees own acts and what came back. */
export default async function ApprovalsPage() {
  const actor = await requireActor('see-team');
  const { waiting, decided } = await loadApprovals(actor, {}, now());
  const approves = may(actor.role, 'approve-acts');
  return (
    <main id="main" tabIndex={-1} className={forms.page}>
      <h1>Waiting for approval</h1>
      <p className={forms.lead}>
        {approves
          ? 'Assistants prepared these. Nothing is sent or changed before a coach approves it; then it is the coach’s own act, with who prepared it named.'
          : 'What you prepare waits here until a coach approves it, unless a lead gave you leave for its kind.'}{' '}
        <Link href="/team">To the team</Link>
      </p>
      {waiting.length === 0 ? (
        <p>Nothing waits for approval.</p>
      ) : (
        <ApprovalList approvals={waiting} mayApprove={approves} />
      )}
      <CameBack decided={decided} />
    </main>
  );
}
