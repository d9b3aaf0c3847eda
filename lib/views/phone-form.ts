import type { OtherDrill } from './phone-other-drills.ts';
import type { PhoneDrill, PhoneSession } from './phone-session.ts';

type Today = {
  clientId: string;
  client: { coachName: string; usualMinutes: number | null; under18?: boolean };
  date: string;
  planVersion: number | null;
  sessions: PhoneSession[];
  otherDrills: OtherDrill[];
  films?: readonly { rungId: string; angle: string }[];
};

/** What of a client's day the phone keeps to open the check-in without signal: the plan, and nothing that was told. */
export function phoneForm({ clientId, client, date, planVersion, sessions, otherDrills, films = [] }: Today) {
  const planOnly = withFilmNotes(sessions, films).map((session) => ({
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

/** Sessions as the check-in shows them: beside a drill it says that a film of it is asked for. */
export function withFilmNotes(
  sessions: readonly PhoneSession[],
  films: NonNullable<Today['films']>,
): PhoneSession[] {
  return sessions.map((session) => ({
    ...session,
    drills: session.drills.map((drill) => ({ ...drill, note: withFilm(drill, films) })),
  }));
}

/** What is noted of a drill, and that a film of it is asked for. */
function withFilm({ note, sides }: PhoneDrill, films: NonNullable<Today['films']>): string {
  const asked = films.find(({ rungId }) => sides.some((side) => side.rungId === rungId));
  return [note, ...(asked ? [`A film is asked for: ${asked.angle}.`] : [])]
    .filter((line) => line !== '')
    .join(' ');
}
