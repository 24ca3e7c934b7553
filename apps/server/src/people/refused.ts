/** Refusals that are about who asks, each with its status. */
export class RefusedError extends Error {
  override readonly name = 'RefusedError';
  readonly statusCode: 401 | 403 | 421 | 429;
  /** When to try again, where that helps. */
  readonly retryAt: string | null;

  constructor(statusCode: RefusedError['statusCode'], message: string, retryAt: string | null = null) {
    super(message);
    this.statusCode = statusCode;
    this.retryAt = retryAt;
  }
}
