import type { FileId } from '../gen/FileId';
import type { FileKind } from '../gen/FileKind';
import type { KeptFile } from '../gen/KeptFile';
import { ask, ApiError } from './transport';
import { base64, PART } from './upload';

/** Hands a file over to the core, which seals it. */
export async function keepFile(kind: FileKind, file: Blob): Promise<KeptFile> {
  let offset = 0;
  for (;;) {
    const part = new Uint8Array(await file.slice(offset, offset + PART).arrayBuffer());
    const end = offset + part.length >= file.size;
    const { kept } = await ask('file_part', { kind, offset, base64: base64(part), end });
    if (kept) return kept;
    if (end) throw new ApiError('internal', { id: 'error-file-part' });
    offset += part.length;
  }
}

/** Whether that failed because the file is not on this phone. */
export function isAbsent(cause: unknown): boolean {
  return cause instanceof ApiError && cause.said.id === 'error-no-file';
}

/** Asks the core for a file that an entry names. */
export async function readFile(file: FileId, type: string): Promise<Blob> {
  const parts: Uint8Array<ArrayBuffer>[] = [];
  let offset = 0;
  for (;;) {
    const { base64: letters, length } = await ask('read_file', { file, offset });
    const part = Uint8Array.from(atob(letters), (letter) => letter.charCodeAt(0));
    parts.push(part);
    offset += part.length;
    if (offset >= length || part.length === 0) return new Blob(parts, { type });
  }
}
