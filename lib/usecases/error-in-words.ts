/** The kind of error and where, never its text: values of a check-in could be in it. */
export function errorInWords(error: unknown): string {
  if (!(error instanceof Error)) return 'a check stopped without an error';
  const place = error.stack?.match(/(lib\/[\w./-]+:\d+)/)?.[1];
  return `${error.name}${place ? ` at ${place}` : ''}`;
}
