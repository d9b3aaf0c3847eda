import type { Actor } from '#lib/auth/actor.ts';
import { findOwn } from '#lib/db/check-ins.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { listHistoryRungs } from '#lib/db/history-rungs.ts';
import { listEffectiveCheckIns } from '#lib/db/raw-check-ins.ts';
import { asTold } from '#lib/domain/clip-verdict.ts';
import type { HistoryCheckIn, HistoryRung } from '#lib/domain/history.ts';
import { AppError } from '#lib/errors.ts';
import { type PhoneSession, phoneSession } from '#lib/views/phone-session.ts';

/** One's own check-in, to be corrected, with its drills as rows to fill in. */
export async function loadOwnCheckIn(
  actor: Actor,
  id: string,
): Promise<{ checkIn: HistoryCheckIn; sessions: PhoneSession[] }> {
  const { clientId } = actor;
  if (!clientId) throw new AppError('forbidden', 'Only a client corrects a check-in.');
  return withTeamPg(actor.scope, async (tx) => {
    const own = await findOwn(tx, clientId, id);
    const onDate = own
      ? await listEffectiveCheckIns(tx, [clientId], [own.date])
      : new Map<string, HistoryCheckIn[]>();
    const counted = onDate.get(clientId)?.find((one) => one.id === id);
    const checkIn = counted && { ...counted, sets: counted.sets.map(asTold) };
    if (!checkIn) throw new AppError('not-found', 'This check-in is not here, or it was corrected since.');
    const rungs = await listHistoryRungs(tx, [...new Set(checkIn.sets.map((set) => set.rungId))]);
    return { checkIn, sessions: checkIn.sets.length > 0 ? [asSession(checkIn, rungs)] : [] };
  });
}

/** The sets that were sent, as a session whose planned values are the ones they were planned with. */
function asSession(checkIn: HistoryCheckIn, rungs: HistoryRung[]): PhoneSession {
  const groups = new Map<string, HistoryCheckIn['sets']>();
  for (const set of checkIn.sets) {
    const key = `${set.rungId} ${set.side}`;
    groups.set(key, [...(groups.get(key) ?? []), set]);
  }
  const items = [...groups.entries()].flatMap(([key, sets]) => {
    const [first] = sets;
    const rung = rungs.find((one) => one.id === first?.rungId);
    if (!first || !rung) return [];
    return [
      {
        id: key,
        rungId: rung.id,
        rung: rung.name,
        ladderId: rung.ladderId,
        ladder: rung.ladder,
        measure: rung.measure,
        eachSide: rung.eachSide,
        faults: rung.faults,
        passTarget: rung.pass.target,
        passTries: rung.pass.tries,
        side: first.side,
        sets: sets.filter((set) => set.planned !== null).length,
        target: first.planned ?? first.value,
        minutes: null,
        support: first.support,
        stopRule: '',
      },
    ];
  });
  return phoneSession({ label: checkIn.session ?? '', minutes: checkIn.minutes, warmUp: '', items }, []);
}
