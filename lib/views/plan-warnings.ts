import type { Family } from '#lib/domain/vocabulary.ts';

/** Strength drills a session and skills in focus above which a plan warns (common practice, no source). */
const MOST_STRENGTH_DRILLS = 4;
const MOST_SKILLS = 2;
const STRENGTH: readonly Family[] = [
  'bent-arm-push',
  'bent-arm-pull',
  'straight-arm-push',
  'straight-arm-pull',
];
/** Preparation for all skills is no skill of its own. */
const FOR_EVERY_SKILL = /^every skill/i;

export type PlannedDrill = { session: string; ladderId: string; skill: string; family: Family };

/** The skills a plan works on, in the order of its lines; mobility and preparation do not count. */
export function skillsInFocus(drills: readonly PlannedDrill[]): string[] {
  const counted = drills.filter((drill) => drill.family !== 'mobility' && !FOR_EVERY_SKILL.test(drill.skill));
  return [...new Set(counted.map((drill) => drill.skill))];
}

/** What a plan asks too much of, in plain sentences. It warns, it never forbids. Empty: nothing to say. */
export function planWarnings(drills: readonly PlannedDrill[]): string[] {
  const warnings: string[] = [];
  for (const session of new Set(drills.map((drill) => drill.session))) {
    const strength = new Set(
      drills
        .filter((drill) => drill.session === session && STRENGTH.includes(drill.family))
        .map((drill) => drill.ladderId),
    );
    if (strength.size > MOST_STRENGTH_DRILLS) {
      warnings.push(
        `Session ${session} has ${strength.size} strength drills; more than ${MOST_STRENGTH_DRILLS} is usually too many.`,
      );
    }
  }
  const skills = skillsInFocus(drills);
  if (skills.length > MOST_SKILLS) {
    warnings.push(
      `${skills.length} skills in focus (${skills.join(', ')}); more than ${MOST_SKILLS} at once is usually too many.`,
    );
  }
  return warnings;
}
