import { describe, expect, test } from 'vitest';
import type { Draft } from '#app/(client)/_phone/draft.ts';
import { toBody } from '#app/(client)/_phone/to-body.ts';
import { checkInSchema } from '#lib/schemas/check-in.ts';

// What a phone holds that was opened before an update, written down as the first builds made it. These texts never
// change: a new field may come, but what is here has to be taken as it is.
const RUNG = '7c9e6679-7425-40de-944b-e07fc1f90ae7';
const BODY = `{"id":"0f8fad5b-d9cb-469f-a165-70867728950e","date":"2026-11-24","zone":"Europe/Berlin","kind":"training",
"session":"A","planVersion":3,"startedAt":"2026-11-24T17:58:00.000Z","sentAt":"2026-11-24T18:42:00.000Z","effort":7,
"minutes":60,"ground":"hard-floor","sleepHours":7,"nothingHurts":false,"sets":[{"rungId":"${RUNG}","side":"left",
"index":1,"planned":20,"value":18,"tried":null,"how":"typed","clean":false,"faults":["came-off"],"support":null,
"addedKg":null}],"pain":[{"region":"elbow-inner","side":"right","moment":"after","value":3,"kind":"joint",
"usual":true}],"dangerSigns":[],"words":"fine","question":null,"correctsId":null,"confirmed":[]}`;
const DRAFT = `{"version":1,"id":"0f8fad5b-d9cb-469f-a165-70867728950e","kind":"training","correctsId":null,
"date":"2026-11-24","zone":"Europe/Berlin","session":"A","planVersion":3,"startedAt":"2026-11-24T17:58:00.000Z",
"sets":{"${RUNG} left":[{"how":"typed","value":18,"tried":null,"faults":["came-off"]},{"how":"open","value":null,
"tried":null,"faults":[]}]},"effort":7,"minutes":60,"ground":null,"sleepHours":null,"nothingHurts":true,"places":[],
"placeAt":0,"signs":[],"words":"","question":"","step":"effort","savedAt":"2026-11-24T18:00:00.000Z"}`;

describe('a form opened before an update', () => {
  test('sends a body that is still taken, with everything in it', () => {
    const sent = JSON.parse(BODY);
    expect(checkInSchema.parse(sent)).toMatchObject(sent);
  });

  test('goes on with the draft that it kept', () => {
    const body = toBody(JSON.parse(DRAFT) as Draft, null, new Date('2026-11-24T18:42:00.000Z'));
    const taken = checkInSchema.parse(body);
    expect(taken).toMatchObject({ effort: 7, minutes: 60, nothingHurts: true, session: 'A' });
    expect(taken.sets).toMatchObject([{ rungId: RUNG, side: 'left', index: 1, value: 18, how: 'typed' }]);
  });
});
