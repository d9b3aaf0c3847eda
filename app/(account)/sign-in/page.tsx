import { headers } from 'next/headers';
import { redirect } from 'next/navigation';
import { actorOfPage } from '#lib/auth/actor.ts';
import { homeOf } from '#lib/auth/require-actor.ts';
import { loadSignInHelp } from '#lib/usecases/sign-in-help.ts';
import styles from '../account.module.css';
import { DemoPeople } from './demo-people.tsx';
import { SignInForm } from './sign-in-form.tsx';

export const metadata = { title: 'Sign in' };

const SAID = new Map([
  ['wrong', 'E-mail address or password is not right. Check both and try again.'],
  ['wait', 'Too many tries. Wait a minute, then try again.'],
  ['mailed', 'If this address belongs to a client, a link is on its way. It works once, within 15 minutes.'],
]);

export default async function SignInPage({
  searchParams,
}: {
  searchParams: Promise<{ say?: string | string[] }>;
}) {
  const actor = await actorOfPage(await headers());
  if (actor) redirect(homeOf(actor.role));
  const { say } = await searchParams;
  const help = await loadSignInHelp();
  return (
    <main className={styles.page}>
      <h1>Plumbline. Sign in as a coach.</h1>
      <SignInForm said={typeof say === 'string' ? SAID.get(say) : undefined} />
      <h2>If you train with a coach</h2>
      <p>
        You need no password. Open the link that your coach sent you; it signs your phone in. If it no longer
        works, ask your coach for a new one.
      </p>
      {help && <DemoPeople help={help} />}
    </main>
  );
}
