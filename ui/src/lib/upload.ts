import { ask } from './transport';

/** The core takes 1 MiB at a time. */
export const PART = 1024 * 1024;
/** Bytes that are turned into letters at once: a call takes only so many arguments. */
const CHUNK = 0x8000;

/** Gives a backup's file to the core part by part; `told` hears how many bytes it has. */
export async function upload(file: Blob, told: (bytes: number) => void): Promise<void> {
  let offset = 0;
  do {
    const part = new Uint8Array(await file.slice(offset, offset + PART).arrayBuffer());
    await ask('backup_part', { offset, base64: base64(part) });
    offset += part.length;
    told(offset);
  } while (offset < file.size);
}

/** Bytes as base64. */
export function base64(bytes: Uint8Array): string {
  let letters = '';
  for (let at = 0; at < bytes.length; at += CHUNK) letters += String.fromCharCode(...bytes.subarray(at, at + CHUNK));
  return btoa(letters);
}
