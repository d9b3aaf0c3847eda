import type { ApprovalShown } from '#lib/usecases/team/load-approvals.ts';
import type { ClientTeam } from '#lib/usecases/team/load-client-team.ts';
import { ApprovalList } from '../../../team/_parts/approval-list.tsx';
import { CameBack } from '../../../team/_parts/came-back.tsx';
import { ReadNote } from './read-note.tsx';
import styles from './team-news.module.css';

type Props = {
  note: ClientTeam['note'];
  approvals: { waiting: ApprovalShown[]; decided: ApprovalShown[] };
  mayApprove: boolean;
};

/** The note that came with the client, and what waits for approval. Nothing when there is neither. */
export function TeamNews({ note, approvals, mayApprove }: Props) {
  const { waiting, decided } = approvals;
  if (!note && waiting.length === 0 && decided.length === 0) return null;
  return (
    <div className={styles.news}>
      {note && <ReadNote moveId={note.moveId} words={note.words} />}
      {waiting.length > 0 && (
        <section aria-labelledby="waiting-approval">
          <h2 id="waiting-approval">Waiting for approval</h2>
          <ApprovalList approvals={waiting} mayApprove={mayApprove} ofClient />
        </section>
      )}
      <CameBack decided={decided} />
    </div>
  );
}
