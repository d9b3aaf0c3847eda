export type Covered = { memberId: string; coveredById: string; to: string };
type Members = {
  /** Those who have not left. */
  here: ReadonlySet<string>;
  leads: ReadonlySet<string>;
  /** Who is away today, and who answers for them. */
  covers: readonly Covered[];
};

/**
 * Whose clients a member's mail carries on a day: their own and those of everybody they cover, also where the cover is
 * covered in turn; a lead's also those of coaches who left. Empty for one who is away and covered: the mail goes to the
 * cover. A cover who has left counts as none.
 */
export function coachesCarried(memberId: string, coachIds: readonly string[], members: Members): string[] {
  return coachIds.filter((coachId) => {
    const answers = whoAnswers(coachId, members);
    return answers === null
      ? members.leads.has(memberId) && !isAway(memberId, members)
      : answers === memberId;
  });
}

/** True when somebody who is here covers this member today. */
export function isAway(memberId: string, { here, covers }: Members): boolean {
  return covers.some((cover) => cover.memberId === memberId && here.has(cover.coveredById));
}

/** Follows covers to the one who answers; null: the coach left and nobody took over. Two who cover each other: the coach. */
function whoAnswers(coachId: string, members: Members): string | null {
  const seen = new Set<string>();
  let at = coachId;
  while (!seen.has(at)) {
    seen.add(at);
    const cover = members.covers.find((one) => one.memberId === at && members.here.has(one.coveredById));
    if (!cover) return members.here.has(at) ? at : null;
    at = cover.coveredById;
  }
  return members.here.has(coachId) ? coachId : null;
}
