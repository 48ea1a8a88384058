import { given } from './ports';

/** The system's own way of giving a file to another program. */
export interface Sharer {
  /** Offers a file that was written; false where it was called off. */
  share: (path: string) => Promise<boolean>;
}

/** Only a shell can: where there is none, the path is shown. */
export const share: Sharer['share'] | undefined = given('sharer')?.share;
