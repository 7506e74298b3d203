import type { Banded } from './banded-cholesky';
import { mu0 } from './bh-curve';
import type { Mesh } from './mesh';
import type { Substance } from './parts';

/*
 * The magnetostatic field round the axis: A is the azimuthal vector potential at the free nodes, zero on the axis and on the
 * far boundary. B_r = −∂A/∂z, B_z = ∂A/∂r + A/r. Free nodes are numbered outward, then up, which keeps the band narrow:
 *
 *     node (i, j) → (j − 1) · columns + (i − 1),   i along r, j along z, 1 ≤ i ≤ columns, 1 ≤ j ≤ rows
 */
export interface Field {
  readonly mesh: Mesh;
  /** Gap between magnet and steel, m. */
  readonly g: number;
  readonly rows: number;
  readonly columns: number;
  /** Band of the matrix. */
  readonly width: number;
  /** What fills an element, by a point inside it. */
  readonly substance: (r: number, z: number) => Substance;
}

/** Gauss's points and weights on 0 … 1, three of them. */
const gauss = [
  [0.5 - Math.sqrt(0.15), 5 / 18],
  [0.5, 8 / 18],
  [0.5 + Math.sqrt(0.15), 5 / 18],
] as const;

/** Quadratic shape functions on 0 … 1 with nodes 0, ½, 1, and their slopes. */
function quadratic(s: number): { readonly N: readonly number[]; readonly D: readonly number[] } {
  return {
    N: [(1 - s) * (1 - 2 * s), 4 * s * (1 - s), s * (2 * s - 1)],
    D: [4 * s - 3, 4 - 8 * s, 4 * s - 1],
  };
}

const points = gauss.map(([s, weight]) => ({ s, weight, ...quadratic(s) }));

/** One Gauss point: the nine free nodes of its element (−1: fixed), how each adds to B, and the volume it stands for. */
interface Sample {
  readonly of: Substance;
  /** In the layer of air between magnet and steel, at any radius. */
  readonly isGap: boolean;
  readonly nodes: Int32Array;
  /** ∂B_r and ∂B_z by each node. */
  readonly br: Float64Array;
  readonly bz: Float64Array;
  /** 2π r times the area, m³. */
  readonly volume: number;
}

function eachSample(field: Field, visit: (sample: Sample) => void): void {
  const { mesh, rows, columns, substance, g } = field;
  const nodes = new Int32Array(9);
  const br = new Float64Array(9);
  const bz = new Float64Array(9);
  for (let ir = 0; ir + 1 < mesh.r.length; ir++) {
    const r0 = mesh.r[ir]!;
    const hr = mesh.r[ir + 1]! - r0;
    for (let iz = 0; iz + 1 < mesh.z.length; iz++) {
      const z0 = mesh.z[iz]!;
      const hz = mesh.z[iz + 1]! - z0;
      const of = substance(r0 + hr / 2, z0 + hz / 2);
      const isGap = z0 + hz / 2 > -g && z0 + hz / 2 < 0;
      for (let a = 0; a < 3; a++)
        for (let b = 0; b < 3; b++) {
          const [i, j] = [2 * ir + a, 2 * iz + b];
          const isFree = i >= 1 && i <= columns && j >= 1 && j <= rows;
          nodes[3 * a + b] = isFree ? (j - 1) * columns + (i - 1) : -1;
        }
      for (const along of points)
        for (const up of points) {
          const r = r0 + hr * along.s;
          for (let a = 0; a < 3; a++)
            for (let b = 0; b < 3; b++) {
              br[3 * a + b] = (-along.N[a]! * up.D[b]!) / hz;
              bz[3 * a + b] = (along.D[a]! / hr + along.N[a]! / r) * up.N[b]!;
            }
          const volume = 2 * Math.PI * r * hr * hz * along.weight * up.weight;
          visit({ of, isGap, nodes, br, bz, volume });
        }
    }
  }
}

