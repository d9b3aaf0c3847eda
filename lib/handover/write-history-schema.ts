import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { findingJsonSchema } from './finding-json-schema.ts';
import { historyJsonSchema } from './history-json-schema.ts';

// Run after a change of lib/schemas/history.ts or finding-row.ts: node --import tsx lib/handover/write-history-schema.ts
const write = (name: string, schema: Record<string, unknown>) =>
  writeFileSync(fileURLToPath(new URL(name, import.meta.url)), `${JSON.stringify(schema, null, 2)}\n`);
write('./history.schema.json', historyJsonSchema());
write('./finding.schema.json', findingJsonSchema());
