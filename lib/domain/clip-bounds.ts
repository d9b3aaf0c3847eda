/** What a clip may be; our own choices, from what a phone films in half a minute. */
export const CLIP_BOUNDS = {
  seconds: 30,
  /** Phones stop a little late. */
  graceSeconds: 1,
  bytes: 80 * 1024 * 1024,
  /** Longer and shorter side: 4K as phones and cameras film it. */
  longSide: 4096,
  shortSide: 2304,
  /** Uploads of one client that may be under way at once. */
  open: 3,
  /** An upload that stands still for so long is let go. */
  stillHours: 24,
} as const;

/** A film as it is kept, measured while it was decoded and written anew. */
export type CheckedFilm = {
  width: number;
  height: number;
  fps: number | null;
  codec: string;
  seconds: number;
  bytes: number;
};

/** Bytes as people say them: "12 MB", "0.4 MB". */
export function megabytes(bytes: number): string {
  const mb = bytes / (1024 * 1024);
  return `${mb >= 10 ? Math.round(mb) : Math.round(mb * 10) / 10} MB`;
}
