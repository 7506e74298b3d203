import type {
  Fitting,
  fittingKinds,
  Job,
  Layout,
  Opening,
  openingKinds,
  OwnKind,
  StockSheet,
  Wall,
  Zone,
} from './schema';
import { currentVersion, jobFormat } from './migrate';
import { freshId } from './changes';
import { findKind } from './kind-names';
import { rectangleVertices, type MmBox, type MmPoint } from './shape';
import { buildUpKind } from './build-up-kinds';

/*
 * What a new thing is until someone measures it. Sizes, heights and clearances are common practice, no source,
 * unless one is named; all in mm.
 */

export type OpeningKind = (typeof openingKinds)[number];
export type FittingKind = (typeof fittingKinds)[number];

export interface DefaultObject {
  readonly label: string;
  /** What its id begins with. */
  readonly prefix: string;
  readonly width: number;
  readonly height: number;
  /** Of the lower edge above the datum. */
  readonly y: number;
  readonly clearance: number;
  /** Drawn as a circle of diameter `width`. */
  readonly round: boolean;
}

/** An unknown kind has the figures of a free one. */
export function defaultOpening(kind: string): DefaultObject {
  return Object.hasOwn(openings, kind) ? openings[kind as OpeningKind] : openings.free;
}

/** A usual kind, else one of `own`; an unknown kind has the figures of a free one. */
export function defaultFitting(kind: string, own: readonly OwnKind[] = []): DefaultObject {
  if (Object.hasOwn(fittings, kind)) return fittings[kind as FittingKind];
  const found = findKind(own, kind);
  return found ? figuresOf(found) : fittings.free;
}

/** An opening of the usual size under an id that the wall has not used; `at` is its lower left corner. */
export function newOpening(wall: Wall, kind: OpeningKind, at: Partial<MmPoint> = {}): Opening {
  const opening = {
    id: freshId(wall, defaultOpening(kind).prefix),
    kind,
    ...placedAt(defaultOpening(kind), at),
  };
  return kind === 'door' ? { ...opening, hinge: 'left', swing: 'towards', handle: doorHandle } : opening;
}

/** A fitting of the usual size under an id that the wall has not used; `at` is its box's lower left corner. */
export function newFitting(
  wall: Wall,
  kind: string,
  at: Partial<MmPoint> = {},
  own: readonly OwnKind[] = [],
): Fitting {
  const usual = defaultFitting(kind, own);
  return { id: freshId(wall, usual.prefix), kind, ...placedAt(usual, at) };
}

/** A rectangular zone; one with steel panels is laid out at once if the job has a stock sheet. On glass it is film. */
export function newZone(job: Job, wall: Wall, box: MmBox, buildUp = usualBuildUp(wall)): Zone {
  const layout = buildUpKind(buildUp).magnetic === 'steel' ? defaultLayout(job) : undefined;
  const zone = { id: freshId(wall, 'Z'), name: '', shape: rectangleVertices(box), holes: [], buildUp };
  return layout ? { ...zone, layout } : zone;
}

function usualBuildUp({ ground }: Wall): string {
  return ground?.material === 'glass' ? 'glass-film' : 'steel-panel';
}

/**
 * The first stock sheet from the best start, no joint gap, no stagger, joints clear of the corners of openings, where
 * walls crack; undefined if the job has no stock.
 */
export function defaultLayout(job: Job): Layout | undefined {
  const stock = job.stock[0];
  if (!stock) return undefined;
  const plain = { start: 'best', turned: false, jointGap: 0, stagger: 0, leastWidth: 50 } as const;
  return { stock: stock.id, ...plain, clearOfCorners };
}

/** A rectangular wall from its datum, with nothing on it and no rim. */
export function newWall(id: string, name: string, width: number, height: number): Wall {
  return {
    id,
    name,
    outline: rectangleVertices({ x: 0, y: 0, width, height }),
    rim: { floor: 0, ceiling: 0, left: 0, right: 0 },
    openings: [],
    fittings: [],
    zones: [],
  };
}

