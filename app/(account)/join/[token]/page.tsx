import styles from '../../account.module.css';

export const metadata = { title: 'Come in' };

/**
 * Shows a button and looks nothing up: mail programs open links on their own, and an old link must look like a good
 * one until somebody presses.
 */
export default async function JoinPage({ params }: { params: Promise<{ token: string }> }) {
  const { token } = await params;
  return (
    <main className={styles.page}>
      <h1>Your training diary</h1>
      <p>Press the button on the phone that you want to use. It stays signed in, so there is no password.</p>
      <form action="/api/join" method="post">
        <input type="hidden" name="token" value={token} />
        <button type="submit" className={styles.act}>
          Sign in on this phone
        </button>
      </form>
    </main>
  );
}
