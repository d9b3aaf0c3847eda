import { expect, test } from 'vitest';
import { phoneForm } from '#lib/views/phone-form.ts';
import type { OtherDrill } from '#lib/views/phone-other-drills.ts';
import { aPhoneSession } from '#tests/fixtures/phone-session.ts';

const other: OtherDrill = {
  rungId: 'r',
  rung: 'Hang',
  ladder: 'Hangs',
  measure: 'hold',
  eachSide: false,
  faults: [],
  target: 30,
  tries: null,
  lastDone: '2026-11-20',
};
const session = aPhoneSession({ last: { date: '2026-11-22', lines: ['8, 8 s'] } }, { restSeconds: 90 });

test('the phone keeps the plan, the rest and what can be added, and nothing of what was done', () => {
  const client = { coachName: 'Ana', usualMinutes: 50 };
  const today = { clientId: 'c', client, date: '2026-11-24', planVersion: 3, sessions: [session] };
  const form = phoneForm({ ...today, otherDrills: [other] });
  expect(form.sessions[0]).toMatchObject({ restSeconds: 90, drills: [{ title: 'Planche', last: null }] });
  expect(form.otherDrills).toEqual([{ ...other, lastDone: null }]);
  expect(JSON.stringify(form)).not.toMatch(/2026-11-2[02]/);
});
