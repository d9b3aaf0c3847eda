import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { historyJsonSchema } from './history-json-schema.ts';

// Run after a change of lib/schemas/history.ts: node --import tsx lib/handover/write-history-schema.ts
const file = fileURLToPath(new URL('./history.schema.json', import.meta.url));
writeFileSync(file, `${JSON.stringify(historyJsonSchema(), null, 2)}\n`);
