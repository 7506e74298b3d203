import type { CoatingGround, SteelGround } from '../../core/holding/ground';

/** Half a millimetre of mild steel under 1 mm of filler and plain paint. */
export function steelGround(changes: Partial<SteelGround> = {}): SteelGround {
  return {
    kind: 'steel',
    steel: 'low-carbon',
    thickness: 0.5,
    gap: 1,
    surface: 'plain',
    tests: [],
    ...changes,
  };
}

export function coatingGround(changes: Partial<CoatingGround> = {}): CoatingGround {
  return { kind: 'coating', surface: 'plain', tests: [], ...changes };
}
