import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { fitView, project, type PointPair } from '../../core/geometry/homography';

/*
 * Values of SciPy 1.17.1 and scikit-image 0.26.0 (both BSD) and OpenCV 5.0.0 (opencv-python-headless 5.0.0.93, Apache 2.0):
 *
 *   four points:  t = skimage.transform.ProjectiveTransform(); t.estimate(px, at); H = t.params
 *   more points:  scipy.optimize.least_squares(misses at `at`, 8 entries, method='lm', xtol=ftol=gtol=1e-15), the points
 *                 moved to their mean and divided by their standard deviation
 *   both:         cv2.getPerspectiveTransform(np.float32(px), np.float32(at)), cv2.findHomography(px, at, 0)[0]
 *   probe = (H @ [x, y, 1])[:2] / (H @ [x, y, 1])[2]
 *
 * With more points OpenCV stops a little before the least sum of squares that SciPy finds.
 */
interface Fit {
  readonly probes: readonly [number, number][];
  readonly rms: number;
  readonly residuals: readonly number[];
}
interface Case {
  readonly name: string;
  readonly px: readonly [number, number][];
  readonly at: readonly [number, number][];
  readonly opencv: Fit;
  readonly skimage?: Pick<Fit, 'probes'>;
  readonly scipy?: Fit;
}
const { probes, cases } = JSON.parse(
  readFileSync(new URL('../fixtures/geometry/homographies.json', import.meta.url), 'utf8'),
) as { probes: [number, number][]; cases: Case[] };

const pairsOf = ({ px, at }: Case): PointPair[] => px.map((point, i) => ({ px: point, at: at[i]! }));

describe('SciPy 1.17.1, scikit-image 0.26.0, OpenCV 5.0.0: views of a wall', () => {
  it.each(cases.map((one) => [one.name, one] as const))('%s', (_, one) => {
    const view = fitView(pairsOf(one));
    if ('fault' in view) throw new Error(view.fault);
    const found = probes.map((probe) => project(view.toWall, probe));
    const compare = (fit: Pick<Fit, 'probes'>, within: number) =>
      found.forEach(([x, y], i) => {
        expect(Math.abs(x - fit.probes[i]![0])).toBeLessThan(within);
        expect(Math.abs(y - fit.probes[i]![1])).toBeLessThan(within);
      });
    const { skimage, scipy, opencv } = one;
    if (skimage) {
      compare(skimage, 1e-6);
      // Single floats go into OpenCV.
      compare(opencv, 1e-2);
      expect(view.rms).toBeCloseTo(0, 9);
    } else {
      compare(scipy!, 1e-3);
      compare(opencv, 0.5);
      expect(view.rms).toBeCloseTo(scipy!.rms, 6);
      expect(view.rms).toBeLessThan(opencv.rms);
      view.residuals.forEach((miss, i) => expect(miss).toBeCloseTo(scipy!.residuals[i]!, 3));
    }
  });
});

describe('a view that can be solved by hand', () => {
  it('x = 2x / (1 + y), y = 2y / (1 + y): straight lines stay straight', () => {
    // In px, y down: a point (x, y) of the square is drawn at (100 x, -100 y).
    const by = (x: number, y: number): [number, number] => [(2 * x) / (1 + y), (2 * y) / (1 + y)];
    const pairs = (
      [
        [0, 0],
        [1, 0],
        [1, 1],
        [0, 1],
      ] as const
    ).map(([x, y]): PointPair => ({ px: [100 * x, -100 * y], at: by(x, y) }));
    const view = fitView(pairs);
    if ('fault' in view) throw new Error(view.fault);
    const [x, y] = project(view.toWall, [50, -25]);
    expect(x).toBeCloseTo(0.8, 12);
    expect(y).toBeCloseTo(0.4, 12);
  });
});
