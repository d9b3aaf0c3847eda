import type { OtherDrill } from './phone-other-drills.ts';
import type { PhoneSession } from './phone-session.ts';

type Today = {
  clientId: string;
  client: { coachName: string; usualMinutes: number | null; under18?: boolean };
  date: string;
  planVersion: number | null;
  sessions: PhoneSession[];
  otherDrills: OtherDrill[];
};

/** What of a client's day the phone keeps to open the check-in without signal: the plan, and nothing that was told. */
export function phoneForm({ clientId, client, date, planVersion, sessions, otherDrills }: Today) {
  const planOnly = sessions.map((session) => ({
    ...session,
    drills: session.drills.map((drill) => ({ ...drill, last: null })),
  }));
  return {
    clientId,
    coach: client.coachName,
    planVersion,
    usualMinutes: client.usualMinutes,
    under18: client.under18 === true,
    sessions: planOnly,
    otherDrills: otherDrills.map((other) => ({ ...other, lastDone: null })),
    date,
  };
}
