import { describe, expect, it } from 'vitest';
import {
  areaFigure,
  hundredthFigure,
  lengthFigure,
  massFigure,
  metresFigure,
  percentFigure,
  withPoint,
} from '../../../web/look/figures';

describe('figures on the screen', () => {
  it.each([
    [areaFigure(11.303e10), '11.30'],
    [areaFigure(0), '0.00'],
    [percentFigure(0.0264), '2.6 %'],
    [metresFigure(1_092_000), '10.9 m'],
    [massFigure(40.14), '40.1 kg'],
    [lengthFigure(926.5), '926.5'],
    [lengthFigure(-0.25), '−0.25'],
    [hundredthFigure(142_050), '1420.5'],
  ])('have a decimal point and no thousands mark: %s', (figure, expected) => {
    expect(figure).toBe(expected);
  });

  it('turn the comma of a figure into a point, and leave the commas of a sentence', () => {
    expect(withPoint('notch 78,5 × 96, 422 from the left, 0 from the foot')).toBe(
      'notch 78.5 × 96, 422 from the left, 0 from the foot',
    );
  });
});
