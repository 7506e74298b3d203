import type { FittingKind, OpeningKind } from '../../core/job/defaults';
import type { ReadyHungKind } from '../../core/job/hung-kinds';
import type { PeopleBelow } from '../../core/job/hung-schema';
import type { FixingPoint } from '../../core/job/ground-schema';
import type { MarkingKind } from '../../core/job/marking-schema';
import type { StationName } from '../job/open-job.svelte';

/** What the hand does next on the drawing. */
export type Tool =
  | { readonly kind: 'choose' }
  /** A click puts it in at its usual size, a drag gives it the size. */
  | { readonly kind: 'put-in'; readonly of: 'opening'; readonly what: OpeningKind }
  /** A usual kind, or the name of one of the user's own. */
  | { readonly kind: 'put-in'; readonly of: 'fitting' | 'hung'; readonly what: string }
  | { readonly kind: 'put-in'; readonly of: 'zone'; readonly what: 'zone' | 'whole-sheets' }
  /** A click puts a fixing point there. */
  | { readonly kind: 'mark'; readonly what: FixingPoint['kind'] }
  /** People under the wall: a click at the usual width, or a drag along it. */
  | { readonly kind: 'people'; readonly what: PeopleBelow['kind'] }
  /** Into a zone: a click at the usual size, or a drag. */
  | { readonly kind: 'hole'; readonly what: 'rectangle' | 'circle' }
  /** On a zone: a click for one over the whole of it, or a drag. */
  | { readonly kind: 'marking'; readonly what: DrawnMarking }
  /** An edge is pulled into an arc. */
  | { readonly kind: 'bend' }
  /** A place is looked for that something by hand is to have. */
  | { readonly kind: 'by-hand'; readonly what: HandToolName }
  /** The start of a zone's panels is moved. */
  | { readonly kind: 'start'; readonly zone: string }
  /** Corner after corner, until the first is met again. */
  | { readonly kind: 'corners'; readonly of: CornersOf }
  /** Zones at a distance from an edge. */
  | { readonly kind: 'offset' }
  /** Two taps take a distance. */
  | { readonly kind: 'measure' };

export type HandToolName =
  | 'upright-joint'
  | 'level-joint'
  | 'no-joints'
  | 'whole-panel'
  | 'no-panel'
  | 'split-upright'
  | 'split-level'
  | 'join';

/** A picture is loaded, not drawn. */
export type DrawnMarking = Exclude<MarkingKind, 'picture'>;

export type CornersOf = 'wall' | 'outline' | 'opening' | 'fitting' | 'zone' | 'hole';

export const choose: Tool = { kind: 'choose' };

export interface ToolChoice {
  readonly label: string;
  /** One after the other, they take it up. */
  readonly keys: string;
  readonly tool: Tool;
}

/** What can be put in at a station, in the order of the strip. */
export function toolsAt(station: StationName): readonly ToolChoice[] {
  if (station === 'hanging') return hungTools;
  return station === 'survey' ? surveyTools : station === 'zones' ? zoneTools : [];
}

export function sameTool(a: Tool, b: Tool): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}

const opening = (label: string, keys: string, what: OpeningKind): ToolChoice => ({
  label,
  keys,
  tool: { kind: 'put-in', of: 'opening', what },
});
const fitting = (label: string, keys: string, what: FittingKind): ToolChoice => ({
  label,
  keys,
  tool: { kind: 'put-in', of: 'fitting', what },
});

const hung = (label: string, keys: string, what: ReadyHungKind): ToolChoice => ({
  label,
  keys,
  tool: { kind: 'put-in', of: 'hung', what },
});

