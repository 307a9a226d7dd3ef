import 'server-only';

/**
 * The bytes of a request; what it says of its own length is not believed.
 *
 * @param most  bytes
 * @returns null when there is more of it than allowed: the rest is not read
 */
export async function bytesUpTo(request: Request, most: number): Promise<Uint8Array | null> {
  const stream = request.body?.getReader();
  if (!stream) return new Uint8Array();
  const pieces: Uint8Array[] = [];
  let length = 0;
  for (let piece = await stream.read(); !piece.done; piece = await stream.read()) {
    length += piece.value.byteLength;
    if (length > most) {
      await stream.cancel();
      return null;
    }
    pieces.push(piece.value);
  }
  return Buffer.concat(pieces, length);
}
