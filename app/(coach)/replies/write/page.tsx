import type { Metadata } from 'next';
import { TheLine } from '#app/_ui/the-line.tsx';
import { may } from '#lib/auth/permissions.ts';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { recipientFilter } from '#lib/schemas/reply.ts';
import { loadRecipients } from '#lib/usecases/load-recipients.ts';
import styles from '../_parts/replies.module.css';
import { RepliesNav } from '../_parts/replies-nav.tsx';
import { RecipientFilters } from './recipient-filters.tsx';
import { WriteForm } from './write-form.tsx';

export const metadata: Metadata = { title: 'Write first' };

type Props = { searchParams: Promise<Record<string, string | string[] | undefined>> };

export default async function WritePage({ searchParams }: Props) {
  const actor = await requireActor('see-clients');
  const filter = recipientFilter.parse(await searchParams);
  const { clients, all, kept, ...choices } = await loadRecipients(actor, filter, now());
  return (
    <main id="main" tabIndex={-1} className={styles.page}>
      <div className={styles.head}>
        <h1>Write first</h1>
        <p className={styles.counted}>
          To one client or to many: each gets words of their own and sees no other. Clients who left are never
          written to.
        </p>
        <RepliesNav here="/replies/write" />
      </div>
      <RecipientFilters filter={filter} {...choices} />
      {may(actor.role, 'write-to-clients') ? (
        <WriteForm clients={clients} all={all} kept={kept} />
      ) : (
        <p className={styles.empty}>A coach of the team writes to clients; an assistant prepares answers.</p>
      )}
      <TheLine />
    </main>
  );
}
