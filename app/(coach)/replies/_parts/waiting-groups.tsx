import type { WaitingReply } from '#lib/views/replies/reply-types.ts';
import styles from './replies.module.css';
import type { KeptChoice } from './use-reply-text.ts';
import { WaitingRow } from './waiting-row.tsx';

type Props = { waiting: WaitingReply[]; kept: KeptChoice[]; canAnswer: boolean; canSee: boolean };

/** Questions with words of a danger sign first, then all others; each oldest first. */
export function WaitingGroups({ waiting, ...may }: Props) {
  const groups = [
    { id: 'danger', title: 'Danger words', replies: waiting.filter((reply) => reply.danger) },
    { id: 'others', title: 'Waiting', replies: waiting.filter((reply) => !reply.danger) },
  ].filter((group) => group.replies.length > 0);
  return groups.map(({ id, title, replies }) => (
    <section key={id} className={styles.group} aria-labelledby={`waiting-${id}`}>
      <div className={styles.sideHead}>
        <h2 id={`waiting-${id}`}>{title}</h2>
        <p>{replies.length === 1 ? '1 question' : `${replies.length} questions`}</p>
      </div>
      <ol className={styles.rows}>
        {replies.map((reply) => (
          <WaitingRow key={reply.id} reply={reply} {...may} />
        ))}
      </ol>
    </section>
  ));
}
