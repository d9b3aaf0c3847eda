import styles from '../../../account.module.css';
import { JoinForm } from './join-form.tsx';

export const metadata = { title: 'Come into the team' };

/** Shows a form and looks nothing up: mail programs open links on their own, and an old link looks like a good one. */
export default async function JoinTeamPage({ params }: { params: Promise<{ token: string }> }) {
  const { token } = await params;
  return (
    <main className={styles.page}>
      <h1>Come into the team</h1>
      <p>
        Write the name that the team and its clients see, and choose a password of 12 characters or more. From
        then on you sign in with the e-mail address that this link was sent to.
      </p>
      <JoinForm token={token} zones={['UTC', ...Intl.supportedValuesOf('timeZone')]} />
    </main>
  );
}
