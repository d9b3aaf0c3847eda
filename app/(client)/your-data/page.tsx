import type { Metadata } from 'next';
import Link from 'next/link';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { loadOwnData } from '#lib/usecases/rights/load-own-data.ts';
import { auditWordsForClient, byWhom } from '#lib/views/rights/audit-words.ts';
import { keptLines } from '#lib/views/rights/own-data.ts';
import { BackHead } from '../_phone/back-head.tsx';
import { Asked } from './asked.tsx';
import { OwnConsent } from './own-consent.tsx';
import { WhoSaw } from './who-saw.tsx';

export const metadata: Metadata = { title: 'Your data' };

export default async function YourDataPage() {
  const actor = await requireActor('own-record');
  const data = await loadOwnData(actor);
  const { coachName, teamName, zone, health, share, asked, years } = data;
  const at = now();
  return (
    <div className="phone">
      <BackHead to="/answers" page="Answers">
        {teamName}
      </BackHead>
      <main>
        <h1>Your data</h1>
        {asked ? <Asked asked={asked} coach={coachName} /> : null}
        <h2 className="rights-head">What is kept</h2>
        <ul className="rights-text">
          {keptLines(data.kept).map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
        <p className="quiet">
          It is kept while you train here and {years} {years === 1 ? 'year' : 'years'} after you leave. Local
          rules can ask for longer, above all under 18.
        </p>
        <h2 className="rights-head">Take it with you</h2>
        <p className="rights-line">
          One file with all of it: to read, as tables, and for a program. It comes at once.
        </p>
        <a className="act" href="/api/your-data/record" download>
          Take my record
        </a>
        <h2 className="rights-head">Who looked, and what was done</h2>
        <WhoSaw
          lines={data.lines.map((line) => ({
            ...line,
            by: byWhom(line, actor.userId),
            words: auditWordsForClient(line),
          }))}
          zone={zone}
          now={at}
        />
        <OwnConsent health={health} share={share} coach={coachName} zone={zone} now={at} />
        <h2 className="rights-head">Be forgotten</h2>
        <p className="rights-line">
          Everything of yours can be deleted: what you told, pictures, plans, and your sign-in. There are some
          days to take it back.
        </p>
        <p className="word-acts">
          <Link className="word-act" href="/your-data/delete">
            {asked ? 'Your wish and its receipt' : 'Delete everything'}
          </Link>
        </p>
      </main>
    </div>
  );
}
