import type { Metadata } from 'next';
import Link from 'next/link';
import { Stills } from '#app/_ui/stills.tsx';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { loadAnswers } from '#lib/usecases/load-answers.ts';
import { loadNotices } from '#lib/usecases/load-notices.ts';
import { filmSecond } from '#lib/views/looking/film-second.ts';
import { momentAsSaid } from '#lib/views/phone-dates.ts';
import { SendState } from '../../_phone/send-state.tsx';
import { WordsRead } from '../../_phone/words-read.tsx';
import { AskForm } from './ask-form.tsx';
import { NoticeSwitches } from './notice-switches.tsx';
import { SignOut } from './sign-out.tsx';

export const metadata: Metadata = { title: 'Answers' };

export default async function AnswersPage() {
  const actor = await requireActor('see-own-training');
  const { clientId, teamName, coachName, zone, said, open } = await loadAnswers(actor);
  const notices = await loadNotices(actor);
  const at = now();
  return (
    <>
      <header className="phone-head">
        <span className="mark">{teamName}</span>
        <SendState clientId={clientId} received={null} />
      </header>
      <main>
        <h1>From {coachName}</h1>
        {said.length === 0 ? <p className="quiet">Answers and words of your coach stand here.</p> : null}
        {said.map((one) => (
          <section key={one.id} className="ladder-block">
            {one.about ? <p className="quiet">You asked: {one.about}</p> : null}
            <Stills ids={one.stills} />
            {one.on ? <p className="quiet">On {one.on}</p> : null}
            {one.film ? (
              <p className="quiet">
                <Link className="word-act" href={`/films/${one.film.clipId}`}>
                  On your film: {one.film.rung}, at {filmSecond(one.film.atSeconds)}
                </Link>
              </p>
            ) : null}
            <blockquote>“{one.text}”</blockquote>
            <p className="quiet">
              {one.by}, {momentAsSaid(one.at, zone, at)}
            </p>
          </section>
        ))}
        {open.length > 0 ? <h2 style={{ marginTop: 16 }}>Asked, not answered yet</h2> : null}
        {open.map((question) => (
          <section key={question.id} className="ladder-block">
            <p>{question.text}</p>
            <Stills ids={question.stills} />
            <p className="quiet">{momentAsSaid(question.askedAt, zone, at)}</p>
          </section>
        ))}
        {actor.role === 'client' ? (
          <WordsRead ids={said.filter((one) => one.unread).map((one) => one.id)} />
        ) : null}
        <AskForm coach={coachName} />
        {notices ? <NoticeSwitches coach={coachName} {...notices} /> : null}
        <p className="word-acts" style={{ marginTop: 24 }}>
          <Link className="word-act" href="/your-data">
            Your data
          </Link>
        </p>
        <SignOut clientId={clientId} />
      </main>
    </>
  );
}
