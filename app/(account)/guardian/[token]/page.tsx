import styles from '../../account.module.css';

export const metadata = { title: 'For a parent or guardian' };

/** Shows a button and looks nothing up, as the page of every entry link does: mail programs open links on their own. */
export default async function GuardianLinkPage({ params }: { params: Promise<{ token: string }> }) {
  const { token } = await params;
  return (
    <main className={styles.page}>
      <h1>For a parent or guardian</h1>
      <p>
        Somebody under 18 wants to train, and you were named as their parent or guardian. Press the button on
        the phone or computer that you want to use. It stays signed in, so there is no account and no
        password.
      </p>
      <p>The link works once. If it was not meant for you, close this page: nothing happens.</p>
      <form action="/api/join" method="post">
        <input type="hidden" name="token" value={token} />
        <button type="submit" className={styles.act}>
          Read what it is about
        </button>
      </form>
    </main>
  );
}
