import type { ClientHistory, HistoryCheckIn, HistoryPain } from '#lib/domain/history.ts';
import { addDays } from '#lib/domain/local-date.ts';
import { DANGER_SIGNS, type PainRegion, type PainSide } from '#lib/domain/vocabulary.ts';
import { aPain } from '#tests/fixtures/history-builders.ts';

type Place = { region: PainRegion; side: PainSide };
const FRESH_DAYS = 14;

/**
 * The same client with one joint score of the last 14 days higher, or with pain on a day on which nothing hurt; the
 * history itself where no check-in is that fresh. Older scores are left alone: they are what is usual for the client,
 * and what is usual is no news. So are check-ins that say nothing of the place: a score there is news of a new day.
 */
export function withMorePain(history: ClientHistory, seed: number): ClientHistory {
  const raisable = history.checkIns.flatMap((checkIn) =>
    checkIn.pain
      .filter((pain) => pain.kind === 'joint' && pain.value < 10 && isFresh(history, checkIn, pain))
      .map((pain) => ({ checkIn, pain })),
  );
  const raised = raisable[seed % Math.max(1, raisable.length)];
  if (raised && seed % 3 > 0)
    return withCheckIn(history, raised.checkIn, higher(raised.checkIn, raised.pain, seed));
  const place = raised?.pain ?? { region: seed % 2 === 0 ? 'wrist-back' : 'elbow-inner', side: 'right' };
  const calm = history.checkIns.filter((each) => each.nothingHurts && isFresh(history, each, place));
  const sore = calm[seed % Math.max(1, calm.length)];
  return sore ? withCheckIn(history, sore, nowSore(history, sore, place, seed)) : history;
}

/**
 * The same client with one more danger sign in one of the last check-ins, where one was told before the same again;
 * the history itself where there is no check-in.
 */
export function withDanger(history: ClientHistory, seed: number): ClientHistory {
  const last = history.checkIns.slice(-8);
  const checkIn = last[seed % Math.max(1, last.length)];
  if (!checkIn) return history;
  const [known] = history.checkIns.flatMap((each) => each.dangerSigns);
  const region = seed % 2 === 0 ? ('elbow-inner' as const) : null;
  const place = { region, side: region && ('left' as const) };
  const sign = known ?? { sign: DANGER_SIGNS[seed % 3] ?? 'swelling', ...place };
  const dangerSigns = [...checkIn.dangerSigns, { ...sign, goneWithinMinute: seed % 5 > 0 }];
  return withCheckIn(history, checkIn, { ...checkIn, dangerSigns });
}

function withCheckIn(history: ClientHistory, old: HistoryCheckIn, now: HistoryCheckIn): ClientHistory {
  return { ...history, checkIns: history.checkIns.map((each) => (each === old ? now : each)) };
}

function higher(checkIn: HistoryCheckIn, raised: HistoryPain, seed: number): HistoryCheckIn {
  const value = Math.min(10, raised.value + 1 + (seed % 6));
  return { ...checkIn, pain: checkIn.pain.map((each) => (each === raised ? { ...each, value } : each)) };
}

/** Every other place keeps the 0 that "nothing hurts" gave it, and this one keeps its morning. */
function nowSore(
  history: ClientHistory,
  checkIn: HistoryCheckIn,
  place: Place,
  seed: number,
): HistoryCheckIn {
  const { region, side } = place;
  const { intakePain } = history.client;
  const places = [place, ...intakePain, ...history.checkIns.flatMap((each) => each.pain)];
  const calm = [...new Map(places.map((each) => [`${each.region} ${each.side}`, each])).values()].flatMap(
    (each) =>
      (['after', 'morning'] as const).map((moment) =>
        aPain(0, { region: each.region, side: each.side, moment }),
      ),
  );
  const pain = [...calm, aPain(1 + (seed % 8), { region, side, moment: 'during' })];
  return { ...checkIn, nothingHurts: false, pain };
}

function isFresh(history: ClientHistory, { date }: HistoryCheckIn, { region, side }: Place): boolean {
  const speaks = (each: HistoryCheckIn) =>
    each.nothingHurts || each.pain.some((pain) => pain.region === region && pain.side === side);
  const newest = history.checkIns
    .filter(speaks)
    .map((each) => each.date)
    .sort()
    .at(-1);
  return newest !== undefined && date > addDays(newest, -FRESH_DAYS);
}
