import type { Metadata } from 'next';
import { may } from '#lib/auth/permissions.ts';
import { requireActor } from '#lib/auth/require-actor.ts';
import { loadKeptReplies } from '#lib/usecases/load-kept-replies.ts';
import { KeptForm } from '../_parts/kept-form.tsx';
import { KeptReplyItem } from '../_parts/kept-reply-item.tsx';
import styles from '../_parts/replies.module.css';
import { RepliesNav } from '../_parts/replies-nav.tsx';

export const metadata: Metadata = { title: 'Kept replies' };

export default async function KeptRepliesPage() {
  const actor = await requireActor('see-clients');
  const { used, retired } = await loadKeptReplies(actor);
  const canKeep = may(actor.role, 'write-to-clients');
  return (
    <main id="main" tabIndex={-1} className={styles.page}>
      <div className={styles.head}>
        <h1>Kept replies</h1>
        <p className={styles.counted}>
          Texts of the team to start from. None is ever sent by itself, and none goes with a field left open.
        </p>
        <RepliesNav here="/replies/kept" />
      </div>
      {used.length === 0 && (
        <p className={styles.empty}>
          Nothing is kept yet. Keep an answer that you write often, here or from “Earlier answers”.
        </p>
      )}
      <ul className={styles.answers}>
        {used.map(({ id, name, text, by }) => (
          <KeptReplyItem key={id} reply={{ id, name, text, by }} retired={false} canKeep={canKeep} />
        ))}
      </ul>
      {canKeep && (
        <section className={styles.section} aria-labelledby="keep-new">
          <h2 id="keep-new">Keep a new one</h2>
          <KeptForm />
        </section>
      )}
      {retired.length > 0 && (
        <section className={styles.section}>
          <details>
            <summary>Retired: {retired.length}</summary>
            <ul className={styles.answers}>
              {retired.map(({ id, name, text, by }) => (
                <KeptReplyItem key={id} reply={{ id, name, text, by }} retired canKeep={canKeep} />
              ))}
            </ul>
          </details>
        </section>
      )}
    </main>
  );
}