export const surveyTools: readonly ToolChoice[] = [
  opening('Door', 'P D', 'door'),
  opening('Window', 'P W', 'window'),
  opening('Arch', 'P A', 'arch'),
  opening('Niche', 'P N', 'niche'),
  opening('Hatch', 'P H', 'hatch'),
  { label: 'Free opening', keys: 'P O', tool: { kind: 'corners', of: 'opening' } },
  fitting('Socket', 'P S', 'socket'),
  fitting('Switch', 'P I', 'switch'),
  fitting('Light', 'P L', 'light'),
  fitting('Thermostat', 'P T', 'thermostat'),
  fitting('Radiator', 'P R', 'radiator'),
  fitting('Pipe', 'P P', 'pipe'),
  fitting('Beam end', 'P B', 'beam-end'),
  { label: 'Free fitting', keys: 'P F', tool: { kind: 'corners', of: 'fitting' } },
  { label: 'Stud', keys: 'P M', tool: { kind: 'mark', what: 'stud' } },
  { label: 'Pattress', keys: 'P E', tool: { kind: 'mark', what: 'pattress' } },
  { label: 'Drilling', keys: 'P X', tool: { kind: 'mark', what: 'hole' } },
  { label: 'Wall outline', keys: 'P U', tool: { kind: 'corners', of: 'outline' } },
  { label: 'Curved wall edge', keys: 'P Y', tool: { kind: 'bend' } },
];

export const zoneTools: readonly ToolChoice[] = [
  { label: 'Zone, rectangle', keys: 'P Z', tool: { kind: 'put-in', of: 'zone', what: 'zone' } },
  { label: 'Zone, whole sheets', keys: 'P G', tool: { kind: 'put-in', of: 'zone', what: 'whole-sheets' } },
  { label: 'Zone, corners', keys: 'P C', tool: { kind: 'corners', of: 'zone' } },
  { label: 'Zone, offset', keys: 'Z O', tool: { kind: 'offset' } },
  { label: 'Hole, rectangle', keys: 'P J', tool: { kind: 'hole', what: 'rectangle' } },
  { label: 'Hole, round', keys: 'P K', tool: { kind: 'hole', what: 'circle' } },
  { label: 'Hole, corners', keys: 'P V', tool: { kind: 'corners', of: 'hole' } },
  { label: 'Curved edge', keys: 'P Q', tool: { kind: 'bend' } },
];

export const hungTools: readonly ToolChoice[] = [
  hung('Print', 'I P', 'print'),
  hung('Poster', 'I O', 'poster'),
  hung('Clipboard', 'I C', 'clipboard'),
  hung('Map', 'I M', 'map'),
  hung('Shelf', 'I S', 'shelf'),
  hung('Planter', 'I L', 'planter'),
  hung('Tool rack', 'I T', 'tool-rack'),
  hung('Letter rail', 'I R', 'letter-rail'),
  hung('Coat hook', 'I K', 'coat-hook'),
  hung('Bicycle hook', 'I B', 'bicycle-hook'),
  hung('Game piece', 'I G', 'game-piece'),
];

const people = (label: string, keys: string, what: PeopleBelow['kind']) => ({
  label,
  keys,
  tool: { kind: 'people', what } as const,
});

/** Who is under the wall, in the order of the list in the strip. */
export const peopleTools: readonly (ToolChoice & { tool: Extract<Tool, { kind: 'people' }> })[] = [
  people('Bed', 'B B', 'bed'),
  people('Seat', 'B S', 'seat'),
  people('Play area', 'B P', 'play-area'),
  people('Walkway', 'B W', 'walkway'),
  people('Way out', 'B O', 'way-out'),
];

/** What is drawn on a zone once it is finished, in the order of its strip. */
export const markingTools: readonly (ToolChoice & { tool: Extract<Tool, { kind: 'marking' }> })[] = [
  { label: 'Ruled grid', keys: 'M G', tool: { kind: 'marking', what: 'ruled-grid' } },
  { label: 'Ruled lines', keys: 'M L', tool: { kind: 'marking', what: 'ruled-lines' } },
  { label: 'Table', keys: 'M T', tool: { kind: 'marking', what: 'table' } },
  { label: 'Board of squares', keys: 'M B', tool: { kind: 'marking', what: 'board' } },
];
