import { TISSUE_LABELS } from '#lib/checks/tissues.ts';
import type { Tissue } from '#lib/domain/vocabulary.ts';
import type { OpenPart } from './covered-by.ts';
import type { GapResult, WeighedDrill } from './find-gaps.ts';
import { SERVES_TOO_FROM } from './gap-numbers.ts';
import type { RuledOut } from './ruled-out.ts';

/** Why one drill does not cover a part that is left. */
export type LeftReason = { drill: WeighedDrill | undefined; words: string; limit: RuledOut['limit'] };

/**
 * Why an open part is left: each drill that would cover it and what keeps it out; or that no room is left for strength
 * drills; or that no ladder has a drill for it. In the order of the drills, each sentence once.
 */
export function whyLeft(part: OpenPart, result: GapResult): LeftReason[] {
  const would = result.weighed.filter(({ covers }) => covers.some((one) => one.part === part));
  if (would.length === 0)
    return [{ drill: undefined, words: 'No ladder in use has a drill for it.', limit: undefined }];
  const reasons = would.map((drill) => ({
    drill,
    words: drill.out?.words ?? notTaken(drill, result),
    limit: drill.out?.limit,
  }));
  return reasons.filter(
    (reason, index) =>
      reasons.findIndex(
        (other) =>
          other.words === reason.words &&
          nameOf(other.drill) === nameOf(reason.drill) &&
          other.limit === reason.limit,
      ) === index,
  );
}

/** "Front lever holds, Tuck". */
export function nameOf({ option }: WeighedDrill): string {
  const rungs = [...new Set(option.lines.map(({ rung }) => rung.name))];
  return rungs.join(' and ');
}

function notTaken(drill: WeighedDrill, { weighed, room, chosen }: GapResult): string {
  const lacking = drill.needs.filter(
    (tissue) => !weighed.some(({ out, gives }) => !out && gives.includes(tissue)),
  );
  if (lacking.length > 0)
    return `asks for mobility that nothing allowed now gives: ${lacking.map((tissue) => TISSUE_LABELS[tissue as Tissue]).join(', ')}`;
  const most = room.reduce((sum, one) => sum + one.room, 0);
  const taken = chosen.filter(({ strength }) => strength).length;
  if (drill.strength && taken >= most)
    return `finds no room: ${most === 0 ? 'the sessions already hold' : `${taken} strength drills are chosen, and the sessions take`} four strength drills each at most`;
  return 'is not taken';
}

/** How a drill covers a part, in a few words. */
export function coverInWords(how: WeighedDrill['covers'][number]['how']): string {
  if (how === 'own') return 'its own drill';
  if (how === 'same-drill') return 'the same drill';
  return `loads the same tissues at least ${SERVES_TOO_FROM} times as hard`;
}
