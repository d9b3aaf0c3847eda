import type { Family } from '#lib/domain/vocabulary.ts';

type Row = { id: string; name: string; retired: boolean };
type Outline = {
  skills: Row[];
  parts: (Row & { skillId: string })[];
  ladders: (Row & { partId: string; family: Family; rungs: number; broughtFrom?: string | null })[];
};

export type ListedLadder = { id: string; name: string; rungs: string; people: string };
export type ListedPart = {
  id: string;
  name: string;
  ladders: ListedLadder[];
  retiredLadders: ListedLadder[];
};
export type ListedSkill = { id: string; name: string; parts: ListedPart[]; retiredParts: Row[] };
export type LadderList = { skills: ListedSkill[]; retiredSkills: Row[]; ladders: number };

/** The library as shelves: skills, their parts, the ladders of each part; what is retired stands apart. */
export function ladderList(outline: Outline, people: ReadonlyMap<string, number>): LadderList {
  const toLadder = (ladder: Outline['ladders'][number]): ListedLadder => ({
    id: ladder.id,
    name: ladder.name,
    rungs: `${counted(ladder.rungs, 'rung')}${ladder.broughtFrom ? `, came from ${ladder.broughtFrom}` : ''}`,
    people: people.has(ladder.id) ? counted(people.get(ladder.id) ?? 0, 'client') : 'nobody',
  });
  const toPart = (part: Outline['parts'][number]): ListedPart => {
    const ladders = outline.ladders.filter((ladder) => ladder.partId === part.id);
    return {
      id: part.id,
      name: part.name,
      ladders: ladders.filter((ladder) => !ladder.retired).map(toLadder),
      retiredLadders: ladders.filter((ladder) => ladder.retired).map(toLadder),
    };
  };
  const partsOf = (skillId: string) => outline.parts.filter((part) => part.skillId === skillId);
  return {
    skills: outline.skills
      .filter((skill) => !skill.retired)
      .map((skill) => ({
        id: skill.id,
        name: skill.name,
        parts: partsOf(skill.id)
          .filter((part) => !part.retired)
          .map(toPart),
        retiredParts: partsOf(skill.id).filter((part) => part.retired),
      })),
    retiredSkills: outline.skills.filter((skill) => skill.retired),
    ladders: outline.ladders.filter((ladder) => !ladder.retired).length,
  };
}

/** Parts in use to choose from, each with its skill: "Handstand: Free hold". */
export function partChoices({ skills, parts }: Outline): { id: string; label: string }[] {
  return skills
    .filter((skill) => !skill.retired)
    .flatMap((skill) =>
      parts
        .filter((part) => part.skillId === skill.id && !part.retired)
        .map((part) => ({ id: part.id, label: `${skill.name}: ${part.name}` })),
    );
}

function counted(count: number, one: string): string {
  return `${count} ${one}${count === 1 ? '' : 's'}`;
}
