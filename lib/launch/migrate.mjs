// Brings a database up to date: Prisma migrations, then rules, walls and functions (all safe to repeat).
//   node lib/launch/migrate.mjs            deploy to DATABASE_URL
//   node lib/launch/migrate.mjs --check    exit 2 when schema files and migrations differ
//   node lib/launch/migrate.mjs --new NAME write the difference as a new migration
import { createHmac } from 'node:crypto';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import pg from 'pg';
import { deployMigrations, migrationDiff } from './schema-engine.mjs';

const root = join(dirname(fileURLToPath(import.meta.url)), '../..');

/** The password of the application's role follows from the secret, so that every process can know it. */
export function appPassword(secret) {
  return createHmac('sha256', secret).update('database role plumbline_app').digest('base64url');
}

/** The address that the application uses: the same server and database, the walled role. */
export function appUrl(ownerUrl, secret) {
  const url = new URL(ownerUrl);
  url.username = 'plumbline_app';
  url.password = appPassword(secret);
  return url.href;
}

export async function ensureDatabase(ownerUrl) {
  const url = new URL(ownerUrl);
  const name = decodeURIComponent(url.pathname.slice(1));
  url.pathname = '/postgres';
  const admin = new pg.Client({ connectionString: url.href });
  await admin.connect();
  try {
    const found = await admin.query('select 1 from pg_database where datname = $1', [name]);
    if (found.rowCount === 0)
      await admin.query(`create database ${pg.escapeIdentifier(name)} template template0`);
  } finally {
    await admin.end();
  }
}

export async function dropDatabase(ownerUrl) {
  const url = new URL(ownerUrl);
  const name = decodeURIComponent(url.pathname.slice(1));
  url.pathname = '/postgres';
  const admin = new pg.Client({ connectionString: url.href });
  await admin.connect();
  try {
    await admin.query(`drop database if exists ${pg.escapeIdentifier(name)} with (force)`);
  } finally {
    await admin.end();
  }
}

/** One process at a time; a second one waits for it. */
export async function migrate(ownerUrl, secret) {
  const client = new pg.Client({ connectionString: ownerUrl });
  await client.connect();
  try {
    await client.query('select pg_advisory_lock(72170003)');
    const applied = await deployMigrations(root, ownerUrl);
    await client.query('begin');
    await client.query('select pg_advisory_xact_lock(72170001)');
    for (const file of ['rules', 'walls', 'functions', 'operation', 'rights', 'handover']) {
      await client.query(readFileSync(join(root, `lib/db/sql/${file}.sql`), 'utf8') || 'select 1');
    }
    await client.query(`alter role plumbline_app password ${pg.escapeLiteral(appPassword(secret))}`);
    await client.query('commit');
    return applied;
  } finally {
    await client.end();
  }
}

async function main([flag, name]) {
  const url = process.env.DATABASE_URL;
  if (!url) throw new Error('DATABASE_URL is missing: the connection of the owner role');
  if (flag === '--check' || flag === '--new') {
    const sql = await migrationDiff(root, url);
    if (flag === '--check') {
      if (sql) process.stdout.write(`Schema files and migrations differ:\n${sql}\n`);
      return sql ? 2 : 0;
    }
    const folder = join(root, 'prisma/migrations', name);
    mkdirSync(folder, { recursive: true });
    writeFileSync(join(folder, 'migration.sql'), sql);
    writeFileSync(join(root, 'prisma/migrations/migration_lock.toml'), 'provider = "postgresql"\n');
    return 0;
  }
  const secret = process.env.PLUMBLINE_SECRET;
  if (!secret) throw new Error('PLUMBLINE_SECRET is missing');
  await ensureDatabase(url);
  const applied = await migrate(url, secret);
  process.stdout.write(`${applied.length} migrations applied\n`);
  return 0;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  // The engine leaves a lock timer behind: leave explicitly.
  main(process.argv.slice(2)).then(
    (code) => process.exit(code),
    (error) => {
      process.stderr.write(`${error.stack ?? error}\n`);
      process.exit(1);
    },
  );
}
