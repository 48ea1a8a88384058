import { asApiError, type ApiError } from './transport';

/** A write that is not on disk. It stays on the screen until it is tried again or put aside. */
export interface Failure {
  what: string;
  error: ApiError;
  again: () => Promise<void>;
}

class NotSaved {
  list = $state<Failure[]>([]);

  add(what: string, error: ApiError, again: () => Promise<void>): void {
    this.list.push({ what, error, again });
  }

  drop(failure: Failure): void {
    this.list = this.list.filter((other) => other !== failure);
  }

  /** Tries again; a second failure is told anew. */
  async retry(failure: Failure): Promise<void> {
    this.drop(failure);
    try {
      await failure.again();
    } catch (cause) {
      this.add(failure.what, asApiError(cause), failure.again);
    }
  }
}

export const notSaved = new NotSaved();