function fluxAt({ nodes, br, bz }: Sample, A: Float64Array): readonly [number, number] {
  let [r, z] = [0, 0];
  for (let k = 0; k < 9; k++) {
    const node = nodes[k]!;
    if (node < 0) continue;
    r += br[k]! * A[node]!;
    z += bz[k]! * A[node]!;
  }
  return [r, z];
}

/** What Newton's method makes least, J: ∫∫ H dB of every material. */
export function energyOf(field: Field, A: Float64Array): number {
  let sum = 0;
  eachSample(field, (sample) => {
    const [r, z] = fluxAt(sample, A);
    const square = r * r + z * z;
    const { of } = sample;
    if (of.is === 'steel') sum += of.curve(Math.sqrt(square)).energy * sample.volume;
    else if (of.is === 'magnet') sum += ((square / 2 - of.Br * z) / (mu0 * of.mur)) * sample.volume;
    else sum += (square / (2 * mu0)) * sample.volume;
  });
  return sum;
}

/** Newton's matrix, and its right side: minus the slope of the energy. */
export function assemble(field: Field, A: Float64Array, matrix: Banded, right: Float64Array): void {
  const { rows, width } = matrix;
  const stride = width + 1;
  eachSample(field, (sample) => {
    const [r, z] = fluxAt(sample, A);
    let [hr, hz, rr, rz, zz] = [r / mu0, z / mu0, 1 / mu0, 0, 1 / mu0];
    const { of } = sample;
    if (of.is === 'magnet') {
      const nu = 1 / (mu0 * of.mur);
      [hr, hz, rr, zz] = [nu * r, nu * (z - of.Br), nu, nu];
    } else if (of.is === 'steel') {
      const B = Math.hypot(r, z);
      const { H, slope } = of.curve(B);
      const nu = B > 1e-9 ? H / B : slope;
      const bend = B > 1e-9 ? (slope - nu) / (B * B) : 0;
      [hr, hz] = [nu * r, nu * z];
      [rr, rz, zz] = [nu + bend * r * r, bend * r * z, nu + bend * z * z];
    }
    const { nodes, br, bz, volume } = sample;
    for (let k = 0; k < 9; k++) {
      const row = nodes[k]!;
      if (row < 0) continue;
      const [kr, kz] = [br[k]! * volume, bz[k]! * volume];
      right[row] = right[row]! - (kr * hr + kz * hz);
      const [mr, mz] = [kr * rr + kz * rz, kr * rz + kz * zz];
      for (let l = 0; l < 9; l++) {
        const column = nodes[l]!;
        if (column < 0 || column > row) continue;
        const at = row * stride + width - row + column;
        rows[at] = rows[at]! + mr * br[l]! + mz * bz[l]!;
      }
    }
  });
}

/** ∫ (B_z² − B_r²) / 2μ₀ over planes through the gap, averaged over all of them: the attraction, N. */
export function gapForce(field: Field, A: Float64Array): number {
  let sum = 0;
  eachSample(field, (sample) => {
    if (!sample.isGap) return;
    const [r, z] = fluxAt(sample, A);
    sum += ((z * z - r * r) / (2 * mu0)) * sample.volume;
  });
  return sum / field.g;
}

/** B_z on the axis, T, at a height within the mesh: twice the slope of A there, by a r + b r³ through the two nearest nodes. */
export function axisFlux({ mesh, rows, columns }: Field, A: Float64Array, z: number): number {
  const at = mesh.z.findLastIndex((line, i) => line <= z && i + 1 < mesh.z.length);
  const s = (z - mesh.z[at]!) / (mesh.z[at + 1]! - mesh.z[at]!);
  const { N } = quadratic(s);
  const node = (i: number, j: number) => (j >= 1 && j <= rows ? A[(j - 1) * columns + (i - 1)]! : 0);
  let slope = 0;
  for (let b = 0; b < 3; b++) slope += (N[b]! * (8 * node(1, 2 * at + b) - node(2, 2 * at + b))) / 3;
  return (2 * slope) / (mesh.r[1]! - mesh.r[0]!);
}
