import { buildUpKind, buildUpKinds } from '../../core/job/build-up-kinds';
import type { Ground } from '../../core/job/ground-schema';
import { longestWall } from '../../core/job/limits';
import type { BudgetRequest } from '../../core/offer/budget-job';
import { lengthWords } from '../look/figures';
import { parseDay } from '../schedule/parse-entry';
import { parseSize } from '../schedule/parse-sizes';

/* What is asked on the telephone, and what it comes to. */

export const waysToHold = [
  { id: 'steel-panel', label: 'Steel panels' },
  { id: 'magnetic-coating', label: 'Magnetic coating' },
  { id: 'magnetic-film', label: 'Magnetic film' },
  { id: 'none', label: 'No magnets' },
] as const;

export type WayToHold = (typeof waysToHold)[number]['id'];

export const surfaces = [
  { value: 'plain', label: 'only looked at' },
  { value: 'writable', label: 'written on with pens' },
  { value: 'chalk', label: 'written on with chalk' },
] as const;

export type Surface = (typeof surfaces)[number]['value'];

/** As it stands in the fields. */
export interface BudgetFields {
  readonly width: string;
  readonly height: string;
  readonly surface: Surface;
  readonly ways: readonly WayToHold[];
  /** Empty: not known. */
  readonly material: string;
  readonly exposure: string;
  readonly access: boolean;
  readonly start: string;
  readonly client: string;
  readonly name: string;
}

export type BudgetFieldName = 'width' | 'height' | 'ways' | 'start';

export type ReadBudget =
  | { readonly request: Omit<BudgetRequest, 'buildUp'>; readonly buildUps: readonly string[] }
  /** An empty `fault`: the field is not filled in yet. */
  | { readonly fault: string; readonly field: BudgetFieldName };

/** @param date ISO 8601, of the budget price */
export function readBudget(fields: BudgetFields, date: string): ReadBudget {
  const width = readSide('width', fields.width);
  if ('fault' in width) return width;
  const height = readSide('height', fields.height);
  if ('fault' in height) return height;
  const buildUps = fields.ways.flatMap((way) => buildUpFor(way, fields.surface) ?? []);
  if (fields.ways.length === 0)
    return { field: 'ways', fault: 'Choose at least one way to build up the wall.' };
  if (buildUps.length < fields.ways.length) {
    const fault =
      'A wall without magnets has to be written on: choose pens or chalk, or take “No magnets” out.';
    return { field: 'ways', fault };
  }
  const start = parseDay(fields.start);
  if ('fault' in start) return { field: 'start', fault: `Work begins on: ${start.fault}` };
  const { material, exposure, access, client, name } = fields;
  return {
    buildUps,
    request: {
      name: name.trim(),
      client: client.trim(),
      width: width.value,
      height: height.value,
      access,
      date,
      ...(start.value && { start: start.value }),
      ground: {
        ...(material && { material }),
        ...(exposure && { exposure: exposure as NonNullable<Ground['exposure']> }),
      },
    },
  };
}

/** The build-up that holds magnets this way and has this surface. */
export function buildUpFor(way: WayToHold, surface: Surface): string | null {
  if (way === 'none') return surface === 'plain' ? null : surface;
  const { magnetic } = buildUpKind(way);
  const fits = buildUpKinds.find(
    (kind) => kind.id.startsWith(way) && kind.magnetic === magnetic && kind.surface === surface,
  );
  return fits?.id ?? null;
}

type Side = { readonly value: number } | { readonly fault: string; readonly field: BudgetFieldName };

function readSide(field: 'width' | 'height', text: string): Side {
  const label = field === 'width' ? 'Width' : 'Height';
  if (text.trim() === '') return { field, fault: '' };
  const entry = parseSize(text);
  if ('fault' in entry) return { field, fault: `${label}: ${entry.fault}` };
  if (entry.value > longestWall)
    return { field, fault: `${label}: a wall is at most ${lengthWords(longestWall)} long or high.` };
  return entry;
}
