import type { Family } from '#lib/domain/vocabulary.ts';

/** Preparation for all skills is no skill of its own. */
const FOR_EVERY_SKILL = /^every skill/i;

/** The skills that drills work on, in their order; mobility and preparation do not count. */
export function skillsInFocus(drills: readonly { skill: string; family: Family }[]): string[] {
  const counted = drills.filter((drill) => drill.family !== 'mobility' && !FOR_EVERY_SKILL.test(drill.skill));
  return [...new Set(counted.map((drill) => drill.skill))];
}
