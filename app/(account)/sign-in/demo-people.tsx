import type { SignInHelp } from '#lib/usecases/sign-in-help.ts';
import styles from '../account.module.css';

/** The demo's doors: every invented coach, and the phone of any client. */
export function DemoPeople({ help }: { help: SignInHelp }) {
  return (
    <>
      <h2>The demo: sign in as a coach</h2>
      <ul className={styles.people}>
        {help.people.map((person) => (
          <li key={person.email}>
            <span>
              <b>
                {person.name}, {person.what}
              </b>
              {person.email}, password {person.password}
            </span>
            <form action="/api/sign-in" method="post">
              <input type="hidden" name="email" value={person.email} />
              <input type="hidden" name="password" value={person.password} />
              <button type="submit" className={styles.quiet} aria-label={`Sign in as ${person.name}`}>
                Sign in
              </button>
            </form>
          </li>
        ))}
      </ul>
      <h2>The demo: hold a client’s phone</h2>
      <p>Makes a fresh link for one client, as their coach would send it. Best seen 360 px wide.</p>
      <form action="/api/demo-phone" method="post">
        <div className={styles.field}>
          <label htmlFor="clientId">Client</label>
          <select id="clientId" name="clientId" defaultValue={help.firstClientId}>
            {help.clients.map((client) => (
              <option key={client.id} value={client.id}>
                {client.name}
              </option>
            ))}
          </select>
        </div>
        <button type="submit" className={styles.act}>
          Open the phone of a client
        </button>
      </form>
      <h2>The demo: have a link mailed</h2>
      <p>For clients who have come in before. The mail stands in the mailbox page of their coach.</p>
      <form action="/api/sign-in-link" method="post">
        <div className={styles.field}>
          <label htmlFor="link-email">E-mail of the client</label>
          <input id="link-email" name="email" type="email" autoComplete="email" required maxLength={254} />
        </div>
        <button type="submit" className={styles.quiet}>
          Mail a link
        </button>
      </form>
    </>
  );
}
