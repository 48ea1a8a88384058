import { base64 } from './upload';

/** The longer side of a picture that goes to the core, px: a code has some three hundred of them across (ours). */
const SIDE = 1600;

/** Where a code is: on a picture, in base64, or typed. */
export type Code = { picture: string; text: null } | { picture: null; text: string };

/** A picture that shows a code, whatever its size. */
export async function pictured(picture: Blob): Promise<Code> {
  const bytes = new Uint8Array(await (await smaller(picture)).arrayBuffer());
  return { picture: base64(bytes), text: null };
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
