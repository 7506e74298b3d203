import type { FittedView } from '../../core/geometry/homography';
import type { Photo } from '../../core/job/schema';

/** "kept at 3000 × 2250 px, 1.1 MB". */
export function keptWords({ width, height, bytes }: Photo): string {
  const size =
    bytes === undefined
      ? ''
      : `, ${bytes < 1e5 ? `${Math.ceil(bytes / 1e3)} kB` : `${(bytes / 1e6).toFixed(1)} MB`}`;
  return `kept at ${width} × ${height} px${size}`;
}

/** How well the points agree. */
export function fitWords({ residuals, rms }: FittedView): string {
  if (residuals.length === 4) return 'Four points always fit; a fifth one says how well.';
  const worst = Math.max(...residuals);
  const at = residuals.indexOf(worst) + 1;
  return `The points agree within ${tenths(rms)} mm (root mean square); point ${at} is farthest off, by ${tenths(worst)} mm.`;
}

/** How far off a point is, in mm whatever the job's units: a sixteenth of an inch would be too coarse. */
export function tenths(length: number): string {
  return String(Math.round(length * 10) / 10);
}
