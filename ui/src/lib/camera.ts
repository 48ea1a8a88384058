import { given } from './ports';

/** The device's camera, whose picture comes in memory alone. */
export interface Camera {
  /** None where it was called off; throws where it went wrong. */
  photograph: () => Promise<Blob | null>;
}

/** Only a shell can: in a browser the page's own input asks for a file. */
export const camera: Camera | undefined = given('camera');
