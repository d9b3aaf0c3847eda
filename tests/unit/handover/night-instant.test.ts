import { expect, test } from 'vitest';
import { nightInstant } from '#lib/handover/night-instant.ts';

test.each([
  ['Lisbon in winter', '2026-11-24', 'Europe/Lisbon', '2026-11-25T03:00:00.000Z'],
  ['Lisbon in summer', '2026-07-01', 'Europe/Lisbon', '2026-07-02T02:00:00.000Z'],
  ['Lisbon, clocks forward at 01:00', '2026-03-28', 'Europe/Lisbon', '2026-03-29T02:00:00.000Z'],
  ['Lisbon, clocks back at 02:00', '2026-10-24', 'Europe/Lisbon', '2026-10-25T03:00:00.000Z'],
  ['Kiritimati, 14 hours ahead', '2026-11-24', 'Pacific/Kiritimati', '2026-11-24T13:00:00.000Z'],
  ['Pago Pago, 11 hours behind', '2026-11-24', 'Pacific/Pago_Pago', '2026-11-25T14:00:00.000Z'],
  [
    'Athens, 03:00 skipped: 04:00 after the change',
    '2026-03-28',
    'Europe/Athens',
    '2026-03-29T01:00:00.000Z',
  ],
  ['Athens, 03:00 twice: the second', '2026-10-24', 'Europe/Athens', '2026-10-25T01:00:00.000Z'],
  ['over the end of a year', '2026-12-31', 'Europe/Lisbon', '2027-01-01T03:00:00.000Z'],
])('%s', (_name, date, zone, instant) => {
  expect(nightInstant(date, zone)).toBe(instant);
});
