/** The zone that this phone is in (IANA name). */
export function phoneZone(): string {
  return Intl.DateTimeFormat().resolvedOptions().timeZone;
}
