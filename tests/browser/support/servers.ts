import { writeFileSync } from 'node:fs';
import { join } from 'node:path';

export const DEMO_PORT = 3411;
export const MORNING_PORT = 3412;
export const MORNING_ORIGIN = `http://localhost:${MORNING_PORT}`;
export const CLOCK_FILE = join(import.meta.dirname, '../../../.data/browser-clock');
/** A Monday; the weeks of the whole-morning test run from here. */
export const MORNING_START = '2026-03-02T09:00:00.000Z';

export function setClock(instant: string): void {
  writeFileSync(CLOCK_FILE, instant);
}
