import type { Family } from '#lib/domain/vocabulary.ts';
import type { TeamPg } from './client.ts';

export type OutlineRow = { id: string; name: string; position: number; retired: boolean };
export type OutlinePart = OutlineRow & { skillId: string };
export type OutlineLadder = OutlineRow & {
  partId: string;
  family: Family;
  rungs: number;
  /** The other team that it came from with a client; null: the team's own. */
  broughtFrom: string | null;
};
export type Outline = { skills: OutlineRow[]; parts: OutlinePart[]; ladders: OutlineLadder[] };

/** Skills, parts and ladders of the team in their order, the retired ones among them. */
export async function findOutline(tx: TeamPg): Promise<Outline> {
  const read = async <Row extends OutlineRow>(sql: string) =>
    (await tx.client.query<Row>(sql, [tx.teamId])).rows;
  return {
    skills: await read<OutlineRow>(
      `select id, name, position, retired_at is not null as retired from skill where team_id = $1 order by position, id`,
    ),
    parts: await read<OutlinePart>(
      `select id, skill_id as "skillId", name, position, retired_at is not null as retired from part
       where team_id = $1 order by position, id`,
    ),
    ladders: await read<OutlineLadder>(
      `select l.id, l.part_id as "partId", l.name, l.family, l.position, l.retired_at is not null as retired, l.brought_from as "broughtFrom",
         (select count(*)::int from rung r where r.team_id = l.team_id and r.ladder_id = l.id and r.retired_at is null) as rungs
       from ladder l where l.team_id = $1 order by l.position, l.id`,
    ),
  };
}

export type Shelf = 'skill' | 'part' | 'ladder';

/** Lets nobody else change the outline of the team until the end of the transaction. */
export async function lockOutline(tx: TeamPg): Promise<void> {
  await tx.client.query('select id from skill where team_id = $1 order by id for update', [tx.teamId]);
}

export async function insertSkill(tx: TeamPg, skill: { name: string; position: number }): Promise<string> {
  const { rows } = await tx.client.query<{ id: string }>(
    'insert into skill (team_id, name, position) values ($1, $2, $3) returning id',
    [tx.teamId, skill.name, skill.position],
  );
  return rows[0]?.id ?? '';
}

export async function insertPart(
  tx: TeamPg,
  part: { skillId: string; name: string; position: number },
): Promise<string> {
  const { rows } = await tx.client.query<{ id: string }>(
    'insert into part (team_id, skill_id, name, position) values ($1, $2, $3, $4) returning id',
    [tx.teamId, part.skillId, part.name, part.position],
  );
  return rows[0]?.id ?? '';
}

export async function insertLadder(
  tx: TeamPg,
  ladder: {
    partId: string;
    name: string;
    family: Family;
    clean: string;
    faults: string[];
    position: number;
  },
): Promise<string> {
  const { rows } = await tx.client.query<{ id: string }>(
    `insert into ladder (team_id, part_id, name, family, clean, faults, position)
     values ($1, $2, $3, $4, $5, $6, $7) returning id`,
    [tx.teamId, ladder.partId, ladder.name, ladder.family, ladder.clean, ladder.faults, ladder.position],
  );
  return rows[0]?.id ?? '';
}

/** Plans name the skills in focus: they follow a new name, so that a goal stays a goal. */
export async function renameSkill(
  tx: TeamPg,
  skill: { id: string; name: string; was: string },
): Promise<void> {
  await tx.client.query('update skill set name = $3 where team_id = $1 and id = $2', [
    tx.teamId,
    skill.id,
    skill.name,
  ]);
  await tx.client.query(
    'update plan set skills_in_focus = array_replace(skills_in_focus, $2, $3) where team_id = $1 and $2 = any(skills_in_focus)',
    [tx.teamId, skill.was, skill.name],
  );
}

export async function renamePart(tx: TeamPg, part: { id: string; name: string }): Promise<void> {
  await tx.client.query('update part set name = $3 where team_id = $1 and id = $2', [
    tx.teamId,
    part.id,
    part.name,
  ]);
}

export async function setRetired(
  tx: TeamPg,
  row: { shelf: 'skill' | 'part'; id: string; retiredAt: Date | null },
): Promise<void> {
  await tx.client.query(`update ${row.shelf} set retired_at = $3 where team_id = $1 and id = $2`, [
    tx.teamId,
    row.id,
    row.retiredAt,
  ]);
}

export async function setPositions(
  tx: TeamPg,
  shelf: Shelf,
  places: { id: string; position: number }[],
): Promise<void> {
  await tx.client.query(
    `update ${shelf} set position = place.position
     from unnest($2::uuid[], $3::int[]) as place(id, position)
     where ${shelf}.team_id = $1 and ${shelf}.id = place.id`,
    [tx.teamId, places.map((place) => place.id), places.map((place) => place.position)],
  );
}

/** The part and its skill by name; undefined: no such part in this team. */
export async function findPart(
  tx: TeamPg,
  partId: string,
): Promise<{ part: string; skill: string } | undefined> {
  const { rows } = await tx.client.query<{ part: string; skill: string }>(
    `select p.name as part, s.name as skill from part p join skill s on s.team_id = p.team_id and s.id = p.skill_id
     where p.team_id = $1 and p.id = $2`,
    [tx.teamId, partId],
  );
  return rows[0];
}
