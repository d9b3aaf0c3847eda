'use client';

import { useEffect, useRef } from 'react';
import type { PackSeen } from '#lib/usecases/handover/take-client-in.ts';
import { STANDING_LABELS } from '#lib/views/standing-labels.ts';
import { elsewhereLine, ladderLine, leftOutLine, packCounts, packPeriod } from '#lib/views/take-in.ts';
import forms from '../_parts/forms.module.css';
import styles from './take-in.module.css';

/** Who and what comes with a pack: nothing of it is written yet. */
export function PackPreview({ seen, busy, take }: { seen: PackSeen; busy: boolean; take: () => void }) {
  const { client, from, period, ladders, people, consents, leftOut } = seen;
  const head = useRef<HTMLHeadingElement>(null);
  useEffect(() => head.current?.focus(), []);
  const own = ladders.filter((ladder) => ladder.own !== null).length;
  return (
    <section aria-labelledby="who" className={styles.preview}>
      <h2 id="who" ref={head} tabIndex={-1} dir="auto">
        {client.name}
      </h2>
      <p>
        {STANDING_LABELS[client.standing]}
        {client.under18 ? ', under 18' : ''}, zone {client.zone}. From {from.team}
        {from.by ? `, pack made by ${from.by}` : ''}
        {from.made ? ` on ${from.made}` : ''}; {packPeriod(period)}. Every file is as it was made.
      </p>
      <h3>What comes</h3>
      <ul className={styles.counts}>
        {packCounts(seen.rows).map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      {leftOut.length > 0 ? (
        <>
          <h3>What cannot be kept</h3>
          <ul>
            {leftOut.map((one) => (
              <li key={one.table + one.why}>{leftOutLine(one)}</li>
            ))}
          </ul>
        </>
      ) : null}
      <h3>
        Ladders: {own} of {ladders.length} are your own
      </h3>
      <table className={forms.rows}>
        <thead>
          <tr>
            <th scope="col">In the pack</th>
            <th scope="col">Skill</th>
            <th scope="col">Here</th>
          </tr>
        </thead>
        <tbody>
          {ladders.map((ladder) => (
            <tr key={ladder.id}>
              <td className={forms.name}>{ladder.name}</td>
              <td>{ladder.skill}</td>
              <td>{ladderLine(ladder)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <h3>Who wrote it</h3>
      <p>
        {people.length > 0 ? people.join(', ') : 'Nobody is named'}. Their names stay beside what they wrote;
        they do not become members of your team.
      </p>
      <h3>Consent</h3>
      <p>
        {consents.length > 0
          ? `Kept as it was given, and it allows nothing here: ${consents.map(consentLine).join('; ')}.`
          : 'None is recorded in the pack.'}{' '}
        Your team asks its own.
      </p>
      <div className={forms.acts}>
        <button type="button" className={forms.main} disabled={busy} onClick={take}>
          Take {client.name} in
        </button>
      </div>
    </section>
  );
}

function consentLine({ kind, toTeam, givenAt, withdrawnAt }: PackSeen['consents'][number]): string {
  return elsewhereLine({
    kind,
    toTeam,
    givenOn: givenAt.slice(0, 10),
    withdrawnOn: withdrawnAt?.slice(0, 10) ?? null,
  });
}
