import type { HistoryCheckIn, HistorySet } from '#lib/domain/history.ts';
import { MEASURE_UNITS, SUPPORT_LABELS } from '#lib/domain/labels.ts';
import type { Fault, Measure, Side, Support } from '#lib/domain/vocabulary.ts';

/** One planned line as the database gives it; each-side rungs may be planned for both sides in one line. */
type Item = {
  id: string;
  rungId: string;
  rung: string;
  ladderId: string;
  ladder: string;
  measure: Measure;
  eachSide: boolean;
  faults: Fault[];
  passTarget: number;
  passTries: number | null;
  side: Side;
  sets: number;
  target: number | null;
  minutes: number | null;
  support: Support | null;
  stopRule: string;
  notTwoDaysRunning?: boolean | undefined;
  /** Name of the rung of the same ladder that it is done together with. */
  pairedWith?: string | null | undefined;
};
type Session = {
  label: string;
  minutes: number | null;
  warmUp: string;
  warmUpMinutes?: number | undefined;
  restSeconds?: number | null | undefined;
  items: Item[];
};

export type DrillSide = {
  side: Side;
  rungId: string;
  rung: string;
  sets: number;
  target: number;
  tries: number | null;
  /** "4 x 8 s" */
  dose: string;
};
export type PhoneDrill = {
  key: string;
  title: string;
  /** Rung names differ between the sides: they stand at the side. */
  rungsDiffer: boolean;
  measure: Measure;
  unit: string;
  sides: DrillSide[];
  faults: Fault[];
  support: Support | null;
  note: string;
  /** The last time this drill was done; lines such as "left 8, 8, 7 s". */
  last: { date: string; lines: string[] } | null;
  /** What a limit of the client does to it; absent: nothing. */
  limit?: DrillLimit | undefined;
};
/** `out`: not to be done; otherwise its sets are cut already. `swaps`: what may be done instead, the first choice first. */
export type DrillLimit = { words: string; out: boolean; swaps: PhoneDrill[] };
export type PhoneSession = {
  label: string;
  minutes: number | null;
  warmUp: string;
  /** Warm-up and rest as the phone says them. */
  how: string[];
  /** Rest between sets, seconds; null or absent: not said. */
  restSeconds?: number | null | undefined;
  /** What every drill's note says alike: said once. */
  note: string;
  drills: PhoneDrill[];
};

/**
 * A planned session as the phone shows it: one drill a row, left and right of one ladder together, beside it what was
 * done the last time. `recent`: effective check-ins, newest first.
 */
export function phoneSession(session: Session, recent: HistoryCheckIn[]): PhoneSession {
  const drills: PhoneDrill[] = [];
  for (const item of session.items) {
    const sides = sidesOf(item);
    const partner = drills.find((drill) => isOtherSide(drill, item, session.items));
    if (partner) partner.sides.push(...sides);
    else drills.push(newDrill(item, sides));
  }
  const { label, minutes, warmUp, restSeconds = null } = session;
  const note = sharedNote(drills);
  const rows = drills.map((drill) => finished(note ? { ...drill, note: '' } : drill, recent));
  return { label, minutes, warmUp, how: howInWords(session), restSeconds, note, drills: rows };
}

/** "Warm-up, 6 min: wrists, shoulders.", "Rest 90 s between sets." */
function howInWords({ warmUp, warmUpMinutes = 0, restSeconds = null }: Session): string[] {
  const minutes = warmUpMinutes > 0 ? `, ${warmUpMinutes} min` : '';
  const lines = warmUp.replace(/\s*\n\s*/g, ', ').replace(/\.$/, '');
  return [
    ...(lines || minutes ? [`Warm-up${minutes}${lines ? `: ${lines}` : ''}.`] : []),
    ...(restSeconds === null ? [] : [`Rest ${restSeconds} s between sets.`]),
  ];
}

function sharedNote(drills: PhoneDrill[]): string {
  const [first, ...others] = drills;
  return first && others.length > 0 && others.every((drill) => drill.note === first.note) ? first.note : '';
}

