import Link from 'next/link';
import type { ClientLoaded } from '#lib/usecases/load-client.ts';
import { InvitationLink } from '../../_parts/invitation-link.tsx';
import styles from './client-page.module.css';
import { ClinicianWordForm } from './clinician-word-form.tsx';
import { Limits } from './limits.tsx';
import { NoteForm } from './note-form.tsx';
import { StandingForm } from './standing-form.tsx';

/** Right of the line: the plan in force, and what the coach can do or note about this client. */
export function PlanAndActs({ loaded }: { loaded: ClientLoaded }) {
  const { page, standing, notes, limits } = loaded;
  const { plan } = page;
  return (
    <aside className={styles.aside} aria-label="Plan and notes">
      <h2>{plan ? `Plan, version ${plan.version}` : 'Plan'}</h2>
      <p>
        {plan ? plan.inForce : 'No plan yet.'}{' '}
        {plan ? <Link href={`/clients/${page.id}/plan#all-versions`}>Versions</Link> : null}{' '}
        <Link href={`/clients/${page.id}/plan`}>{plan ? 'Change' : 'Write the first one'}</Link>{' '}
        <Link href={`/clients/${page.id}/gaps`}>Find the gaps</Link>
      </p>
      {plan?.sessions.map((session) => (
        <div key={session.name} className={styles.plan}>
          <h3>Session {session.name}</h3>
          <ul className={styles.plan}>
            {session.lines.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </div>
      ))}
      <Limits clientId={page.id} today={page.today} limits={limits} />
      <details>
        <summary>Sign-in link</summary>
        <InvitationLink clientId={page.id} />
      </details>
      <details>
        <summary>Standing: {standing.replace('-', ' ')}</summary>
        <StandingForm clientId={page.id} standing={standing} />
      </details>
      <details>
        <summary>Record a clinician’s word</summary>
        <ClinicianWordForm clientId={page.id} today={page.today} />
      </details>
      <details open={notes.length > 0}>
        <summary>Notes private to coaches</summary>
        {notes.map((note) => (
          <p key={note.id} className={styles.note}>
            {note.text} <small>{note.by}</small>
          </p>
        ))}
        <NoteForm clientId={page.id} />
      </details>
    </aside>
  );
}
