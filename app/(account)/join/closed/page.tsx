import styles from '../../account.module.css';

export const metadata = { title: 'This link does not open' };

export default function ClosedLinkPage() {
  return (
    <main className={styles.page}>
      <h1>This link does not open any more.</h1>
      <p>A link works once, for a limited time, and a newer one closes it. Nothing of yours is lost.</p>
      <p>Ask your coach for a new link and open it here.</p>
    </main>
  );
}
