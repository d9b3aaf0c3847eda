import type { Metadata } from 'next';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { loadEarlier } from '#lib/usecases/load-earlier.ts';
import { momentAsSaid, shortDate } from '#lib/views/phone-dates.ts';
import { BackHead } from '../_phone/back-head.tsx';
import { CoachWords } from '../_phone/coach-words.tsx';
import { WordsRead } from '../_phone/words-read.tsx';
import { DeleteCheckIn } from './delete-check-in.tsx';

export const metadata: Metadata = { title: 'Earlier check-ins' };

export default async function EarlierPage() {
  const actor = await requireActor('check-in');
  const at = now();
  const { rows, coachName, zone } = await loadEarlier(actor, at);
  return (
    <div className="phone">
      <BackHead to="/today" page="Today">
        the last 14 days
      </BackHead>
      <main>
        <h1 style={{ margin: '4px 0 12px' }}>Earlier check-ins</h1>
        {rows.length === 0 ? <p className="quiet">What you check in stands here for 14 days.</p> : null}
        <WordsRead
          ids={rows.flatMap((row) => row.said.filter((word) => !word.read).map((word) => word.id))}
        />
        {rows.map((row) => (
          <section key={row.id} className="drill" aria-label={`${shortDate(row.date)}, ${row.about}`}>
            <h2>{row.deletedAt ? <s>{shortDate(row.date)}</s> : shortDate(row.date)}</h2>
            <p>
              {row.about}
              {row.hurt ? `; ${row.hurt}` : ''}
            </p>
            {row.words ? <p className="quiet">“{row.words}”</p> : null}
            <CoachWords said={row.said} seen={row.seen} zone={zone} now={at} />
            {row.deletedAt ? (
              <p className="quiet">
                Deleted {momentAsSaid(new Date(row.deletedAt), zone, at)}. It counts no more; {coachName} can
                still read it.
              </p>
            ) : (
              <DeleteCheckIn id={row.id} name={`${shortDate(row.date)}, ${row.about}`} coach={coachName} />
            )}
          </section>
        ))}
      </main>
    </div>
  );
}
