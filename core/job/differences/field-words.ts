import type { LengthUnits } from '../../lengths';
import type { FinishColour, Skirting } from '../colour-schema';
import { withUsual } from '../holding-map';
import type { HoldingMapSettings } from '../hung-schema';
import type { CheckMeasure, Corner, RunsOn, StockSheet, Temperatures, Tolerance, Trim } from '../schema';
import { figure } from './difference';
import type { FieldWords } from './fields';

/* How the values of fields are said that hold more than a figure or a text. */

export const lockWords: FieldWords = {
  label: 'lock',
  usual: false,
  whole: (to) => (to ? 'is locked now' : 'is no longer locked'),
};

export function unitsInWords(units: unknown): string {
  const words: Readonly<Record<LengthUnits, string>> = {
    mm: 'millimetres',
    cm: 'centimetres',
    m: 'metres',
    'ft-in': 'feet and inches',
  };
  return words[units as LengthUnits];
}

export function temperaturesInWords(of: unknown): string {
  const { low, high, atFixing } = of as Temperatures;
  return `${figure(low)} °C to ${figure(high)} °C, ${figure(atFixing)} °C when it is fixed`;
}

/** `N42-20x5 with a hook of 30 mm, light at reach, shown to the client` */
export function holdingMapInWords(of: unknown): string {
  const { magnet, reach, use, forClient } = withUsual(of as HoldingMapSettings);
  const shown = forClient ? ', shown to the client' : '';
  return `${magnet} with a hook of ${figure(reach)} mm, ${use.replaceAll('-', ' ')}${shown}`;
}

/** `left 5 mm, top 10 mm` */
export function trimInWords(of: unknown): string {
  const trim = of as Trim;
  const sides = (['left', 'right', 'bottom', 'top'] as const).filter((side) => trim[side] > 0);
  return sides.map((side) => `${side} ${figure(trim[side])} mm`).join(', ') || 'none';
}

/** `EN 10131, special tolerance, yield 280 MPa` */
export function thicknessOrderInWords(of: unknown): string {
  const { standard, tolerance, yieldStrength } = of as NonNullable<StockSheet['thicknessOrder']>;
  const strength = yieldStrength === undefined ? '' : `, yield ${figure(yieldStrength)} MPa`;
  return `${standard}, ${tolerance} tolerance${strength}`;
}

export function toleranceInWords(of: unknown): string {
  const { size, squareness } = of as Tolerance;
  return `±${figure(size)} mm, ${figure(squareness)} mm out of square`;
}

const mostMeasures = 6;

/** `1 to 3 4956.7 mm`, a few of them. */
export function measuresInWords(of: unknown): string {
  const measures = of as CheckMeasure[];
  const said = measures
    .slice(0, mostMeasures)
    .map(({ from, to, length }) => `corner ${from} to ${to} ${figure(length)} mm`);
  const left = measures.length - said.length;
  return [...said, ...(left > 0 ? [`${left} more`] : [])].join(', ') || 'none';
}

/** What the right end of a wall meets. */
export function cornerInWords(to: unknown, from: unknown): string {
  if (!to) return `no longer meets wall ${(from as Corner).to} at its right end`;
  const [is, was] = [oneCorner(to as Corner), from ? oneCorner(from as Corner) : ''];
  if (is === was) return 'has another corner at its right end';
  return `meets ${is} ${was ? `instead of ${was}` : 'now'}`;
}

function oneCorner({ to, kind, angle = 90, rise = 0 }: Corner): string {
  const level = rise === 0 ? '' : `, ${figure(Math.abs(rise))} mm ${rise > 0 ? 'higher' : 'lower'},`;
  return `wall ${to} at an ${kind} corner of ${figure(angle)}°${level}`;
}

/** How a zone goes on round the corner at the right end of its wall. */
export function runInWords(to: unknown, from: unknown): string {
  if (!to) return `no longer runs on round the corner as zone ${(from as RunsOn).zone}`;
  const [is, was] = [oneRun(to as RunsOn), from ? oneRun(from as RunsOn) : ''];
  if (is === was) return 'runs on round the corner otherwise';
  return `runs on round the corner ${was ? '' : 'now '}${is}${was ? ` instead of ${was}` : ''}`;
}

function oneRun({ wall, zone, lines, skip = 0 }: RunsOn): string {
  const uncounted = skip === 0 ? '' : ` and ${figure(skip)} mm left out of them`;
  return `as zone ${zone} of wall ${wall}, its lines ${lines === 'anew' ? 'begun anew' : 'continued'}${uncounted}`;
}

function colourInWords(of: unknown): string {
  const { srgb, name } = of as FinishColour;
  return name ? `${name} (${srgb})` : srgb;
}

export const colourWords: FieldWords = { label: 'colour', say: colourInWords, absent: 'as usual' };

/** `80 mm high, 15 mm deep, #ffffff` */
export function skirtingInWords(of: unknown): string {
  const { height, depth = 15, colour } = of as Skirting;
  return `${figure(height)} mm high, ${figure(depth)} mm deep${colour ? `, ${colourInWords(colour)}` : ''}`;
}
