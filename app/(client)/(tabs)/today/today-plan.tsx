import Link from 'next/link';
import { asSentence } from '#lib/domain/labels.ts';
import { dayAsSaid, shortDate } from '#lib/views/phone-dates.ts';
import type { PhoneDrill, PhoneSession } from '#lib/views/phone-session.ts';
import { Bob } from '../../_phone/icons.tsx';
import { LimitWords } from './limit-words.tsx';

type Film = { rungId: string; side: string; angle: string; byDate: string | null; words: string };
type Props = { session: PhoneSession; today: string; films: Film[] };

/** Left of the line what was done the last time, right of it what to do today. */
export function TodayPlan({ session, today, films }: Props) {
  const dates = new Set(session.drills.flatMap((drill) => (drill.last ? [drill.last.date] : [])));
  const [oneDate] = dates.size === 1 ? dates : [];
  return (
    <section className="today" aria-label={`Session ${session.label}`}>
      <div className="today-line" aria-hidden="true">
        <Bob size={28} />
      </div>
      <div className="today-row first">
        <div>{oneDate ? asSentence(dayAsSaid(oneDate, today)) : 'Last time'}</div>
        <div>Today</div>
      </div>
      {session.drills.map((drill) => (
        <div key={drill.key} className="today-row">
          <LastTime drill={drill} day={oneDate || !drill.last ? null : dayAsSaid(drill.last.date, today)} />
          <ToDo drill={drill} films={films} />
        </div>
      ))}
    </section>
  );
}

function LastTime({ drill, day }: { drill: PhoneDrill; day: string | null }) {
  if (!drill.last) return <div>first time</div>;
  return (
    <div>
      {drill.last.lines.map((line) => (
        <div key={line}>{line}</div>
      ))}
      {day ? <div className="small">{day}</div> : null}
    </div>
  );
}

function ToDo({ drill, films }: { drill: PhoneDrill; films: Film[] }) {
  const [first] = drill.sides;
  const same = drill.sides.every((side) => side.dose === first?.dose && side.rung === first.rung);
  const asked = films.filter((film) => drill.sides.some((side) => side.rungId === film.rungId));
  return (
    <div>
      <h2>{drill.limit?.out ? <s>{drill.title}</s> : drill.title}</h2>
      {same && first ? (
        <div>
          {first.dose}
          {drill.sides.length > 1 ? <span className="quiet"> left and right</span> : null}
        </div>
      ) : (
        drill.sides.map((side) => (
          <div key={side.side}>
            {side.side === 'both' ? '' : `${side.side}${drill.rungsDiffer ? `, ${side.rung}` : ''} `}
            <span className="quiet">{side.dose}</span>
          </div>
        ))
      )}
      {drill.limit ? <LimitWords limit={drill.limit} /> : null}
      {drill.note ? <div className="quiet">{drill.note}</div> : null}
      {asked.map((film) => (
        <Link
          key={film.rungId + film.side + film.angle}
          className="film-beside"
          href="/films"
          prefetch={false}
        >
          Please film it: {film.side === 'both' ? '' : `${film.side}, `}
          {film.angle}
          {film.byDate ? `, by ${shortDate(film.byDate)}` : ''}
        </Link>
      ))}
    </div>
  );
}
