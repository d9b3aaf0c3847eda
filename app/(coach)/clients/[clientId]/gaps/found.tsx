import type { FoundPart, GapFound } from '#lib/views/gaps/gap-found.ts';
import styles from './gaps.module.css';
import { TakeDraft } from './take-draft.tsx';

type Props = { found: GapFound; clientId: string; assessmentId: string };

/** Where the client stands part by part, the drills chosen with why, and what is left. */
export function Found({ found, clientId, assessmentId }: Props) {
  return (
    <div className={styles.found}>
      <section aria-labelledby="found" className={styles.standing}>
        <h2 id="found" tabIndex={-1}>
          Where it stands
        </h2>
        <p className={styles.summary}>{found.summary}</p>
        <Standings parts={found.parts} />
      </section>
      <section aria-labelledby="fewest" className={styles.drills}>
        <h2 id="fewest">Fewest drills</h2>
        {found.drills.length === 0 ? (
          <p>No drill is chosen: there is nothing open that a drill can cover now.</p>
        ) : (
          <ol className={styles.chosen}>
            {found.drills.map((drill) => (
              <li key={drill.key}>
                <h3>{drill.name}</h3>
                <p>
                  {drill.lines.join('; ')}. In {drill.where}.
                </p>
                {drill.why.map((why) => (
                  <p key={why}>{why}</p>
                ))}
                {drill.notes.map((note) => (
                  <p key={note} className={styles.note}>
                    {note}
                  </p>
                ))}
              </li>
            ))}
          </ol>
        )}
        {found.drills.length > 0 ? <TakeDraft clientId={clientId} assessmentId={assessmentId} /> : null}
        {found.left.length > 0 ? (
          <>
            <h3>What is left, and why</h3>
            <dl className={styles.left}>
              {found.left.map((one) => (
                <div key={one.key}>
                  <dt>{one.part}</dt>
                  {one.why.map((why) => (
                    <dd key={why}>{why}</dd>
                  ))}
                </div>
              ))}
            </dl>
          </>
        ) : null}
        <details className={styles.how}>
          <summary>How they were chosen</summary>
          {found.aims.map((aim) => (
            <p key={aim}>{aim}</p>
          ))}
        </details>
      </section>
    </div>
  );
}

function Standings({ parts }: { parts: FoundPart[] }) {
  return (
    <table className={styles.parts}>
      <thead>
        <tr>
          <th scope="col">Part</th>
          <th scope="col">Standing</th>
          <th scope="col">What was seen, and what is asked</th>
        </tr>
      </thead>
      <tbody>
        {parts.map((part) => (
          <tr key={part.key}>
            <th scope="row">{part.part}</th>
            <td>
              <strong data-standing={part.standing}>{part.standingWords}</strong>
            </td>
            <td>
              {part.sides.map((side) => (
                <p key={side}>{side}</p>
              ))}
              <p className={styles.note}>asked: {part.asked}</p>
              {part.standing === 'open' && part.coveredBy ? (
                <p className={styles.note}>covered by {part.coveredBy}</p>
              ) : null}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
