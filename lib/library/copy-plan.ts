import type { Library, LibraryLadder, LibraryRung } from './library.ts';

export type NewId = () => string;
type Named = { id: string; key: string; name: string; position: number };
export type SkillRow = Named;
export type PartRow = { id: string; skillId: string; name: string; position: number };
export type LadderRow = Named & { partId: string; ladder: LibraryLadder };
export type DrillRow = { id: string; ladderId: string; camera: string; rung: LibraryRung };
export type RungRow = { id: string; ladderId: string; drillId: string; position: number; rung: LibraryRung };
export type LibraryRows = {
  skills: SkillRow[];
  parts: PartRow[];
  ladders: LadderRow[];
  drills: DrillRow[];
  rungs: RungRow[];
};

/** The library as rows of one team. Rungs that differ in the pass mark only share one drill. */
export function libraryRows(library: Library, newId: NewId): LibraryRows {
  const rows: LibraryRows = { skills: [], parts: [], ladders: [], drills: [], rungs: [] };
  for (const ladder of library.ladders) addLadder(rows, ladder, newId);
  return rows;
}

function addLadder(rows: LibraryRows, ladder: LibraryLadder, newId: NewId): void {
  const skill = skillOf(rows, ladder.skill, newId);
  const part = partOf(rows, { skillId: skill.id, name: ladder.part }, newId);
  const row = {
    id: newId(),
    partId: part.id,
    key: ladder.key,
    name: ladder.name,
    position: rows.ladders.length + 1,
    ladder,
  };
  rows.ladders.push(row);
  const drills = new Map<string, string>();
  ladder.rungs.forEach((rung, index) => {
    const profile = profileOf(rung);
    const drillId = drills.get(profile) ?? newId();
    if (!drills.has(profile))
      rows.drills.push({ id: drillId, ladderId: row.id, camera: ladder.camera, rung });
    drills.set(profile, drillId);
    rows.rungs.push({ id: newId(), ladderId: row.id, drillId, position: index + 1, rung });
  });
}

function skillOf(rows: LibraryRows, name: string, newId: NewId): SkillRow {
  const known = rows.skills.find((skill) => skill.name === name);
  if (known) return known;
  const skill = { id: newId(), key: skillKey(name), name, position: rows.skills.length + 1 };
  rows.skills.push(skill);
  return skill;
}

function partOf(rows: LibraryRows, wanted: { skillId: string; name: string }, newId: NewId): PartRow {
  const known = rows.parts.find((part) => part.skillId === wanted.skillId && part.name === wanted.name);
  if (known) return known;
  const position = rows.parts.filter((part) => part.skillId === wanted.skillId).length + 1;
  const part = { id: newId(), ...wanted, position };
  rows.parts.push(part);
  return part;
}

/** `Handstand push-up` to `handstand-push-up`: the key of a skill from the starter library. */
export function skillKey(name: string): string {
  return name
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
}

function profileOf(rung: LibraryRung): string {
  const { key: _key, pass: _pass, usualWeeks: _weeks, needsFilm: _film, note: _note, ...profile } = rung;
  return JSON.stringify(profile);
}
