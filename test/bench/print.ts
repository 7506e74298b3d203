export interface Timing<T> {
  /** ms, ascending. */
  readonly times: readonly number[];
  readonly value: T;
}

/** One round to warm up, then `rounds` that count. */
export function timed<T>(rounds: number, work: () => T): Timing<T> {
  let value = work();
  const times: number[] = [];
  for (let i = 0; i < rounds; i++) {
    const start = performance.now();
    value = work();
    times.push(performance.now() - start);
  }
  return { times: times.sort((a, b) => a - b), value };
}

/** @param share 0.5 for the median, 0.95 for the 95th percentile; `times` ascending */
export function percentile(times: readonly number[], share: number): number {
  return times[Math.min(times.length - 1, Math.floor(share * times.length))] ?? NaN;
}

export function row(title: string, { times }: Pick<Timing<unknown>, 'times'>, unit = 'ms'): void {
  const figures = [times[0] ?? NaN, percentile(times, 0.5), percentile(times, 0.95), times.at(-1) ?? NaN];
  const [least, median, p95, greatest] = figures.map((figure) => figure.toFixed(1));
  console.log(
    `${title.padEnd(52)} median ${median} ${unit}, p95 ${p95}, ${least} to ${greatest}, n ${times.length}`,
  );
}
