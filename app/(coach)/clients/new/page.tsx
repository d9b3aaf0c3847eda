import { requireActor } from '#lib/auth/require-actor.ts';
import styles from '../_parts/forms.module.css';
import { NewClientForm } from './new-client-form.tsx';

export const metadata = { title: 'New client' };

export default async function NewClientPage() {
  await requireActor('edit-clients');
  return (
    <main id="main" tabIndex={-1} className={styles.page}>
      <h1>New client</h1>
      <p className={styles.lead}>
        The client signs in by a link that you copy or that is mailed. Everything but the name and the zone
        can wait.
      </p>
      <NewClientForm zones={['UTC', ...Intl.supportedValuesOf('timeZone')]} />
    </main>
  );
}
