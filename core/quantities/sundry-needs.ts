import type { Sundry } from '../job/quantities-schema';
import { figure } from '../lengths';
import { itemOfSundry, itemOfThing, type Need, type NeedFor } from './need';
import { readySundries } from './settings';
import type { ZoneMeasures } from './zone-measures';
import type { ZoneTask } from './zone-task';

/** Sundries of a zone by its m², edges, joints, boxes and panels, and the battens that its panels stand on. */
export function sundryNeeds(task: ZoneTask): Need[] {
  const { measures, settings } = task;
  const { zone } = measures;
  const sundries = settings.sundries.filter(
    (sundry) => sundry.per !== 'job' && (!sundry.on || sundry.on.includes(zone.buildUp)),
  );
  return [
    ...sundries
      // Films and bare steel need no masking; whoever lists sundries says what for.
      .filter((sundry) => !readySundries.includes(sundry) || isCoated(task))
      .flatMap((sundry) => sundryNeed(task, sundry)),
    ...battenNeeds(task),
  ];
}

/** Sundries that are bought once. */
export function jobSundries({ settings }: Pick<ZoneTask, 'settings'>): Need[] {
  return settings.sundries
    .filter(({ per }) => per === 'job')
    .map(({ id, amount, unit }) => ({
      ...{ wall: '', zone: '', delivery: '', layer: null, kind: null, coat: 0, of: 'job' },
      item: itemOfSundry(id),
      unit,
      net: amount,
      withLoss: amount,
      how: `${figure(amount, 3)} for the job.`,
    }));
}

function isCoated({ layers }: ZoneTask): boolean {
  return layers.some(
    ({ layer, product }) => (product?.unit === 'l' || product?.unit === 'kg') && coated.includes(layer.kind),
  );
}

const coated: readonly string[] = [
  'sealer',
  'magnetic-coating',
  'writable',
  'clear-writable',
  'chalk',
  'decorative',
];

interface Measured {
  readonly of: NeedFor;
  readonly amount: number;
  readonly words: string;
}

function measured(measures: ZoneMeasures, per: Sundry['per']): Measured {
  const count = (of: NeedFor, amount: number, one: string, many: string): Measured => ({
    of,
    amount,
    words: `${amount} ${amount === 1 ? one : many}`,
  });
  const metres = (of: NeedFor, length: number, words: string): Measured => ({
    of,
    amount: length / 1e5,
    words: `${figure(length / 1e5, 2)} m of ${words}`,
  });
  switch (per) {
    case 'm2':
      return {
        of: 'face',
        amount: measures.faceArea / 1e10,
        words: `${figure(measures.faceArea / 1e10, 2)} m²`,
      };
    case 'edge':
      return metres('zone-edge', measures.edgeLength, 'zone edge');
    case 'joint':
      return metres('joints', measures.jointLength, 'joints');
    case 'box':
      return count('boxes', measures.boxes, 'box', 'boxes');
    case 'panel':
      return count('panels', measures.panels, 'panel', 'panels');
    default:
      return { of: 'job', amount: 0, words: '' };
  }
}

function sundryNeed({ wall, measures }: ZoneTask, { id, per, amount, unit }: Sundry): Need[] {
  const { of, amount: size, words } = measured(measures, per);
  if (size === 0) return [];
  const net = size * amount;
  return [
    {
      wall: wall.id,
      zone: measures.zone.id,
      delivery: wall.delivery ?? '',
      layer: null,
      kind: null,
      coat: 0,
      of,
      item: itemOfSundry(id),
      unit,
      net,
      withLoss: net,
      how: amount === 1 ? `${words}.` : `${words} × ${figure(amount, 3)}.`,
    },
  ];
}

function battenNeeds({ wall, measures }: ZoneTask): Need[] {
  const { battens, battenLength } = measures;
  if (battens === 0) return [];
  const length = battenLength / 1e5;
  return [
    {
      wall: wall.id,
      zone: measures.zone.id,
      delivery: wall.delivery ?? '',
      layer: null,
      kind: null,
      coat: 0,
      of: 'fixing',
      item: itemOfThing('batten'),
      unit: 'm',
      net: length,
      withLoss: length,
      how: `${figure(length, 2)} m under the first course, ${battens} ${battens === 1 ? 'length' : 'lengths'}.`,
    },
  ];
}
