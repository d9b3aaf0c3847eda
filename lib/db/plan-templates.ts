import type { TeamPg } from './client.ts';

export type TemplateRow = { id: string; name: string };

export async function listTemplates(tx: TeamPg): Promise<TemplateRow[]> {
  const { rows } = await tx.client.query<TemplateRow>(
    'select id, name from plan_template where team_id = $1 order by lower(name), id',
    [tx.teamId],
  );
  return rows;
}

/** `body` as it was kept: read it with the schema of templates. */
export async function listTemplateBodies(tx: TeamPg): Promise<(TemplateRow & { body: unknown })[]> {
  const { rows } = await tx.client.query<TemplateRow & { body: unknown }>(
    'select id, name, body from plan_template where team_id = $1 order by lower(name), id',
    [tx.teamId],
  );
  return rows;
}

export async function findTemplate(
  tx: TeamPg,
  id: string,
): Promise<(TemplateRow & { body: unknown }) | undefined> {
  const { rows } = await tx.client.query<TemplateRow & { body: unknown }>(
    'select id, name, body from plan_template where team_id = $1 and id = $2::uuid',
    [tx.teamId, id],
  );
  return rows[0];
}

/** Undefined: a template of this name is kept already. Holds the team's row, so that two at once cannot both win. */
export async function insertTemplate(
  tx: TeamPg,
  template: { name: string; body: object; now: Date },
): Promise<string | undefined> {
  await tx.client.query('select 1 from team where id = $1 for no key update', [tx.teamId]);
  const { rows } = await tx.client.query<{ id: string }>(
    `insert into plan_template (team_id, name, body, created_at) select $1, $2, $3, $4
     where not exists (select from plan_template where team_id = $1 and lower(name) = lower($2)) returning id`,
    [tx.teamId, template.name, JSON.stringify(template.body), template.now],
  );
  return rows[0]?.id;
}

/** False: it is not there. */
export async function deleteTemplate(tx: TeamPg, id: string): Promise<boolean> {
  const { rowCount } = await tx.client.query(
    'delete from plan_template where team_id = $1 and id = $2::uuid',
    [tx.teamId, id],
  );
  return rowCount === 1;
}
