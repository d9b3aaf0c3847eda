export type Chunks = AsyncIterable<Uint8Array>;
/** First and last byte, both counted, as HTTP does. */
export type ByteRange = { readonly first: number; readonly last: number };

/** Where pictures and films lie outside the database. Another place needs these and nothing else. */
export type FileStore = {
  write: (key: string, bytes: Uint8Array) => Promise<void>;
  /** As it comes, never all of it in memory; nothing is there until all of it is. Returns how many bytes. */
  writeFrom: (key: string, chunks: Chunks) => Promise<number>;
  /** Undefined: no such file. */
  read: (key: string) => Promise<Uint8Array | undefined>;
  /** As it is read, never all of it in memory. Undefined: no such file. */
  open: (key: string, range?: ByteRange) => Promise<ReadableStream<Uint8Array> | undefined>;
  remove: (key: string) => Promise<void>;
  /** Everything of one thing: every key that begins with `team id/thing id.`; or only what ends in `ending`. */
  removeAll: (stem: string, ending?: string) => Promise<void>;
};
