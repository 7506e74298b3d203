import type { StationName } from '../job/open-job.svelte';

/** The parts of a station's schedule; the first is shown when one arrives. */
export const leavesOf = {
  survey: [
    'Openings and fittings',
    'Wall',
    'Room',
    'Corners',
    'Check measures',
    'Joints and cables',
    'Ground',
    'Fixing points',
    'Photos',
    'Arrange',
  ],
  zones: ['Zones', 'Layers', 'Corners', 'Holes', 'Markings', 'Arrange', 'Alternatives', 'Colours'],
  panels: ['Panels', 'Layout', 'By hand', 'Stock sheets', 'Rack', 'Cutting', 'Arrange'],
  hanging: ['Hung items', 'Calculation', 'Magnets', 'Pull tests', 'People below', 'Holding map', 'Arrange'],
  price: ['Materials', 'Products', 'Rates', 'Programme', 'Offer', 'Side by side'],
  drawings: ['Documents', 'Workshop', 'Printing', 'Handover', 'Revisions'],
} as const satisfies Record<StationName, readonly string[]>;

export type LeafName = (typeof leavesOf)[StationName][number];
