import type { Request } from '../gen/Request';
import { feel } from './feedback';
import { asApiError, type ApiError } from './transport';

/** A write that is not on disk. It stays on the screen until it is tried again, kept elsewhere or put aside. */
export interface Failure {
  what: string;
  error: ApiError;
  again: () => Promise<void>;
  /** The order as it would be given now; none where it cannot be kept elsewhere. */
  order: (() => Request) | null;
  /** It is being tried again. */
  trying: boolean;
  /** It is kept in another file and waits for the next unlocking. */
  kept: boolean;
}

class NotSaved {
  list = $state<Failure[]>([]);

  add(what: string, error: ApiError, again: () => Promise<void>, order: (() => Request) | null = null): void {
    this.list.push({ what, error, again, order: keepable(error) ? order : null, trying: false, kept: false });
  }

  drop(failure: Failure): void {
    this.list = this.list.filter((other) => other !== failure);
  }

  /** Tries again; it stays where it is until it is on disk. A second failure is told anew. */
  async retry(failure: Failure): Promise<void> {
    if (failure.trying) return;
    failure.trying = true;
    try {
      await failure.again();
    } catch (cause) {
      feel('failed');
      this.add(failure.what, asApiError(cause), failure.again, failure.order);
    }
    this.drop(failure);
  }

  /** Gives the order to be kept in another file. */
  async keep(failure: Failure, elsewhere: (order: Request) => Promise<void>): Promise<void> {
    if (!failure.order) return;
    try {
      await elsewhere(failure.order());
      failure.kept = true;
    } catch (cause) {
      failure.error = asApiError(cause);
    }
  }
}

/** Whether the disk refused it: another file may take it. Values that cannot be are put right instead. */
export function keepable(error: ApiError): boolean {
  return error.code === 'not_saved' || error.code === 'damaged_store' || error.code === 'read_only';
}

export const notSaved = new NotSaved();
