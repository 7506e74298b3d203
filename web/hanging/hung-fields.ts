import type { HungItem } from '../../core/job/hung-schema';
import type { Wall } from '../../core/job/schema';
import { lengthFigure, lengthUnit } from '../look/figures';
import type { SettingField } from '../price/setting-fields';
import { markingOptions } from './hung-words';

/** Details of an item in groups, as the words over each say. */
export interface FieldGroup {
  readonly title: string;
  readonly fields: readonly SettingField[];
}

/** A marking is one choice on the screen, two ids in the job. */
export type ItemFields = Omit<HungItem, 'marking' | 'fixingPoints'> & { readonly on?: string };

export function hungFields(wall: Wall, item: HungItem): readonly FieldGroup[] {
  const length = { of: 'length' } as const;
  const unit = lengthUnit();
  const kg = { of: 'number', most: 1000 } as const;
  const middle = { of: 'length', least: -Infinity } as const;
  const depth = lengthFigure(item.depth);
  return [
    {
      title: 'What it carries and who pulls at it',
      fields: [
        { path: 'load.weight', label: 'carries', unit: 'kg', kind: kg, usual: 'nothing' },
        { path: 'load.reach', label: 'reach of what it carries', unit, kind: length, usual: depth },
        { path: 'load.x', label: 'carried right of the middle', unit, kind: middle, usual: '0' },
        {
          path: 'pull.force',
          label: 'pull',
          unit: 'N',
          kind: { of: 'number', most: 100_000 },
          usual: 'none',
        },
        {
          path: 'pull.angle',
          label: 'angle of the pull',
          unit: '° off plumb',
          kind: { of: 'number', most: 90 },
          usual: '0',
        },
        { path: 'pull.reach', label: 'reach of the pull', unit, kind: length, usual: depth },
        { path: 'pull.x', label: 'pull right of the middle', unit, kind: middle, usual: '0' },
        {
          path: 'pull.y',
          label: 'pull above the foot',
          unit,
          kind: middle,
          usual: lengthFigure(item.height / 2),
        },
      ],
    },
    {
      title: 'How it lies on the wall',
      fields: [
        {
          path: 'magnets.between',
          label: 'paper or card under the magnets',
          unit,
          kind: length,
          usual: 'none',
        },
        { path: 'restsOnWall', label: 'its lower edge bears on the wall', kind: { of: 'yes-no' } },
        {
          path: 'condition',
          label: 'face under its magnets',
          kind: {
            of: 'choice',
            options: [
              { value: '', label: 'as its finish usually is' },
              { value: 'clean-dry', label: 'clean and dry' },
              { value: 'dusty', label: 'dusty' },
            ],
          },
        },
        {
          path: 'friction',
          label: 'friction measured here',
          kind: { of: 'number', above: 0, most: 2 },
          usual: 'not measured',
        },
        { path: 'proof', label: 'carried in a test here', unit: 'kg', kind: kg, usual: 'not tested' },
        { path: 'stop', label: 'a mechanical stop catches it', kind: { of: 'yes-no' } },
      ],
    },
    {
      title: 'Pieces alike',
      fields: [
        {
          path: 'pieces',
          label: 'how many alike',
          kind: { of: 'number', least: 1, most: 10_000, whole: true },
          usual: '1',
        },
        {
          path: 'on',
          label: 'moved about on',
          kind: {
            of: 'choice',
            options: [{ value: '', label: 'nothing: it stays' }, ...ownMarking(wall, item)],
          },
        },
      ],
    },
  ];
}

export function asFields({ marking, fixingPoints: _, ...item }: HungItem): ItemFields {
  return marking ? { ...item, on: `${marking.zone}/${marking.marking}` } : item;
}

/** Why what was typed would be lost: how a load or a pull acts says nothing without how much it is; undefined if all of it counts. */
export function faultOfFields(fields: ItemFields, item: HungItem): string | undefined {
  const { load, pull } = fields as Partial<HungItem>;
  if (!item.load && load && load.weight === undefined)
    return 'Type first how much it carries, in kg: without that, reach and place of it say nothing.';
  if (!item.pull && pull && pull.force === undefined)
    return 'Type first how hard it is pulled, in N: without that, angle and place of the pull say nothing.';
  return undefined;
}

/** What the fields lead to: what is needed beside a load or a pull is as usual, and without weight or force there is none. */
export function patchOf({ on, ...fields }: ItemFields, item: HungItem): Partial<HungItem> {
  const { load, pull } = fields as HungItem;
  const [zone, marking] = on?.split('/') ?? [];
  const both = fields as HungItem;
  return {
    load: load?.weight === undefined ? undefined : { ...load, reach: load.reach ?? item.depth },
    pull:
      pull?.force === undefined
        ? undefined
        : { ...pull, angle: pull.angle ?? 0, reach: pull.reach ?? item.depth },
    magnets: both.magnets?.places ? both.magnets : undefined,
    restsOnWall: both.restsOnWall,
    condition: both.condition,
    friction: both.friction,
    proof: both.proof,
    stop: both.stop,
    pieces: both.pieces,
    marking: zone && marking ? { zone, marking } : undefined,
  };
}

function ownMarking(wall: Wall, { marking }: HungItem) {
  const options = markingOptions(wall);
  const value = marking && `${marking.zone}/${marking.marking}`;
  if (!value || options.some((option) => option.value === value)) return options;
  return [...options, { value, label: `${marking.marking} on ${marking.zone}, which is gone` }];
}
