/** What a client is asked: the first has to be given before anything is kept, the second is a wish. */
export const CONSENT_KINDS = ['health-data', 'share-with-next-coach'] as const;
export type ConsentKind = (typeof CONSENT_KINDS)[number];

export type ConsentText = { version: string; health: readonly string[]; share: string };

/**
 * Every text that was ever asked, oldest first; the last one is in force. A text is never changed once people gave
 * their consent to it: a change is a new version, and the phone asks again. Own words; a team has them read by somebody
 * who knows its local rules.
 */
export const CONSENT_TEXTS = [
  {
    version: '1',
    health: [
      '{team} keeps what you tell it here: your check-ins (what you did, how hard it was, what hurts, how you slept), what you said at the start, your questions, your words and your pictures.',
      'Part of that is about your health. It is kept and looked through every night, so that your coach sees whom to answer first and can plan your training.',
      'The coaches and assistants of {team} can read it. Nobody else can, unless you hand it on, or your coach does with your leave.',
      'It informs a coach. It is no diagnosis, and no clinician reads it.',
      'It is kept while you train here and for some years after; Your data says how many. Local rules can ask for longer.',
      'You can take it all with you, take this consent back, or ask for it to be deleted, on your phone, at any time. Taking it back does not touch what was done before.',
    ],
    share: 'My coach may hand my record to the next coach or to a clinician.',
  },
] as const satisfies readonly ConsentText[];

/** The version that is in force. */
export const CONSENT_VERSION = CONSENT_TEXTS[CONSENT_TEXTS.length - 1]?.version ?? '1';

/** The text of a version with the name of the team in it; undefined: there is no such version. */
export function consentText(version: string, team: string): ConsentText | undefined {
  const texts: readonly ConsentText[] = CONSENT_TEXTS;
  const found = texts.find((text) => text.version === version);
  return found && { ...found, health: found.health.map((line) => line.replaceAll('{team}', team)) };
}

export type GivenConsent = {
  kind: string;
  textVersion: string;
  givenAt: Date;
  givenBy: string;
  /** Set when it was taken back or a newer text took its place. */
  withdrawnAt: Date | null;
  /** Who took it back; null where a newer text took its place. */
  withdrawnBy: string | null;
};

/**
 * How a consent stands: `given` for the text in force, `older` for an earlier text (nights go on, the phone asks),
 * `withdrawn` when it was taken back and not given since, `none` when it was never given.
 */
export type ConsentState =
  | { state: 'given' | 'older'; textVersion: string; givenAt: Date; givenBy: string }
  | { state: 'withdrawn'; at: Date; by: string }
  | { state: 'none' };

/** Reads the state of one kind from every row of a client, in any order. */
export function consentState(
  rows: readonly GivenConsent[],
  kind: ConsentKind,
  version: string = CONSENT_VERSION,
): ConsentState {
  const own = rows.filter((row) => row.kind === kind);
  const live = newest(
    own.filter((row) => row.withdrawnAt === null),
    (row) => row.givenAt,
  );
  if (live) {
    const { textVersion, givenAt, givenBy } = live;
    return { state: textVersion === version ? 'given' : 'older', textVersion, givenAt, givenBy };
  }
  const taken = newest(
    own.filter((row) => row.withdrawnBy !== null),
    (row) => row.withdrawnAt ?? row.givenAt,
  );
  if (!taken) return { state: 'none' };
  return { state: 'withdrawn', at: taken.withdrawnAt ?? taken.givenAt, by: taken.withdrawnBy ?? '' };
}

function newest(rows: readonly GivenConsent[], at: (row: GivenConsent) => Date): GivenConsent | undefined {
  return rows.reduce<GivenConsent | undefined>(
    (best, row) => (best && at(best).getTime() >= at(row).getTime() ? best : row),
    undefined,
  );
}
