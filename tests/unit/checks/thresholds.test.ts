import { expect, it } from 'vitest';
import { RULES_VERSION, THRESHOLDS } from '#lib/checks/thresholds.ts';
import kept from '#tests/fixtures/defaults.json' with { type: 'json' };

// Stored findings name the rules' version that made them, so no default changes under a version that was in use.
it('keeps every default of its rules version: a new value needs a new version, and a new line here', () => {
  const now = Object.fromEntries(Object.entries(THRESHOLDS).map(([id, { value }]) => [id, value]));
  expect({ rulesVersion: RULES_VERSION, defaults: now }).toEqual(kept);
});
