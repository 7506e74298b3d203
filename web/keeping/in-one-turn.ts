/** What is needed of a transaction here. */
interface Turn {
  readonly done: Promise<void>;
  readonly error: DOMException | null;
  abort(): void;
}

/**
 * Does the work of one transaction, all of it or nothing: whatever goes wrong takes back what was written before.
 *
 * @param work calls `ask` with every request that it does not wait for itself
 * @throws the browser's reason, such as no room left
 */
export async function inOneTurn<T>(
  turn: Turn,
  work: (ask: (request: Promise<unknown>) => void) => Promise<T>,
): Promise<T> {
  const asked: Promise<unknown>[] = [];
  const ask = (request: Promise<unknown>) => {
    asked.push(request);
    // Said below; unheard until then, a refusal would be reported as nobody's.
    request.catch(() => undefined);
  };
  ask(turn.done);
  try {
    const result = await work(ask);
    await Promise.all(asked);
    return result;
  } catch (reason) {
    abort(turn);
    throw turn.error ?? reason;
  }
}

function abort(turn: Turn): void {
  try {
    turn.abort();
  } catch {
    // It has come to its end already.
  }
}
