import type { PackRecord } from '#lib/schemas/pack-record.ts';

/** Ladders with all that belongs to them, as rows of a record. */
export type OwnLibrary = Pick<PackRecord, 'skill' | 'part' | 'ladder' | 'drill' | 'rung'>;
type Ladder = OwnLibrary['ladder'][number];
type Rung = OwnLibrary['rung'][number];
type Drill = OwnLibrary['drill'][number];

/** One ladder of a pack: the team's own that it is, or none, and then why. */
export type LadderMatch = {
  id: string;
  name: string;
  skill: string;
  part: string;
  own: { id: string; name: string } | null;
  /** Why no ladder of the team is the same; empty where one is. */
  why: string;
  /** Rungs in use here whose pass mark is another in this team. */
  otherMarks: string[];
};
export type LadderMatches = {
  ladders: LadderMatch[];
  /** Ids of the pack to the ids of the team, for skills, parts, ladders, drills and rungs that are the same. */
  ids: ReadonlyMap<string, string>;
};

/**
 * Which ladders of a pack are ladders of the team: by the key of the library, else by name in a part of the same name.
 * A ladder is the same only where every rung that the client's record names is there, counted in the same measure and
 * on the same sides: a number must mean here what it meant there. `used`: ids of rungs that the record names.
 * Retired ladders and rungs of the team are nobody's match. Pure; lists in any order; nothing missing is an error.
 */
export function matchLadders(pack: OwnLibrary, own: OwnLibrary, used: ReadonlySet<string>): LadderMatches {
  const ids = new Map<string, string>();
  for (const skill of pack.skill) {
    const same = sameSkill(skill, own.skill);
    if (same) ids.set(skill.id, same.id);
  }
  for (const part of pack.part) {
    const same = own.part.find(
      ({ skill_id, name }) => skill_id === ids.get(part.skill_id) && name === part.name,
    );
    if (same) ids.set(part.id, same.id);
  }
  const ladders = pack.ladder.map((ladder) => matchOne(ladder, { pack, own, used, ids }));
  return { ladders, ids };
}

type Given = { pack: OwnLibrary; own: OwnLibrary; used: ReadonlySet<string>; ids: Map<string, string> };

function matchOne(ladder: Ladder, { pack, own, used, ids }: Given): LadderMatch {
  const part = pack.part.find(({ id }) => id === ladder.part_id);
  const skill = pack.skill.find(({ id }) => id === part?.skill_id);
  const about = { id: ladder.id, name: ladder.name, skill: skill?.name ?? '', part: part?.name ?? '' };
  const other = (why: string): LadderMatch => ({ ...about, own: null, why, otherMarks: [] });
  const found = own.ladder.find(
    (one) => one.retired_at === null && isSameLadder(one, ladder, ids.get(ladder.part_id)),
  );
  if (!found) return other('the team has no ladder of this key or name');
  const pairs: [Rung, Rung][] = [];
  for (const rung of pack.rung.filter(({ ladder_id }) => ladder_id === ladder.id)) {
    const same = own.rung.find(
      (one) => one.ladder_id === found.id && one.retired_at === null && isSameRung(one, rung),
    );
    const counted = same && isCountedAlike(drillOf(pack, rung), drillOf(own, same));
    if (same && counted) pairs.push([rung, same]);
    else if (used.has(rung.id))
      return other(
        same
          ? `“${rung.name}” is counted in another way in the team’s own ${found.name}`
          : `“${rung.name}” is not in the team’s own ${found.name}`,
      );
  }
  ids.set(ladder.id, found.id);
  for (const [rung, same] of pairs) {
    ids.set(rung.id, same.id);
    ids.set(rung.drill_id, same.drill_id);
  }
  const otherMarks = pairs.filter(([rung, same]) => used.has(rung.id) && !isSameMark(rung, same));
  return {
    ...about,
    own: { id: found.id, name: found.name },
    why: '',
    otherMarks: otherMarks.map(([rung]) => rung.name),
  };
}

function sameSkill<Skill extends { key: string | null; name: string }>(
  skill: Skill,
  own: readonly Skill[],
): Skill | undefined {
  const byKey = skill.key === null ? undefined : own.find(({ key }) => key === skill.key);
  return byKey ?? own.find(({ name }) => name === skill.name);
}

function isSameLadder(own: Ladder, pack: Ladder, partId: string | undefined): boolean {
  if (own.key !== null && pack.key !== null) return own.key === pack.key;
  return own.part_id === partId && own.name === pack.name;
}

function isSameRung(own: Rung, pack: Rung): boolean {
  if (own.key !== null && pack.key !== null) return own.key === pack.key;
  return own.name === pack.name;
}

function isCountedAlike(one: Drill | undefined, other: Drill | undefined): boolean {
  if (!one || !other) return false;
  return (
    one.measure === other.measure &&
    one.each_side === other.each_side &&
    one.each_is_leg === other.each_is_leg
  );
}

function isSameMark(one: Rung, other: Rung): boolean {
  return (
    one.pass_sets === other.pass_sets &&
    one.pass_target === other.pass_target &&
    one.pass_days === other.pass_days &&
    one.pass_tries === other.pass_tries
  );
}

function drillOf(library: OwnLibrary, rung: Rung): Drill | undefined {
  return library.drill.find(({ id }) => id === rung.drill_id);
}
