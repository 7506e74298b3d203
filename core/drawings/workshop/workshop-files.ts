import type { WorkedOut } from '../../worked-out';
import { toDxf } from './dxf';
import { patternDrawings, patternNames } from './pattern-drawing';
import { toTrueSizeSvg } from './true-size-svg';
import { wallDrawingNames, wallDrawings } from './wall-drawing';

export interface WorkshopFile {
  readonly name: string;
  readonly text: string;
}

/** A drawing that can be had as `name.dxf` and `name.svg`. */
export interface WorkshopEntry {
  readonly name: string;
  readonly title: string;
}

/** What there is for a workshop, cutting patterns first, without drawing it. */
export function workshopEntries(worked: WorkedOut): WorkshopEntry[] {
  return [...patternNames(worked), ...wallDrawingNames(worked)];
}

/** Every cutting pattern and every wall as DXF and as SVG, both of the same drawing. */
export function workshopFiles(worked: WorkedOut): WorkshopFile[] {
  return [...patternDrawings(worked), ...wallDrawings(worked)].flatMap((drawing) => [
    { name: `${drawing.name}.dxf`, text: toDxf(drawing) },
    { name: `${drawing.name}.svg`, text: toTrueSizeSvg(drawing) },
  ]);
}
