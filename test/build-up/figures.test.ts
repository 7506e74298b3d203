import { describe, expect, it } from 'vitest';
import { steelPerMm } from '../../core/build-up/figures';
import { builtJob, soundGround, workedOf, type Built } from './built-wall';

const figuresOf = (kind: string, built?: Built) => workedOf(builtJob(kind, built)).figures;

/* Worked by hand from the typical values, mm: metal primer 0.04, bonding coat 0.1, filler 2 × 0.5, sealer 0.03. */
describe('gap between magnet and steel', () => {
  it('is every layer over the steel: 0.04 + 0.1 + 2 · 0.5 + 0.03 + 2 · 0.05 under paint', () => {
    expect(figuresOf('steel-panel').gap!.nominal.value).toBeCloseTo(1.27, 9);
  });

  it('is greater by 3 · 0.05 − 2 · 0.05 under the writable finish', () => {
    expect(figuresOf('steel-panel-writable').gap!.nominal.value).toBeCloseTo(1.32, 9);
  });

  it('is least where the filler is sanded away', () => {
    expect(figuresOf('steel-panel').gap!.least.value).toBeCloseTo(0.27, 9);
  });

  it('is greatest over a hollow of the ground and the tape of a joint', () => {
    expect(figuresOf('steel-panel').gap!.greatest.value).toBeCloseTo(1.27 + 2 + 0.2, 9);
  });

  it('has no greatest value where nobody has recorded the hollows', () => {
    const { hollow: _hollow, ...ground } = soundGround;
    const { gap } = figuresOf('steel-panel', { ground });
    expect(gap!.greatest).toEqual({ value: null, unknown: "the ground's flatness is not recorded" });
    expect(gap!.nominal.value).not.toBeNull();
  });

  it('is counted from the coating where there is no steel, and hollows stay hollow', () => {
    const { gap } = figuresOf('magnetic-coating-writable');
    expect(gap!.nominal.value).toBeCloseTo(0.5 + 0.03 + 0.15, 9);
    expect(gap!.greatest.value).toBeCloseTo(0.68, 9);
  });

  it('is not to be had where magnets find nothing', () => {
    expect(figuresOf('writable').gap).toBeNull();
  });

  it('names what has no thickness', () => {
    const products = [{ id: 'fine-filler', name: 'Grey filler', layer: 'filler', unit: 'kg' } as const];
    expect(figuresOf('steel-panel', { products }).gap!.nominal).toEqual({
      value: null,
      unknown: 'Grey filler has no thickness and no dry film',
    });
  });
});

describe('mass', () => {
  // Handbook weights of steel sheet: 1 mm 7.85 kg/m², 0.5 mm 3.925 kg/m² (EN 1991-1-1:2002, table A.4: 78.5 kN/m³).
  it('EN 1991-1-1, table A.4: steel of 78.5 kN/m³ weighs 7.85 kg/m² a millimetre at 10 m/s²', () => {
    expect(steelPerMm).toBeCloseTo((78.5 / 10) * 1, 9);
    const bare = (thickness: number) =>
      figuresOf('steel-panel', { layers: ['adhesive=adhesive-two-component', 'steel'], thickness }).mass
        .value!;
    expect(bare(1) - bare(0.5)).toBeCloseTo(3.925, 9);
  });

  it('of layers is thickness times density: adhesive 1 mm of 1.5 kg/l, filler 1 mm of 1.7 kg/l', () => {
    const layers = ['adhesive=adhesive-two-component', 'filler=fine-filler'];
    expect(figuresOf('steel-panel', { layers }).mass.value).toBeCloseTo(1.5 + 1.7, 9);
  });

  it('of film is its weight, and of work alone nothing', () => {
    const layers = ['degreasing', 'sanding', 'magnetic-film=magnetic-film'];
    expect(figuresOf('magnetic-film', { layers }).mass.value).toBeCloseTo(1.5, 9);
  });

  it('is not known without the thickness of the steel', () => {
    const { mass, thickness } = figuresOf('steel-panel', { thickness: null });
    expect(mass).toEqual({ value: null, unknown: 'the stock sheet has no thickness' });
    expect(thickness.value).toBeNull();
  });

  it('is not known of a layer without a product', () => {
    expect(figuresOf('writable', { layers: ['writable'] }).mass.unknown).toBe(
      'writable finish has neither density nor weight',
    );
  });
});

describe('thickness and coats', () => {
  it('counts all layers on the face, and none on edges and joints', () => {
    // Primer 0.015, adhesive 1, steel 0.5, then the gap of 1.27.
    expect(figuresOf('steel-panel').thickness.value).toBeCloseTo(2.785, 9);
    // Primer 1, metal primer 1, bonding coat 1, filler 2, sealer 1, paint 2.
    expect(figuresOf('steel-panel').coats).toBe(8);
  });
});
