'use client';
import Link from 'next/link';
import { cautionsOf } from '#lib/domain/caution.ts';
import { asSentence, placeInWords } from '#lib/domain/labels.ts';
import { type PhoneSession, setsInWords } from '#lib/views/phone-session.ts';
import { clockWords } from '../_phone/clock-words.ts';
import { Bob } from '../_phone/icons.tsx';
import type { Unsent } from '../_phone/kept.ts';
import { Tabs } from '../_phone/tabs.tsx';
import type { Body } from '../_phone/to-body.ts';
import { useUnder18 } from '../_phone/under18.ts';
import { useKept } from '../_phone/use-kept.ts';
import { CautionBox } from './caution-box.tsx';

type Props = { clientId: string; body: Body; sessions: PhoneSession[]; coach: string; onCorrect: () => void };

/** How far the check-in has got, and what was saved. The caution stays. */
export function SentScreen({ clientId, body, sessions, coach, onCorrect }: Props) {
  const { unsent, lastSent, ready } = useKept(clientId);
  const under18 = useUnder18();
  const waiting = unsent.find((one) => one.body.id === body.id);
  const isSent = ready && !waiting;
  const savedAt = clockWords(waiting?.savedAt ?? body.sentAt);
  const sentAt = lastSent?.id === body.id ? clockWords(lastSent.at) : savedAt;
  return (
    <div className="phone phone-plain">
      <header className="phone-head">
        <span className="mark">Plumbline</span>
        <span className="state">
          {isSent ? `sent ${sentAt}` : waiting?.problem ? 'not sent' : 'saved on this phone'}
        </span>
      </header>
      <main>
        <div role="status">
          <h1>{isSent ? `Sent to ${coach}.` : 'Saved on this phone.'}</h1>
          <p>{explained(isSent, waiting)}</p>
        </div>
        <div className="way">
          <div className="way-line" aria-hidden="true">
            <div className="done" />
            {isSent ? <div className="done" /> : <Bob size={30} />}
            {isSent ? null : <div className="yet" />}
            {isSent ? (
              <span className="bob-arrives">
                <Bob size={30} />
              </span>
            ) : (
              <span className="goal" />
            )}
          </div>
          <div className="way-steps">
            <div>
              <h2>This phone</h2>
              <p className="quiet">
                {isSent ? `saved ${savedAt}; nothing of it is kept here now` : `saved ${savedAt}, complete`}
              </p>
            </div>
            <div>
              <h2>{coach}</h2>
              <p className="quiet">
                {isSent ? `received ${sentAt}` : arrival(waiting?.triedAt ?? null, waiting?.problem ?? null)}
              </p>
            </div>
          </div>
        </div>
        <CautionBox cautions={cautionsOf(body, under18)} coach={coach} isSent={isSent} />
        <h2 style={{ marginTop: 20 }}>What was saved</h2>
        <dl className="saved-rows">
          {rowsOf(body, sessions).map(([name, text]) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{text}</dd>
            </div>
          ))}
        </dl>
        <button type="button" className="act" onClick={onCorrect}>
          Correct it
        </button>
        <div className="centre">
          <Link className="word-act" href="/today">
            Back to Today
          </Link>
        </div>
      </main>
      <Tabs />
    </div>
  );
}

function explained(isSent: boolean, waiting: Unsent | undefined): string {
  if (isSent) return 'It has arrived. You can close this.';
  if (waiting?.problem) return `It could not be sent and is kept here: ${waiting.problem}`;
  if (waiting?.signedOut)
    return 'Not sent: this phone is no longer signed in. It is kept here and goes by itself once you open the link of your coach again.';
  return 'Not sent yet. It goes by itself, once, when there is signal. You can close this.';
}

function arrival(triedAt: string | null, problem: string | null): string {
  if (problem) return 'not sent; change it on Today';
  if (triedAt === null) return 'on its way';
  return `waiting for signal; tried ${clockWords(triedAt)}, next try when you open this or when signal returns`;
}

function rowsOf(body: Body, sessions: PhoneSession[]): [string, string][] {
  const drills = sessions.find((session) => session.label === (body.session ?? ''))?.drills ?? [];
  const rows = drills.flatMap((drill): [string, string][] => {
    const lines = drill.sides.flatMap(({ rungId, side }) => {
      const sets = body.sets.filter((set) => set.rungId === rungId && set.side === side);
      if (sets.length === 0) return [];
      return [`${side === 'both' ? '' : `${side} `}${setsInWords(sets, drill.unit)}`];
    });
    return lines.length > 0 ? [[drill.title, lines.join('; ')]] : [];
  });
  const session = [
    body.minutes === null ? '' : `${body.minutes} min`,
    body.effort === null ? '' : `effort ${body.effort}`,
  ];
  rows.push([
    'Session',
    body.kind === 'rest' ? 'no training' : session.filter(Boolean).join(', ') || 'trained',
  ]);
  rows.push(['Pain', painInWords(body)]);
  if (body.words) rows.push(['Words', body.words]);
  if (body.question) rows.push(['Question', body.question]);
  return rows;
}

function painInWords(body: Body): string {
  if (body.nothingHurts) return 'nothing hurts';
  if (body.pain.length === 0) return 'not told';
  return body.pain
    .map((score) => `${asSentence(placeInWords(score.region, score.side))} ${score.moment} ${score.value}`)
    .join('; ');
}
