import type { HistoryCheckIn } from '#lib/domain/history.ts';
import { FAULT_LABELS } from '#lib/domain/labels.ts';
import type { ClipVerdict, Fault, Side } from '#lib/domain/vocabulary.ts';
import { datedDay } from '../say-date.ts';

/** The set of a verdict as the route takes it. */
export type SetPlace =
  | { told: true; checkInId: string; side: Side; index: number }
  | { told: false; side: Side };
export type SetToJudge = {
  key: string;
  place: SetPlace;
  /** "left, set 2: 14 s", "left, told in no check-in". */
  label: string;
  /** "told clean", "told: hips turn"; empty where nothing was told. */
  told: string;
  /** What was seen of it on this film. */
  seen: {
    id: string;
    verdict: ClipVerdict;
    faults: Fault[];
    by: string;
    /** ISO. */
    at: string;
  } | null;
};
type Verdict = {
  id: string;
  checkInId: string | null;
  side: Side;
  index: number | null;
  verdict: ClipVerdict;
  faults: Fault[];
  by: string;
  at: Date;
};
type Asked = {
  rungId: string;
  eachSide: boolean;
  unit: string;
  side: Side;
  filmedOn: string;
  /** Check-ins around the day of the film. */
  checkIns: readonly HistoryCheckIn[];
  verdicts: readonly Verdict[];
};

/**
 * The sets that a film may show: done sets of its rung in the check-ins given, the day of the film first; then one for
 * each side that was told in no check-in. Verdicts stand with the set they are about.
 */
export function setsToJudge(asked: Asked): SetToJudge[] {
  const near = [...asked.checkIns].sort(
    (a, b) =>
      Number(b.date === asked.filmedOn) - Number(a.date === asked.filmedOn) || (a.date < b.date ? -1 : 1),
  );
  const told = near.flatMap((checkIn) => toldSets(checkIn, asked));
  const sides: Side[] = asked.eachSide ? ['left', 'right'] : ['both'];
  const untold = sides.map((side): SetToJudge => {
    const found = asked.verdicts.find((one) => one.checkInId === null && one.side === side);
    const label = `${side === 'both' ? '' : `${side}, `}a try told in no check-in`;
    return { key: `untold ${side}`, place: { told: false, side }, label, told: '', seen: seenOf(found) };
  });
  return [...told, ...untold];
}

function toldSets(checkIn: HistoryCheckIn, asked: Asked): SetToJudge[] {
  const ofRung = checkIn.sets
    .filter(({ rungId }) => rungId === asked.rungId)
    .sort((a, b) => a.index - b.index);
  const number = (side: Side, index: number) =>
    ofRung.filter((one) => one.side === side && one.index <= index).length;
  return ofRung
    .filter(({ value, how }) => value !== null && how !== 'not-done')
    .map((set) => {
      const { side, index, value } = set;
      const place = { told: true as const, checkInId: checkIn.id, side, index };
      const onDay = checkIn.date === asked.filmedOn ? '' : `${datedDay(checkIn.date, asked.filmedOn)}, `;
      const amount = asked.unit ? `${value} ${asked.unit}` : String(value);
      const label = `${onDay}${side === 'both' ? '' : `${side}, `}set ${number(side, index)}: ${amount}`;
      const { faults, clean } = set.onFilm?.told ?? set;
      const said = faults.map((fault) => FAULT_LABELS[fault]).join(', ');
      const found = asked.verdicts.find(
        (one) => one.checkInId === checkIn.id && one.side === side && one.index === index,
      );
      return {
        key: `${checkIn.id} ${side} ${index}`,
        place,
        label,
        told: said ? `told: ${said}` : clean ? 'told clean' : 'told not clean',
        seen: seenOf(found),
      };
    });
}

function seenOf(verdict: Verdict | undefined): SetToJudge['seen'] {
  if (!verdict) return null;
  const { id, faults, by, at } = verdict;
  return { id, verdict: verdict.verdict, faults, by, at: at.toISOString() };
}

/** The one to begin with: the set that the film was sent with, else the first of its side that nobody judged, else the first. */
export function firstToJudge(
  sets: readonly SetToJudge[],
  clip: { side: Side; sentWith: { checkInId: string; side: Side; index: number } | undefined },
): string {
  const { sentWith } = clip;
  const own = sentWith && `${sentWith.checkInId} ${sentWith.side} ${sentWith.index}`;
  const found =
    sets.find(({ key }) => key === own) ??
    sets.find(({ seen, place }) => !seen && (clip.side === 'both' || place.side === clip.side)) ??
    sets[0];
  return found?.key ?? '';
}