/** No walls yet, and the stock sheets most walls are covered with. */
export function emptyJob(name = 'New job'): Job {
  return {
    format: jobFormat,
    version: currentVersion,
    name,
    client: '',
    reference: '',
    revision: '',
    date: '',
    currency: 'EUR',
    stock: defaultStock.map((sheet) => ({ ...sheet })),
    rack: [],
    cutting: { method: 'edge-to-edge', kerf: 0, leastOffcut: [100, 100] },
    walls: [],
    revisions: [],
  };
}

/** Prices are the user's to fill in: none is invented here. */
const defaultStock: readonly StockSheet[] = [stockSheet('S1', 500, 500), stockSheet('S2', 1000, 2000)];

const doorHandle = 1050;

const clearOfCorners = 100;

const openings: Readonly<Record<OpeningKind, DefaultObject>> = {
  door: { label: 'Door', prefix: 'D', width: 926, height: 2040, y: 0, clearance: 60, round: false },
  window: { label: 'Window', prefix: 'W', width: 1200, height: 1200, y: 900, clearance: 50, round: false },
  hatch: { label: 'Hatch', prefix: 'H', width: 600, height: 600, y: 900, clearance: 30, round: false },
  niche: { label: 'Niche', prefix: 'N', width: 600, height: 400, y: 1200, clearance: 20, round: false },
  arch: { label: 'Arch', prefix: 'A', width: 1200, height: 2300, y: 0, clearance: 40, round: false },
  free: { label: 'Opening', prefix: 'O', width: 600, height: 600, y: 900, clearance: 20, round: false },
};

const fittings: Readonly<Record<FittingKind, DefaultObject>> = {
  // A twin plate; its middle 300 above the floor (DIN 18015-3:2016-09, read in secondary pages).
  socket: { label: 'Socket', prefix: 'K', width: 146, height: 86, y: 257, clearance: 5, round: false },
  // Middle 1050 above the floor (DIN 18015-3:2016-09, read in secondary pages).
  switch: { label: 'Switch', prefix: 'S', width: 86, height: 86, y: 1007, clearance: 5, round: false },
  light: { label: 'Light', prefix: 'L', width: 220, height: 220, y: 1900, clearance: 20, round: true },
  // Middle 1400 above the floor (DIN 18015-3:2016-09, read in secondary pages); air has to pass it.
  thermostat: {
    label: 'Thermostat',
    prefix: 'T',
    width: 86,
    height: 86,
    y: 1357,
    clearance: 20,
    round: false,
  },
  radiator: { label: 'Radiator', prefix: 'R', width: 1000, height: 600, y: 150, clearance: 50, round: false },
  pipe: { label: 'Pipe', prefix: 'P', width: 40, height: 40, y: 180, clearance: 10, round: true },
  'beam-end': {
    label: 'Beam end',
    prefix: 'B',
    width: 200,
    height: 240,
    y: 2200,
    clearance: 10,
    round: false,
  },
  free: { label: 'Fitting', prefix: 'F', width: 300, height: 300, y: 1200, clearance: 10, round: false },
};

function figuresOf({ name, round = false, width, height = width, floor, clearance }: OwnKind): DefaultObject {
  const { prefix } = fittings.free;
  const box = round ? { width, height: width, y: floor - width / 2 } : { width, height, y: floor };
  return { label: name, prefix, ...box, clearance, round };
}

function placedAt(usual: DefaultObject, at: Partial<MmPoint>) {
  const { width, height, clearance } = usual;
  const x = at.x ?? 0;
  const y = at.y ?? usual.y;
  if (!usual.round) return { x, y, width, height, clearance };
  return { circle: { x: x + width / 2, y: y + width / 2, diameter: width }, clearance };
}

function stockSheet(id: string, width: number, height: number): StockSheet {
  const name = `Steel ${width} × ${height} × 0.5`;
  return {
    id,
    name,
    width,
    height,
    thickness: 0.5,
    price: 0,
    hasFace: false,
    coating: 'galvanised',
    spares: 0,
  };
}
