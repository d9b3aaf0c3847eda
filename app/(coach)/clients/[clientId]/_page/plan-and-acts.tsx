import Link from 'next/link';
import type { ClientLoaded } from '#lib/usecases/load-client.ts';
import type { ClientTeam } from '#lib/usecases/team/load-client-team.ts';
import { STANDING_LABELS, STANDING_MEANINGS } from '#lib/views/standing-labels.ts';
import { InvitationLink } from '../../_parts/invitation-link.tsx';
import { ClinicianWordForm } from './clinician-word-form.tsx';
import { Limits } from './limits.tsx';
import { NoteForm } from './note-form.tsx';
import { StandingForm } from './standing-form.tsx';
import styles from './timeline.module.css';
import { MoveClient } from './with-coach.tsx';

type Props = { loaded: ClientLoaded; team: ClientTeam | undefined; mayEdit: boolean };

/** Right of the line: the plan in force, and what the coach can do or note about this client. */
export function PlanAndActs({ loaded, team, mayEdit }: Props) {
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
        <summary>
          Standing: {STANDING_LABELS[standing]}
          {team?.ahead ? `. ${team.ahead.words}` : ''}
        </summary>
        {mayEdit ? (
          <StandingForm
            clientId={page.id}
            standing={standing}
            today={page.today}
            ahead={team?.ahead ?? null}
          />
        ) : (
          <p>{STANDING_MEANINGS[standing]}</p>
        )}
      </details>
      {team && (
        <details>
          <summary>Coach: {team.coach}</summary>
          <MoveClient clientId={page.id} name={page.name} others={team.others} />
          <h3>Coaches and standing so far</h3>
          {team.trace.length === 0 ? <p>Nothing has changed yet.</p> : null}
          <ul className={styles.plan}>
            {team.trace.map(({ id, on, exact, words }) => (
              <li key={id}>
                <span title={exact}>{on}</span>: {words}
              </li>
            ))}
          </ul>
        </details>
      )}
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
