import { TISSUE_LABELS } from '#lib/checks/tissues.ts';
import { MEASURE_UNITS } from '#lib/domain/labels.ts';
import type { Support } from '#lib/domain/vocabulary.ts';
import type { DrillLine } from '#lib/planning/gaps/drill-line.ts';
import type { WeighedDrill } from '#lib/planning/gaps/find-gaps.ts';
import type { PartStanding } from '#lib/planning/gaps/gap-types.ts';
import { coverInWords } from '#lib/planning/gaps/why-left.ts';
import { listInWords } from './list-in-words.ts';

const ON: Partial<Record<Support, string>> = {
  'parallel-bars': 'on low parallel bars',
  wedge: 'on a wedge',
  'hands-turned-out': 'with the hands turned out',
};

/** "on a wedge"; nothing for the rung as it is. */
export function supportInWords(support: Support | null): string {
  return support ? (ON[support] ?? '') : '';
}

/** "Toe float, left, 5 x 3 s". */
export function lineInWords({ rung, side, sets, target, minutes }: DrillLine): string {
  const unit = MEASURE_UNITS[rung.measure];
  const dose = target === null ? `${minutes ?? 0} min` : `${sets} x ${target}${unit ? ` ${unit}` : ' reps'}`;
  return [rung.name, ...(side === 'both' ? [] : [side]), dose].join(', ');
}

/** "Bottom: hips over hands", "One-arm balance, left". */
export function partInWords(part: WeighedDrill['covers'][number]['part']): string {
  const { ask, seen } = part;
  return seen.side === 'both' ? ask.ladder.part : `${ask.ladder.part}, ${seen.side}`;
}

/** Why a chosen drill is in, a sentence for each thing: what it covers and how, and what it belongs to. */
export function whyChosen(drill: WeighedDrill, chosen: readonly WeighedDrill[]): string[] {
  const sentences = (['own', 'same-drill', 'loads-the-same'] as const).flatMap((how) => {
    const parts = drill.covers.filter((one) => one.how === how).map(({ part }) => partInWords(part));
    return parts.length > 0 ? [`Covers ${listInWords(parts)}: ${coverInWords(how)}.`] : [];
  });
  const belongs = chosen.filter(
    (other) => other !== drill && other.needs.some((tissue) => drill.gives.includes(tissue)),
  );
  if (belongs.length > 0) {
    const tissues = drill.gives.map((tissue) => TISSUE_LABELS[tissue]);
    sentences.push(
      `Mobility that belongs to ${listInWords(belongs.map(({ option }) => option.ladder.part))}: ${listInWords(tissues)}.`,
    );
  }
  return sentences;
}

export const STANDING_WORDS: Record<PartStanding['standing'], string> = {
  open: 'open',
  'not-known': 'not known',
  near: 'near',
  covered: 'covered',
};
