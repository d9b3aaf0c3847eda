import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const text = readFileSync('docker-compose.yml', 'utf8');

/** The lines of one service of the compose file, from its name to the next one. */
function serviceOf(name: string): string {
  const lines = text.split('\n');
  const first = lines.findIndex((line) => line.startsWith(`  ${name}:`));
  const rest = lines.slice(first + 1);
  const length = rest.findIndex((line) => /^ {0,2}\S/.test(line));
  return rest.slice(0, length === -1 ? undefined : length).join('\n');
}

describe('docker compose up --scale worker=4', () => {
  const worker = serviceOf('worker');

  it('finds nothing in the worker that there can be one of only', () => {
    expect(worker).toContain("'lib/launch/serve.mjs', 'worker'");
    expect(worker).not.toMatch(/container_name|ports:|hostname:|network_mode|ipv4_address/);
    expect(text.split('services:')[0]).not.toMatch(/container_name|ports:|hostname:|network_mode/);
  });

  it('has workers on Redis, after the migration, stopped with time to finish', () => {
    expect(worker).toMatch(/environment:\s+<<: \*environment/);
    expect(text).toMatch(/REDIS_URL: redis:\/\/redis:6379/);
    expect(worker).toMatch(/migrate: \{ condition: service_completed_successfully \}/);
    expect(worker).toMatch(/redis: \{ condition: service_healthy \}/);
    expect(worker).toMatch(/stop_grace_period: 30s/);
  });

  it('never lets Redis drop jobs for want of memory', () => {
    expect(serviceOf('redis')).toMatch(/'--appendonly', 'yes', '--maxmemory-policy', 'noeviction'/);
  });
});

describe('what lies beside the compose file', () => {
  it.each(['.gitignore', '.dockerignore'])(
    'keys and backups reach neither the repository nor an image: %s',
    (file) => {
      const lines = readFileSync(file, 'utf8')
        .split('\n')
        .map((line) => line.replace(/\/$/, ''));
      expect(lines).toEqual(expect.arrayContaining(['.env', 'backups', '.data']));
    },
  );

  it('backup and restore share one image and the places of pages and workers', () => {
    expect(serviceOf('backup')).toContain("'files:/srv/plumbline/.data/files', './backups:/backups'");
    expect(serviceOf('restore')).toMatch(/<<: \*tools\s+entrypoint: .*backup\/restore\.ts/);
  });
});