function isOtherSide(drill: PhoneDrill, item: Item, items: Item[]): boolean {
  const first = items.find((other) => other.id === drill.key);
  const [only] = drill.sides;
  const oneSide = (side: Side | undefined) => side === 'left' || side === 'right';
  return (
    first?.ladderId === item.ladderId &&
    first.measure === item.measure &&
    drill.sides.length === 1 &&
    oneSide(only?.side) &&
    oneSide(item.side) &&
    only?.side !== item.side
  );
}

function sidesOf(item: Item): DrillSide[] {
  const sides: Side[] = item.eachSide && item.side === 'both' ? ['left', 'right'] : [item.side];
  const target = item.target ?? item.passTarget;
  const tries = item.measure === 'made-tried' ? item.passTries : null;
  const { rungId, rung, sets } = item;
  const planned = doseInWords({ sets, target, tries, unit: MEASURE_UNITS[item.measure] });
  const dose = sets === 0 ? 'not planned' : planned;
  return sides.map((side) => ({ side, rungId, rung, sets, target, tries, dose }));
}

/** "4 x 8 s", "8 of 10", "3 x 8". The sign is a real multiplication sign. */
export function doseInWords(dose: {
  sets: number;
  target: number;
  tries: number | null;
  unit: string;
}): string {
  const unit = withSpace(dose.unit);
  if (dose.tries !== null) return `${dose.sets > 1 ? `${dose.sets} × ` : ''}${dose.target} of ${dose.tries}`;
  return `${dose.sets} × ${dose.target}${unit}`;
}

function newDrill(item: Item, sides: DrillSide[]): PhoneDrill {
  const practice = item.minutes === null ? '' : `about ${item.minutes} min`;
  return {
    key: item.id,
    title: item.rung,
    rungsDiffer: false,
    measure: item.measure,
    unit: MEASURE_UNITS[item.measure],
    sides,
    faults: item.faults,
    support: item.support,
    note: [
      practice,
      item.support ? SUPPORT_LABELS[item.support] : '',
      item.pairedWith ? `a pyramid with ${item.pairedWith}` : '',
      item.notTwoDaysRunning ? 'not two days running' : '',
      item.stopRule,
    ]
      .filter(Boolean)
      .join(', '),
    last: null,
  };
}

function finished(drill: PhoneDrill, recent: HistoryCheckIn[]): PhoneDrill {
  const sides = [...drill.sides].sort((a, b) => a.side.localeCompare(b.side));
  const names = new Set(sides.map((side) => side.rung));
  return { ...drill, sides, rungsDiffer: names.size > 1, last: lastTime(drill, sides, recent) };
}

function lastTime(drill: PhoneDrill, sides: DrillSide[], recent: HistoryCheckIn[]): PhoneDrill['last'] {
  const isOurs = (set: HistorySet) =>
    sides.some((side) => side.rungId === set.rungId && side.side === set.side);
  const found = recent.find((checkIn) => checkIn.sets.some(isOurs));
  if (!found) return null;
  const lines = sides.flatMap(({ side, rungId }) => {
    const sets = found.sets.filter((set) => set.rungId === rungId && set.side === side);
    if (sets.length === 0) return [];
    const text = setsInWords(sets, drill.unit);
    return [side === 'both' ? text : `${side} ${text}`];
  });
  return { date: found.date, lines };
}

/** "8, 8, 7, 6 s"; a set not done is a dash; equal sets are "3 × 60 s". */
export function setsInWords(
  sets: { index: number; value: number | null; tried?: number | null }[],
  unit: string,
): string {
  const values = [...sets]
    .sort((a, b) => a.index - b.index)
    .map((set) => (set.value === null ? '–' : set.tried ? `${set.value}/${set.tried}` : String(set.value)));
  const same = values.length > 2 && new Set(values).size === 1 && values[0] !== '–';
  const text = same ? `${values.length} × ${values[0]}` : values.join(', ');
  return text + withSpace(unit);
}

/** A degree sign stands at its number, other units after a space. */
function withSpace(unit: string): string {
  return unit === '' || unit === '°' ? unit : ` ${unit}`;
}
