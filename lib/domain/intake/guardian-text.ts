/**
 * What a parent or guardian reads before they agree, beside the consent to keep health data. Like that text it is never
 * changed once somebody agreed: a change is a new version. Own words; a team has them read by somebody who knows its
 * local rules.
 */
const GUARDIAN_TEXTS = [
  {
    version: '1',
    lines: [
      '{client} is under 18 and wants to train with {coach} of {team}: work on the hands, hanging, pulling and pushing with the body, some of it upside down. It is done at home or in a gym, and the coach is not there.',
      'Training like this can hurt. Falls happen, wrists, elbows and shoulders get sore. What is told here is looked through every night, under 18 by stricter numbers, with one full rest day a week. It informs the coach. It is no diagnosis, and no number here is a promise of safety.',
      'You are told by mail when {client} tells of a danger sign, or of pain of 4 or more of 10: once for each check-in. The mail says what to do, not more about health than that.',
      'Training does not begin before you agree. You can take it back on this page at any time; then nothing more is taken in, and nothing is checked.',
      'Local rules on who may train somebody under 18, and who may advise, come first.',
    ],
  },
] as const;

const [NEWEST] = GUARDIAN_TEXTS.slice(-1);
export const GUARDIAN_VERSION: string = NEWEST?.version ?? '1';

/** The text in force with the names in it. */
export function guardianText(names: { client: string; coach: string; team: string }): string[] {
  return (NEWEST?.lines ?? []).map((line) =>
    line
      .replaceAll('{client}', names.client)
      .replaceAll('{coach}', names.coach)
      .replaceAll('{team}', names.team),
  );
}

type Decided = { name: string; agreedAt: Date | null; declinedAt: Date | null; withdrawnAt: Date | null };

/** A parent or guardian as they were named. */
export type Guardian = Decided & {
  id: string;
  email: string | null;
  /** When the newest link was made, and when it was opened. */
  linkAt: Date | null;
  openedAt: Date | null;
};

/** How one guardian stands to it; `asked`: nothing was decided yet. */
export function guardianState(guardian: Decided): 'agreed' | 'declined' | 'withdrawn' | 'asked' {
  if (guardian.withdrawnAt) return 'withdrawn';
  if (guardian.declinedAt) return 'declined';
  return guardian.agreedAt ? 'agreed' : 'asked';
}

/**
 * Whether the training of somebody under 18 may begin: one parent or guardian agrees, and none said no or took it back.
 * Nobody named: it waits.
 */
export function guardiansAgree(guardians: readonly Decided[]): boolean {
  const states = guardians.map(guardianState);
  return states.includes('agreed') && !states.includes('declined') && !states.includes('withdrawn');
}
