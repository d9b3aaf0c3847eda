/** The text of a chosen file, by its byte order mark or as UTF-8; undefined when it is neither, never garbled. */
export async function readText(file: File): Promise<string | undefined> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  const [first, second] = bytes;
  const marked =
    first === 0xff && second === 0xfe ? 'utf-16le' : first === 0xfe && second === 0xff ? 'utf-16be' : null;
  try {
    return new TextDecoder(marked ?? 'utf-8', { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}
