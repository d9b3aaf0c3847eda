import pg from 'pg';

/** Every team of an installation, for programs run by hand: as the owner, since the application sees one at a time. */
export async function listAllTeams(ownerUrl: string): Promise<{ id: string; name: string }[]> {
  const client = new pg.Client({ connectionString: ownerUrl });
  await client.connect();
  try {
    const { rows } = await client.query<{ id: string; name: string }>(
      'select id, name from team order by name, id',
    );
    return rows;
  } finally {
    await client.end();
  }
}
