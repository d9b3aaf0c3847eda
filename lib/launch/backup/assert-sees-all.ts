import type pg from 'pg';

/**
 * Throws unless this role sees every row of every table. Forced row-level security hides rows without an error, from the
 * owner too, and what counts them would be as blind as what copies them.
 */
export async function assertSeesAll(client: pg.ClientBase): Promise<void> {
  const { rows } = await client.query<{ role: string; table: string }>(
    `select current_user as role, c.relname as table from pg_class c
     where c.relnamespace = 'public'::regnamespace and c.relkind = 'r' and c.relrowsecurity
       and (c.relforcerowsecurity or not pg_has_role(c.relowner, 'usage'))
       and not (select rolsuper or rolbypassrls from pg_roles where rolname = current_user)
       and (exists (select from pg_policy p where p.polrelid = c.oid and not p.polpermissive)
         or not exists (select from pg_policy p where p.polrelid = c.oid and p.polpermissive
           and p.polcmd in ('*', 'r') and pg_get_expr(p.polqual, p.polrelid) = 'true'
           and (0 = any (p.polroles) or (select oid from pg_roles where rolname = current_user) = any (p.polroles))))
     order by c.relname limit 1`,
  );
  const [hidden] = rows;
  if (!hidden) return;
  throw new Error(
    `Row-level security hides rows of the table "${hidden.table}" from the role "${hidden.role}": a backup by it would be empty without saying so. Use the role that owns the tables and ran the migrations (DATABASE_URL), or one with BYPASSRLS.`,
  );
}
