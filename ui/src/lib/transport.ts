import { invoke } from '@tauri-apps/api/core';
import type { ApiError as ErrorBody } from '../gen/ApiError';
import type { ErrorCode } from '../gen/ErrorCode';
import type { Message } from '../gen/Message';
import type { Request } from '../gen/Request';
import type { Response } from '../gen/Response';

/** Why the core did not do what was asked, in its own words. */
export class ApiError extends Error {
  constructor(
    readonly code: ErrorCode,
    readonly said: Message,
  ) {
    super(said.id);
  }
}

type Name = Request['request'];
type Params<N extends Name> = Omit<Extract<Request, { request: N }>, 'request'>;
type Answer<N extends Name> = Extract<Response, { response: N }>;

/** Told when the core answers that the practice is locked, that the names are hidden, or that the store is damaged. */
export const door: { shut?: () => void; hidden?: () => void; damaged?: (error: ApiError) => void } = {};

/** Asks by name and narrows the answer to the same name. */
export async function ask<N extends Name>(name: N, params: Params<N>): Promise<Answer<N>> {
  const response = await call({ request: name, ...params } as unknown as Request).catch((cause: unknown) => {
    const error = asApiError(cause);
    if (error.code === 'locked') door.shut?.();
    if (error.code === 'names_hidden') door.hidden?.();
    if (error.code === 'damaged_store') door.damaged?.(error);
    throw error;
  });
  if (response.response !== name) throw new ApiError('internal', { id: 'ui-error-no-answer' });
  return response as Answer<N>;
}

/** One request to the core: inside the shell, or over the development bridge in a browser. */
export async function call(request: Request): Promise<Response> {
  return '__TAURI_INTERNALS__' in window ? callShell(request) : callBridge(request);
}

async function callShell(request: Request): Promise<Response> {
  try {
    return await invoke<Response>('call', { request });
  } catch (cause) {
    throw asApiError(cause);
  }
}

async function callBridge(request: Request): Promise<Response> {
  let answer: globalThis.Response;
  let body: unknown;
  try {
    answer = await fetch('/call', {
      method: 'POST',
      headers: { 'content-type': 'application/json', authorization: `Bearer ${bridgeToken()}` },
      body: JSON.stringify(request),
    });
    body = await answer.json();
  } catch {
    throw asApiError(null);
  }
  if (answer.status === 200) return body as Response;
  throw asApiError(body);
}

function bridgeToken(): string {
  return new URLSearchParams(location.hash.slice(1)).get('token') ?? '';
}

/** Anything thrown, as an [`ApiError`]; a failure that is none of the core's says that no answer came. */
export function asApiError(cause: unknown): ApiError {
  if (cause instanceof ApiError) return cause;
  if (isErrorBody(cause)) return new ApiError(cause.code, cause.message);
  return new ApiError('internal', { id: 'ui-error-no-answer' });
}

function isErrorBody(cause: unknown): cause is ErrorBody {
  if (typeof cause !== 'object' || cause === null) return false;
  const { code, message } = cause as Partial<ErrorBody>;
  return typeof code === 'string' && typeof message?.id === 'string';
}
