import type { PlanNews } from '#lib/usecases/plan-news.ts';
import { dayAsSaid } from '#lib/views/phone-dates.ts';
import { unbrokenDose } from '#lib/views/unbroken-dose.ts';

type Props = { news: PlanNews; notes: string; by: string; today: string };

/** What is new about the plan since the last training, and the coach's words about it. */
export function WhatChanged({ news, notes, by, today }: Props) {
  const { changes, coming } = news;
  return (
    <>
      {changes.length > 0 ? (
        <section aria-labelledby="changed" className="changed">
          <h2 id="changed">Changed since last time</h2>
          <ul>
            {changes.map((line) => (
              <li key={line}>{unbrokenDose(line)}</li>
            ))}
          </ul>
        </section>
      ) : null}
      {notes ? (
        <p className="quiet">
          {by} about this plan: “{notes}”
        </p>
      ) : null}
      {coming ? <p className="quiet">A new plan begins {dayAsSaid(coming, today)}.</p> : null}
    </>
  );
}
