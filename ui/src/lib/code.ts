import type { CodeRead } from '../gen/CodeRead';
import { ask } from './transport';
import { base64 } from './upload';

/** The longer side of a picture that goes to the core, px: a code has some three hundred of them across (ours). */
const SIDE = 1600;

/** Looks for a code on a picture, whatever its size. */
export async function readCode(picture: Blob): Promise<CodeRead> {
  const bytes = new Uint8Array(await (await smaller(picture)).arrayBuffer());
  return ask('read_code', { picture: base64(bytes), text: null });
}

/** A camera's picture as it goes through the door: no larger than a code needs. */
async function smaller(picture: Blob): Promise<Blob> {
  const image = await createImageBitmap(picture);
  const scale = Math.min(1, SIDE / Math.max(image.width, image.height));
  const canvas = document.createElement('canvas');
  [canvas.width, canvas.height] = [Math.round(image.width * scale), Math.round(image.height * scale)];
  canvas.getContext('2d')?.drawImage(image, 0, 0, canvas.width, canvas.height);
  image.close();
  return new Promise((give) => canvas.toBlob((blob) => give(blob ?? picture), 'image/jpeg', 0.85));
}
