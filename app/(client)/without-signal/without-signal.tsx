'use client';
import { useEffect, useState } from 'react';
import { localDateOf } from '#lib/domain/local-date.ts';
import { longDate } from '#lib/views/phone-dates.ts';
import { type KeptForm, loadForm } from '../_phone/kept-form.ts';
import { phoneZone } from '../_phone/phone-zone.ts';
import { RefusedList, SendState } from '../_phone/send-state.tsx';
import { CheckInScreen } from '../check-in/check-in-screen.tsx';

type Found = { path: string; form: KeptForm | null; today: string };

/** The page that was asked for, made of what this phone keeps. */
export function WithoutSignal() {
  const [found, setFound] = useState<Found | null>(null);
  useEffect(() => {
    const now = new Date();
    setFound({
      path: window.location.pathname,
      form: loadForm(now),
      today: localDateOf(now, phoneZone()),
    });
  }, []);
  if (!found) return <div className="phone phone-plain" />;
  const { path, form, today } = found;
  if (!form) return <NothingKept />;
  const kind = path === '/check-in' ? 'training' : path === '/rest-day' ? 'rest' : null;
  if (kind === null) return <OfflineToday form={form} today={today} />;
  const rest = kind === 'rest';
  return (
    <CheckInScreen
      clientId={form.clientId}
      kind={kind}
      today={today}
      coach={form.coach}
      under18={form.under18}
      planVersion={rest ? null : form.planVersion}
      usualMinutes={rest ? null : form.usualMinutes}
      sessions={rest ? [] : form.sessions}
      otherDrills={form.otherDrills}
      lastPain={[]}
      kept={null}
      unsentId={new URLSearchParams(window.location.search).get('unsent')}
    />
  );
}

function OfflineToday({ form, today }: { form: KeptForm; today: string }) {
  const [session] = form.sessions;
  return (
    <div className="phone phone-plain">
      <header className="phone-head">
        <span className="mark">No signal</span>
        <SendState clientId={form.clientId} received={null} />
      </header>
      <main>
        <h1>{longDate(today)}</h1>
        <p>
          This page could not be reached. The plan below is the one this phone saw on {longDate(form.date)}.
          What you write is kept here and goes by itself, once, when there is signal.
        </p>
        <RefusedList clientId={form.clientId} />
        {session ? (
          <dl className="saved-rows">
            {session.drills.map((drill) => (
              <div key={drill.key}>
                <dt>{drill.limit?.out ? <s>{drill.title}</s> : drill.title}</dt>
                <dd>
                  {drill.limit?.words ??
                    drill.sides
                      .map(({ side, dose }) => (side === 'both' ? dose : `${side} ${dose}`))
                      .join(', ')}
                </dd>
              </div>
            ))}
          </dl>
        ) : null}
        {/* Whole pages on purpose: without signal only they reach the phone's worker. */}
        <div className="today-act">
          <a className="act act-filled" href="/check-in">
            Check in
          </a>
        </div>
        <div className="word-acts centre">
          <a className="word-act" href="/rest-day">
            No training today
          </a>
          <a className="word-act" href="/today">
            Try again
          </a>
        </div>
      </main>
    </div>
  );
}

function NothingKept() {
  return (
    <div className="phone phone-plain">
      <main>
        <h1>No signal</h1>
        <p>
          This page could not be reached, and this phone keeps no plan to show instead. Open Today once with
          signal; from then on the check-in opens without.
        </p>
        <div className="today-act">
          <a className="act" href="/today">
            Try again
          </a>
        </div>
      </main>
    </div>
  );
}
