import type { FittingKind, OpeningKind } from '../../core/job/defaults';
import type { StationName } from '../job/open-job.svelte';

/** What the hand does next on the drawing. */
export type Tool =
  | { readonly kind: 'choose' }
  /** A click puts it in at its usual size, a drag gives it the size. */
  | { readonly kind: 'put-in'; readonly of: 'opening'; readonly what: OpeningKind }
  | { readonly kind: 'put-in'; readonly of: 'fitting'; readonly what: FittingKind }
  | { readonly kind: 'put-in'; readonly of: 'zone'; readonly what: 'zone' }
  /** Corner after corner, until the first is met again. */
  | { readonly kind: 'corners'; readonly of: CornersOf };

export type CornersOf = 'wall' | 'outline' | 'opening' | 'fitting' | 'zone';

export const choose: Tool = { kind: 'choose' };

export interface ToolChoice {
  readonly label: string;
  readonly tool: Tool;
}

/** What can be put in at a station, in the order of the strip. */
export function toolsAt(station: StationName): readonly ToolChoice[] {
  return station === 'survey' ? surveyTools : station === 'zones' ? zoneTools : [];
}

export function sameTool(a: Tool, b: Tool): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}

const opening = (label: string, what: OpeningKind): ToolChoice => ({
  label,
  tool: { kind: 'put-in', of: 'opening', what },
});
const fitting = (label: string, what: FittingKind): ToolChoice => ({
  label,
  tool: { kind: 'put-in', of: 'fitting', what },
});

const surveyTools: readonly ToolChoice[] = [
  opening('Door', 'door'),
  opening('Window', 'window'),
  opening('Arch', 'arch'),
  opening('Niche', 'niche'),
  opening('Hatch', 'hatch'),
  { label: 'Free opening', tool: { kind: 'corners', of: 'opening' } },
  fitting('Socket', 'socket'),
  fitting('Switch', 'switch'),
  fitting('Light', 'light'),
  fitting('Thermostat', 'thermostat'),
  fitting('Radiator', 'radiator'),
  fitting('Pipe', 'pipe'),
  fitting('Beam end', 'beam-end'),
  { label: 'Free fitting', tool: { kind: 'corners', of: 'fitting' } },
  { label: 'Outline', tool: { kind: 'corners', of: 'outline' } },
];

const zoneTools: readonly ToolChoice[] = [
  { label: 'Zone, rectangle', tool: { kind: 'put-in', of: 'zone', what: 'zone' } },
  { label: 'Zone, by its corners', tool: { kind: 'corners', of: 'zone' } },
];
