import type { ClientHistory, HistoryCheckIn, HistoryPain } from '#lib/domain/history.ts';
import { placeInWords } from '#lib/domain/labels.ts';

const MOMENT_WORDS: Record<HistoryPain['moment'], string> = {
  during: 'Worst while training',
  after: 'After training',
  morning: 'The morning after',
  today: 'On a day without training',
};

/**
 * Pain scores as a FHIR R4 (4.0.1) Bundle of Observations: LOINC 72514-3, the 0-10 verbal numeric rating, as
 * `valueInteger`. The place stands in words ("left wrist, back"): coded sites need a licence in many countries. Piece by
 * piece, since a long history has thousands. Resource ids are made from the check-in, so that they stay the same.
 */
export function* painAsFhir(history: ClientHistory, made: Date): Generator<string> {
  const patient = { resourceType: 'Patient', id: history.client.id, name: [{ text: history.client.name }] };
  yield `{"resourceType":"Bundle","type":"collection","timestamp":${JSON.stringify(made.toISOString())},"entry":[\n`;
  yield JSON.stringify({ fullUrl: `urn:uuid:${history.client.id}`, resource: patient });
  for (const checkIn of history.checkIns) {
    for (const [at, pain] of checkIn.pain.entries()) {
      yield `,\n${JSON.stringify({ resource: observation(history.client.id, checkIn, pain, at) })}`;
    }
  }
  yield '\n]}\n';
}

function observation(clientId: string, checkIn: HistoryCheckIn, pain: HistoryPain, at: number) {
  return {
    resourceType: 'Observation',
    id: `${checkIn.id}-${at}`.slice(0, 64),
    status: 'final',
    category: [
      { coding: [{ system: 'http://terminology.hl7.org/CodeSystem/observation-category', code: 'survey' }] },
    ],
    code: {
      coding: [
        {
          system: 'http://loinc.org',
          code: '72514-3',
          display: 'Pain severity - 0-10 verbal numeric rating [Score] - Reported',
        },
      ],
      text: `Pain 0-10, told by the client. ${MOMENT_WORDS[pain.moment]}.`,
    },
    subject: { reference: `urn:uuid:${clientId}` },
    effectiveDateTime: checkIn.date,
    issued: checkIn.sentAt,
    valueInteger: pain.value,
    bodySite: { text: placeInWords(pain.region, pain.side) },
    note: [{ text: `Kind: ${pain.kind}.${pain.usual === null ? '' : pain.usual ? ' The usual.' : ' New.'}` }],
  };
}
