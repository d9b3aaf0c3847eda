import type { Metadata } from 'next';
import Link from 'next/link';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { loadToday, type Today } from '#lib/usecases/load-today.ts';
import { dayAsSaid, longDate, momentAsSaid } from '#lib/views/phone-dates.ts';
import { phoneForm } from '#lib/views/phone-form.ts';
import { KeepForm } from '../../_phone/keep-form.tsx';
import { RefusedList, SendState } from '../../_phone/send-state.tsx';
import { WordsRead } from '../../_phone/words-read.tsx';
import { ZoneKeeper } from '../../_phone/zone-keeper.tsx';
import { AskMorning } from './ask-morning.tsx';
import { AskTests } from './ask-tests.tsx';
import { BackAsNew } from './back-as-new.tsx';
import { BeforeTraining } from './before-training.tsx';
import { DoneToday } from './done-today.tsx';
import { LastFromCoach } from './last-from-coach.tsx';
import { YourLimits } from './limit-words.tsx';
import { OtherFilms } from './other-films.tsx';
import { TodayActs } from './today-acts.tsx';
import { TodayPlan } from './today-plan.tsx';
import { WhatChanged } from './what-changed.tsx';

export const metadata: Metadata = { title: 'Today' };

export default async function TodayPage() {
  const actor = await requireActor('see-own-training');
  const at = now();
  const today = await loadToday(actor, at);
  const { client, date } = today;
  const [session] = today.sessions;
  const received = today.done[0]
    ? { date, clock: momentAsSaid(new Date(today.done[0].checkIn.sentAt), client.zone, at).slice(-5) }
    : null;
  return (
    <>
      <KeepForm form={phoneForm(today)} />
      {actor.role === 'client' ? <ZoneKeeper zone={client.zone} /> : null}
      <header className="phone-head">
        <span className="mark">{client.teamName}</span>
        <SendState clientId={today.clientId} received={received} />
      </header>
      <main>
        <h1>{longDate(date)}</h1>
        <BeforeTraining start={today.start} coach={client.coachName} />
        <AskMorning morning={today.morning} />
        <BackAsNew isBack={today.backAsNew} hasTests={today.startTests !== null} coach={client.coachName} />
        <AskTests words={today.startTests} />
        {today.start.guardian ? null : <p className="quiet">{introduction(today)}</p>}
        {today.week.map((line) => (
          <p key={line} className="quiet">
            {line}
          </p>
        ))}
        <WhatChanged news={today.news} notes={today.planNotes} by={client.coachName} today={date} />
        {session?.how.map((line) => (
          <p key={line} className="quiet">
            {line}
          </p>
        ))}
        {session?.note ? <p className="quiet">{session.note}</p> : null}
        <YourLimits limits={today.limits} />
        <RefusedList clientId={today.clientId} />
        <DoneToday done={today.done} zone={client.zone} now={at} />
        {session ? <TodayPlan session={session} today={date} films={today.films} /> : null}
        <OtherFilms today={today} />
        <LastFromCoach today={today} now={at} />
        {actor.role === 'client' ? <WordsRead ids={unreadOf(today)} /> : null}
        {actor.role === 'client' ? (
          <TodayActs />
        ) : (
          <p className="word-acts">
            <Link className="word-act" href="/guardian">
              What you agreed to
            </Link>
          </p>
        )}
      </main>
    </>
  );
}

/** Words shown on this page that no phone has shown before. */
function unreadOf({ said, done }: Today): string[] {
  const words = done.flatMap((one) => one.said.filter((word) => !word.read));
  const ids = [...words.map((word) => word.id), ...(said?.unread ? [said.id] : [])];
  return [...new Set(ids)];
}

function introduction(today: Today): string {
  const [session] = today.sessions;
  if (!session) return `${today.client.coachName} has not written a plan yet. You can check in all the same.`;
  const count = session.drills.length;
  const ended = today.planEnded
    ? ` The plan ended ${dayAsSaid(today.planEnded, today.date)}; it holds until the next one.`
    : '';
  const minutes = session.minutes ? `, about ${session.minutes} min` : '';
  return `Session ${session.label}: ${count === 1 ? 'one drill' : `${count} drills`}${minutes}.${ended}`;
}
