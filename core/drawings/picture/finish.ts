import type { ResolvedBuildUp, ResolvedLayer } from '../../build-up/resolve';
import { buildUpKind } from '../../job/build-up-kinds';
import type { FinishColour } from '../../job/colour-schema';
import type { Wall, Zone } from '../../job/schema';
import { workAlone } from '../../build-up/layer-kinds';
import type { PictureColour } from '../page';

/** How a finished face takes the light. */
export type Sheen = 'matt' | 'writable' | 'chalk' | 'glass';

export interface Finish {
  readonly colour: PictureColour;
  readonly sheen: Sheen;
  /** Where the colour was chosen for this face: its name, or its figure in sRGB. */
  readonly chosen: string | null;
}

/** Where nobody has chosen a colour. Common practice, no source. */
export const usualColours = {
  wall: '#efeae0',
  writable: '#fbfcfc',
  chalk: '#31413f',
  glass: '#d3e2e4',
  skirting: '#f6f3ec',
} as const satisfies Readonly<Record<string, PictureColour>>;

/** The wall beside its zones. */
export function finishOfWall({ colour }: Wall): Finish {
  return { colour: srgbOf(colour) ?? usualColours.wall, sheen: 'matt', chosen: chosenOf(colour) };
}

/** The face of a zone by the layers that it really ends with. */
export function finishOfZone(zone: Zone, { layers }: ResolvedBuildUp, wall: Wall): Finish {
  const sheen = sheenOf(zone, layers);
  const usual = {
    matt: finishOfWall(wall).colour,
    writable: isClear(layers) ? finishOfWall(wall).colour : usualColours.writable,
    chalk: usualColours.chalk,
    glass: usualColours.glass,
  }[sheen];
  return { colour: srgbOf(zone.colour) ?? usual, sheen, chosen: chosenOf(zone.colour) };
}

function sheenOf(zone: Zone, layers: readonly ResolvedLayer[]): Sheen {
  switch (topOf(layers)) {
    case 'writable':
    case 'clear-writable':
    case 'writable-film':
      return 'writable';
    case 'glass-film':
      return 'glass';
    case 'chalk':
      return 'chalk';
    case undefined: {
      const { surface } = buildUpKind(zone.buildUp);
      return surface === 'plain' ? 'matt' : surface;
    }
    default:
      return 'matt';
  }
}

/** A clear coat shows the paint under it. */
function isClear(layers: readonly ResolvedLayer[]): boolean {
  return topOf(layers) === 'clear-writable';
}

function topOf(layers: readonly ResolvedLayer[]) {
  return layers.findLast(({ layer }) => !workAlone.includes(layer.kind))?.layer.kind;
}

export function srgbOf(colour: FinishColour | undefined): PictureColour | undefined {
  return colour && (colour.srgb.toLowerCase() as PictureColour);
}

function chosenOf(colour: FinishColour | undefined): string | null {
  return colour ? colour.name || colour.srgb.toLowerCase() : null;
}
