import styles from '../../handover.module.css';

export const metadata = { title: 'A record to read', robots: { index: false, follow: false } };

/** Asks for the code and looks nothing up: mail programs open links on their own, and an old link looks like a good one. */
export default async function HandoverPage({ params }: { params: Promise<{ token: string }> }) {
  const { token } = await params;
  return (
    <main className={styles.page}>
      <h1>A record to read</h1>
      <p>
        A coach made this page for you to read: how somebody trained, what hurt and what was tried. It asks
        for no account. The code was sent to you another way than this link.
      </p>
      <form action="/api/handover/open" method="post">
        <input type="hidden" name="token" value={token} />
        <div className={styles.field}>
          <label htmlFor="code">Code, six digits</label>
          <input id="code" name="code" inputMode="numeric" autoComplete="off" maxLength={9} required />
        </div>
        <button type="submit" className={styles.act}>
          Open it
        </button>
      </form>
      <p className={styles.foot}>
        Each opening is written down with its time and shown to the coach. After five codes that do not fit
        the link is closed. What you read informs; it is no diagnosis.
      </p>
    </main>
  );
}
