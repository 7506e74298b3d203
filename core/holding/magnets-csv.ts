import { contacts, magnet, magnetMaterials, magnetShapes, type MagnetRecord } from '../job/magnet-schema';
import { figure, oneOf, words } from '../record-columns';
import { readList, writeList, type ListKind, type RowFault } from '../record-list';

export interface ReadMagnets {
  /** Of all rows that can be read, in their order. */
  readonly magnets: readonly MagnetRecord[];
  readonly faults: readonly RowFault[];
}

const size = 'a figure above 0 and up to 1000';
const from0 = 'a figure from 0 and up to 1000';
const rated = ', with force, steel and gap of the rated pull beside each other';

const kind: ListKind<MagnetRecord> = {
  columns: [
    words('id', ['id'], 'an id of up to 40 letters, digits, - and _'),
    words('name', ['name'], 'a name'),
    oneOf('shape', ['shape'], magnetShapes),
    figure('diameter or shorter side (mm)', ['diameter'], size),
    figure('longer side (mm)', ['length'], size),
    figure('bore (mm)', ['bore'], size),
    figure('height (mm)', ['height'], size),
    oneOf('material', ['material'], magnetMaterials),
    figure('remanence (T)', ['remanence'], 'a figure above 0 and up to 2'),
    figure('recoil permeability', ['recoil'], 'a figure from 1 to 2'),
    oneOf('contact', ['contact'], contacts),
    figure('cover (mm)', ['cover'], from0),
    figure('rated pull (N)', ['rated', 'force'], `a figure above 0${rated}`),
    figure('rated on steel (mm)', ['rated', 'thickness'], `a figure above 0${rated}`),
    figure('rated across a gap (mm)', ['rated', 'gap'], `a figure from 0${rated}`),
    figure('rated per area (N/cm²)', ['ratedPerArea']),
    figure('price', ['price'], 'an amount from 0'),
    figure('magnet in the cup (mm)', ['cup', 'magnet'], size),
    figure('wall of the cup (mm)', ['cup', 'wall'], size),
    figure('floor of the cup (mm)', ['cup', 'floor'], size),
    figure('recess in the cup (mm)', ['cup', 'recess'], from0),
  ],
  needed: ['id', 'name', 'shape', 'diameter or shorter side (mm)', 'height (mm)'],
  schema: magnet,
};

/** A list of magnets as CSV, in the form of every list (`core/record-list.ts`). */
export function writeMagnets(magnets: readonly MagnetRecord[]): string {
  return writeList(kind, magnets);
}

/** Magnets of a list; rows with a fault are left out and told. */
export function readMagnets(text: string): ReadMagnets {
  const { records, faults } = readList(kind, text);
  return { magnets: records, faults };
}
