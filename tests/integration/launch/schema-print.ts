import pg from 'pg';

const PARTS = {
  columns: `select table_schema || '.' || table_name || '.' || column_name || ' ' || data_type || ' ' || is_nullable
      || coalesce(' ' || column_default, '') as line
    from information_schema.columns where table_schema = 'public'`,
  constraints: `select conrelid::regclass || ' ' || conname || ' ' || pg_get_constraintdef(oid) as line
    from pg_constraint where connamespace = 'public'::regnamespace`,
  indexes: `select indexdef as line from pg_indexes where schemaname = 'public'`,
  functions: `select pg_get_functiondef(oid) as line from pg_proc where pronamespace = 'public'::regnamespace and prokind = 'f'`,
  policies: `select tablename || ' ' || policyname || ' ' || qual || ' ' || coalesce(with_check, '') as line from pg_policies`,
  walls: `select relname || ' ' || relrowsecurity || ' ' || relforcerowsecurity || ' ' || coalesce(relacl::text, '') as line
    from pg_class where relnamespace = 'public'::regnamespace and relkind = 'r'`,
  migrations: `select migration_name || ' ' || checksum || ' ' || (finished_at is not null) || ' ' || (rolled_back_at is null)
      as line from _prisma_migrations`,
};

/** Everything that migrations make, as lines in a fixed order: equal for equal schemas. */
export async function schemaPrint(url: string): Promise<Record<string, string[]>> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    const print: Record<string, string[]> = {};
    for (const [part, sql] of Object.entries(PARTS)) {
      const { rows } = await client.query<{ line: string }>(`select line from (${sql}) each order by line`);
      print[part] = rows.map((row) => row.line);
    }
    return print;
  } finally {
    await client.end();
  }
}
