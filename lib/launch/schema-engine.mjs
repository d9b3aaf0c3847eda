// Prisma's own schema engine in WebAssembly (the native one is a download), with the repairs it needs.

import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { PrismaPg } from '@prisma/adapter-pg';
import { bindMigrationAwareSqlAdapterFactory } from '@prisma/driver-adapter-utils';
import pg from 'pg';

const CHAR_OID = 18; // "char": the adapter refuses it; as Text the engine panics, as Character it works
const TEXT_OID = 25;
const CHARACTER_COLUMN = 6;
const FILTERS = { externalTables: [], externalEnums: [] };

/** The adapter splits scripts at every semicolon and refuses "char" columns: mend both. */
function repair(adapter, connections) {
  adapter.executeScript = async (script) => {
    await connections.query(script);
  };
  const query = adapter.client.query.bind(adapter.client);
  const queryRaw = adapter.queryRaw.bind(adapter);
  adapter.client = new Proxy(adapter.client, {
    get(target, key) {
      if (key !== 'query') return typeof target[key] === 'function' ? target[key].bind(target) : target[key];
      return async (...args) => {
        const result = await query(...args);
        result.rows.chars = (result.fields ?? []).flatMap((field, i) =>
          field.dataTypeID === CHAR_OID ? [i] : [],
        );
        for (const i of result.rows.chars) result.fields[i].dataTypeID = TEXT_OID;
        return result;
      };
    },
  });
  adapter.queryRaw = async (params) => {
    const result = await queryRaw(params);
    for (const i of result.rows.chars ?? []) result.columnTypes[i] = CHARACTER_COLUMN;
    return result;
  };
  return adapter;
}

/** The engine's own lock; a migration that outlives a killed process holds it until the server is done with it. */
const ENGINE_LOCK = 72707369;
/** In the script's own transaction: a migration is in the database with its record, or not at all. */
const RECORD_FINISHED = `
;do $record$ begin
  if to_regclass('public._prisma_migrations') is not null then
    update public._prisma_migrations set finished_at = now()
    where finished_at is null and rolled_back_at is null;
  end if;
end $record$;`;

/** What a killed process left: its script never committed, or else the record would say so. */
async function forgetUnfinished(url) {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    await client.query('select pg_advisory_lock($1)', [ENGINE_LOCK]);
    const { rows } = await client.query(
      "select to_regclass('public._prisma_migrations') is not null as made",
    );
    if (rows[0].made) {
      await client.query(
        'delete from public._prisma_migrations where finished_at is null and rolled_back_at is null',
      );
    }
  } finally {
    await client.end();
  }
}

/** One connection only: advisory lock and BEGIN..COMMIT stay together. The shadow database is a new, empty one. */
class MigrationAdapter extends PrismaPg {
  constructor(url) {
    super({ connectionString: url, max: 1 });
    this.url = url;
    this.open = [];
  }
  async connect() {
    const adapter = await super.connect();
    const connections = adapter.client;
    this.open.push(connections);
    const repaired = repair(adapter, connections);
    adapter.executeScript = async (script) => {
      try {
        await connections.query(script + RECORD_FINISHED);
      } catch (error) {
        // The engine says "external connector error" only.
        process.stderr.write(`PostgreSQL refused the migration: ${error.message}\n`);
        throw error;
      }
    };
    return repaired;
  }
  async close() {
    await Promise.all(this.open.map((connections) => connections.end().catch(() => undefined)));
  }
  async connectToShadowDb() {
    const name = `shadow_${crypto.randomUUID().replaceAll('-', '')}`;
    const shadow = new URL(this.url);
    shadow.pathname = `/${name}`;
    const admin = new pg.Client({ connectionString: this.url });
    await admin.connect();
    await admin.query(`CREATE DATABASE ${name} TEMPLATE template0`);
    const adapter = await new PrismaPg({ connectionString: shadow.href, max: 1 }).connect();
    repair(adapter, adapter.client);
    const dispose = adapter.dispose.bind(adapter);
    adapter.dispose = async () => {
      await dispose();
      await admin.query(`DROP DATABASE ${name} WITH (FORCE)`);
      await admin.end();
    };
    return adapter;
  }
}

async function loadEngine() {
  globalThis.PRISMA_WASM_PANIC_REGISTRY = { set_message: (message) => process.stderr.write(`${message}\n`) };
  const folder = join(createRequire(import.meta.url).resolve('@prisma/schema-engine-wasm'), '..');
  const glue = await import('@prisma/schema-engine-wasm/schema_engine_bg');
  const { instance } = await WebAssembly.instantiate(readFileSync(join(folder, 'schema_engine_bg.wasm')), {
    './schema_engine_bg.js': glue,
  });
  glue.__wbg_set_wasm(instance.exports);
  instance.exports.__wbindgen_start();
  return glue.SchemaEngine;
}

export function schemaFiles(root) {
  const folder = join(root, 'prisma/schema');
  return readdirSync(folder)
    .filter((file) => file.endsWith('.prisma'))
    .sort()
    .map((file) => ({ path: join(folder, file), content: readFileSync(join(folder, file), 'utf8') }));
}

function migrationList(root) {
  const baseDir = join(root, 'prisma/migrations');
  const lock = join(baseDir, 'migration_lock.toml');
  const migrationDirectories = readdirSync(baseDir, { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && existsSync(join(baseDir, entry.name, 'migration.sql')))
    .map((entry) => ({
      path: entry.name,
      migrationFile: {
        path: 'migration.sql',
        content: { tag: 'ok', value: readFileSync(join(baseDir, entry.name, 'migration.sql'), 'utf8') },
      },
    }))
    .sort((a, b) => (a.path < b.path ? -1 : 1));
  return {
    baseDir,
    lockfile: {
      path: 'migration_lock.toml',
      content: existsSync(lock) ? readFileSync(lock, 'utf8') : 'provider = "postgresql"\n',
    },
    shadowDbInitScript: '',
    migrationDirectories,
  };
}

async function withEngine(root, url, work) {
  const SchemaEngine = await loadEngine();
  const adapter = new MigrationAdapter(url);
  const files = schemaFiles(root);
  const engine = await SchemaEngine.new(
    { datamodels: files.map((file) => [file.path, file.content]) },
    () => undefined,
    bindMigrationAwareSqlAdapterFactory(adapter),
  );
  try {
    return await work(engine, files);
  } finally {
    await adapter.close();
  }
}

/** Applies every migration that is not applied yet; answers their names. Safe to kill at any moment and to run again. */
export async function deployMigrations(root, url) {
  await forgetUnfinished(url);
  return withEngine(root, url, async (engine) => {
    const done = await engine.applyMigrations({ migrationsList: migrationList(root), filters: FILTERS });
    return done.appliedMigrationNames;
  });
}

/** SQL that leads from the migrations to the schema files; empty when they agree. */
export async function migrationDiff(root, url) {
  return withEngine(root, url, async (engine, files) => {
    const result = await engine.diff({
      from: { tag: 'migrations', ...migrationList(root) },
      to: { tag: 'schemaDatamodel', files },
      script: true,
      exitCode: true,
      shadowDatabaseUrl: null,
      filters: FILTERS,
    });
    return result.exitCode === 2 ? (result.stdout ?? '') : '';
  });
}
