import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { afterAll, inject } from 'vitest';
import { appUrl } from '#lib/launch/migrate.mjs';

// Every test file has a database of its own, cloned from the template before any module of ours is loaded.
const name = `plumbline_t_${randomUUID().replaceAll('-', '').slice(0, 16)}`;
const server = inject('serverUrl');
const owner = new URL(server);
owner.pathname = `/${name}`;

const files = mkdtempSync(join(tmpdir(), 'plumbline-files-'));

const admin = new pg.Client({ connectionString: server });
await admin.connect();
await admin.query('select pg_advisory_lock(72170002)'); // a template can be copied by one at a time
await admin.query(`create database ${name} template ${inject('template')}`);
await admin.query('select pg_advisory_unlock(72170002)');

Object.assign(process.env, {
  DATABASE_URL: owner.href,
  APP_DATABASE_URL: appUrl(owner.href, inject('secret')),
  PLUMBLINE_SECRET: inject('secret'),
  PLUMBLINE_ORIGIN: 'http://localhost:3000',
  PLUMBLINE_FILES: files,
});

afterAll(async () => {
  const { closeDb } = await import('#lib/db/client.ts');
  await closeDb();
  // Without force: a pool says it has ended before its connections are gone, and one that is cut then has nobody to hear it.
  await admin.query(`drop database if exists ${name}`);
  await admin.end();
  rmSync(files, { recursive: true, force: true });
});
