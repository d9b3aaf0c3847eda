'use client';
import type { ApprovalShown } from '#lib/usecases/team/load-approvals.ts';
import { ApprovalItem } from './approval-item.tsx';
import { ApprovalKeys } from './approval-keys.tsx';
import styles from './team.module.css';

type Props = {
  approvals: ApprovalShown[];
  mayApprove: boolean;
  /** Only what is shown of one client: no keys, no client's name. */
  ofClient?: boolean;
};

/** Prepared acts with what would be done, each to approve, change or send back. */
export function ApprovalList({ approvals, mayApprove, ofClient = false }: Props) {
  return (
    <>
      <ol className={styles.approvals}>
        {approvals.map((approval) => (
          <ApprovalItem key={approval.id} approval={approval} mayApprove={mayApprove} ofClient={ofClient} />
        ))}
      </ol>
      {mayApprove && !ofClient && <ApprovalKeys />}
    </>
  );
}
