'use client';

import type { LoadBars as Bars, PlanLive } from '#lib/views/plan-live.ts';
import { sentenceParts } from '#lib/views/sentence.ts';
import styles from './live.module.css';
import { LoadBars } from './load-bars.tsx';

type Props = {
  live: PlanLive | undefined;
  acceptedWeekAu: number | null;
  onAccept: (weekAu: number | null) => void;
};

/** Loads drawn at once; the others are folded. */
const DRAWN = 5;

/** What the plan comes to while it is typed. It warns, it never forbids. */
export function LivePanel({ live, acceptedWeekAu, onAccept }: Props) {
  return (
    <aside className={styles.panel} aria-labelledby="comes-to">
      <h2 id="comes-to">What it comes to</h2>
      {live ? (
        <>
          <Warnings live={live} acceptedWeekAu={acceptedWeekAu} onAccept={onAccept} />
          <Loads live={live} />
          <section aria-labelledby="parts">
            <h3 id="parts">Parts it works on</h3>
            <ul className={styles.parts}>
              {live.parts.map(({ skill, part, drills }) => (
                <li key={`${skill} ${part}`}>
                  {skill}, {part}: <span className={styles.quiet}>{drills.join(', ')}</span>
                </li>
              ))}
            </ul>
          </section>
        </>
      ) : (
        <p>Nothing to foresee yet: it needs a first day, sessions a week, and a drill with its dose.</p>
      )}
    </aside>
  );
}

function Warnings({ live, acceptedWeekAu, onAccept }: Omit<Props, 'live'> & { live: PlanLive }) {
  const { warnings, jumpAu } = live;
  return (
    <section aria-labelledby="think">
      <h3 id="think">To think about</h3>
      <div role="status">
        {warnings.length === 0 ? <p>The checks foresee nothing to say.</p> : null}
        <ul className={styles.warnings}>
          {warnings.map((warning) => (
            <li key={warning.key}>
              {sentenceParts(warning.sentence).map((part) =>
                part.heavy ? <strong key={part.text}>{part.text}</strong> : part.text,
              )}
            </li>
          ))}
        </ul>
      </div>
      {jumpAu === null ? null : (
        <label className={styles.accept}>
          <input
            type="checkbox"
            checked={acceptedWeekAu !== null && jumpAu <= acceptedWeekAu}
            onChange={(event) => onAccept(event.target.checked ? jumpAu : null)}
          />
          I have seen this: up to {Math.round(jumpAu).toLocaleString('en-GB')} AU in 7 days is as planned
        </label>
      )}
    </section>
  );
}

function Loads({ live }: { live: PlanLive }) {
  const [drawn, folded] = [live.loads.slice(0, DRAWN), live.loads.slice(DRAWN)];
  return (
    <section aria-labelledby="four-weeks">
      <h3 id="four-weeks">The next four weeks, done as planned</h3>
      <p className={styles.quiet}>
        Bars: weeks 1 to 4. Band: usual week, two spreads each way; solid ink lies above it. BW s: body weight
        × seconds.
      </p>
      <div className={styles.weeks}>
        {live.weeks.map((week) => (
          <span key={week.key}>
            {week.label} <br />
            {[week.sessions, week.kind].filter(Boolean).join(', ')}
          </span>
        ))}
      </div>
      {drawn.map((bars) => (
        <LoadBars key={bars.key} bars={bars} />
      ))}
      {folded.length > 0 ? (
        <details>
          <summary>
            {folded.length} more {folded.length === 1 ? 'tissue' : 'tissues'}
          </summary>
          {folded.map((bars) => (
            <LoadBars key={bars.key} bars={bars} />
          ))}
        </details>
      ) : null}
      <details>
        <summary>As a table</summary>
        <LoadTable loads={live.loads} />
      </details>
      <p className={styles.quiet}>{live.assumed}</p>
    </section>
  );
}

function LoadTable({ loads }: { loads: Bars[] }) {
  return (
    <table className={styles.table}>
      <thead>
        <tr>
          <th scope="col">Load</th>
          {['1', '2', '3', '4'].map((week) => (
            <th key={week} scope="col">
              {week}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {loads.map((load) => (
          <tr key={load.key}>
            <th scope="row">
              {load.title}
              {load.side ? `, ${load.side}` : ''} <span className={styles.quiet}>{load.usual}</span>
            </th>
            {load.bars.map((bar) => (
              <td key={bar.key}>{bar.printed}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
