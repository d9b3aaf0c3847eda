import { MEASURE_UNITS, SUPPORT_LABELS } from '#lib/domain/labels.ts';
import type { Measure, Support } from '#lib/domain/vocabulary.ts';

export type NamedRung = { name: string; measure: Measure };
type Dose = { sets: number; target: number | null; minutes: number | null };
type Item = Dose & {
  session: string;
  side: string;
  timesPerWeek: number;
  support?: Support | null | undefined;
  stopRule?: string | undefined;
  notTwoDaysRunning?: boolean | undefined;
};

/** What a line of a plan whose rung is gone is called. */
export const GONE = 'a drill no longer in the ladders';

/** "4 × 8 s", "4 × 8 s in 10 min", "10 min". */
export function planDose({ sets, target, minutes }: Dose, measure: Measure | undefined): string {
  if (target === null) return `${minutes ?? 0} min`;
  const unit = measure ? MEASURE_UNITS[measure] : '';
  const joint = unit === '' || unit === '°' ? unit : ` ${unit}`;
  return `${sets} × ${target}${joint}${minutes === null ? '' : ` in ${minutes} min`}`;
}

export function perWeek(times: number): string {
  return times === 1 ? 'once a week' : times === 2 ? 'twice a week' : `${times} times a week`;
}

/** "Pull-up, left: 4 × 8, 3 times a week, not two days running, on rings; stop when it pinches". */
export function planItemInWords(item: Item, rung: NamedRung | undefined): string {
  const parts = [
    planDose(item, rung?.measure),
    perWeek(item.timesPerWeek),
    ...(item.notTwoDaysRunning ? ['not two days running'] : []),
    ...(item.support ? [SUPPORT_LABELS[item.support]] : []),
  ];
  const side = item.side === 'both' ? '' : `, ${item.side}`;
  return `${rung?.name ?? GONE}${side}: ${parts.join(', ')}${item.stopRule ? `; ${item.stopRule}` : ''}`;
}
