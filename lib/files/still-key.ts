/** Where the still of a team lies in the store. */
export function stillKey(teamId: string, stillId: string): string {
  return `${teamId}/${stillId}.jpg`;
}
