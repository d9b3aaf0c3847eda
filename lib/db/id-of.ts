/** The id that an insert gave back. */
export function idOf(rows: readonly { id: string }[]): string {
  const id = rows[0]?.id;
  if (id === undefined) throw new Error('an insert gave no id');
  return id;
}
