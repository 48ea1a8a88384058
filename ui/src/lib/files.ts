import type { FileKind } from '../gen/FileKind';
import type { KeptFile } from '../gen/KeptFile';
import { ask } from './transport';
import { base64 } from './upload';

/** The core takes 1 MiB at a time. */
const PART = 1024 * 1024;

/** Hands a file to the core part by part, which seals it; what comes back is on disk. */
export async function keepFile(kind: FileKind, bytes: Uint8Array): Promise<KeptFile> {
  for (let offset = 0; ; offset += PART) {
    const end = offset + PART >= bytes.length;
    const { kept } = await ask('file_part', { kind, offset, base64: base64(bytes.subarray(offset, offset + PART)), end });
    if (end && kept) return kept;
  }
}

/** The whole of a file that a fact names. */
export async function readFile(file: string): Promise<Uint8Array<ArrayBuffer>> {
  let whole: Uint8Array<ArrayBuffer> | undefined;
  let offset = 0;
  do {
    const part = await ask('read_file', { file, offset });
    whole ??= new Uint8Array(part.length);
    const letters = atob(part.base64);
    for (let at = 0; at < letters.length; at += 1) whole[offset + at] = letters.charCodeAt(at);
    offset += letters.length;
  } while (offset < whole.length);
  return whole;
}
