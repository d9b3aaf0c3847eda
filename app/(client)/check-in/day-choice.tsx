'use client';
import { useState } from 'react';
import { addDays } from '#lib/domain/local-date.ts';
import { shortDate } from '#lib/views/phone-dates.ts';
import type { Draft } from '../_phone/draft.ts';
import { phoneZone } from '../_phone/phone-zone.ts';
import { daysToAsk } from '../_phone/which-day.ts';
import type { Change } from './use-draft.ts';

/** How many days back the phone offers (own choice: two weeks); older ones are the coach's import. */
const DAYS_BACK = 14;

/** The day of the training. A late entry chooses another one; the time of sending is kept beside it. */
export function DayChoice({ draft, today, change }: { draft: Draft; today: string; change: Change }) {
  const days = Array.from({ length: DAYS_BACK }, (_, back) => addDays(today, -back));
  const all = days.includes(draft.date) ? days : [draft.date, ...days];
  return (
    <label>
      <span className="hidden-words">Day</span>
      <select value={draft.date} onChange={(event) => change({ date: event.target.value, dayTold: true })}>
        {all.map((day) => (
          <option key={day} value={day}>
            {shortDate(day)}
          </option>
        ))}
      </select>
    </label>
  );
}

/** Filled in after midnight or on a later day: which day is asked, once; nothing waits for the answer. */
export function WhichDay({ draft, change }: { draft: Draft; change: Change }) {
  const [days] = useState(() => daysToAsk(draft, new Date(), phoneZone()));
  if (draft.dayTold || days.length === 0) return null;
  return (
    <fieldset className="which-day">
      <legend>Which day was it?</legend>
      <div className="cells cells-2">
        {days.map((day) => (
          <button
            key={day}
            type="button"
            className="cell"
            onClick={() => change({ date: day, dayTold: true })}
          >
            {shortDate(day)}
          </button>
        ))}
      </div>
    </fieldset>
  );
}
