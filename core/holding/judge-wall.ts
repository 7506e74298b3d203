import type { Finding } from '../finding';
import type { HungItem } from '../job/hung-schema';
import { nameOfHung, nameOfWall, sentence } from '../job/names';
import type { Job, Wall } from '../job/schema';
import { placeItem, type PlacedItem, type WallOfItems } from './held-item';
import { judgeItem, type Judgement, type Verdict } from './judge-item';
import { itemsAt } from './item-places';
import { crowdOf } from './magnet-crowd';
import { bondsOf, type PanelBond } from './panel-bond';
import { magnetsOf } from './ready-magnets';
import { pieceFindings } from './piece-findings';
import type { ModeName } from './rigid-item';
import { contactOf } from './wall-contact';
import { facesOf } from './wall-faces';
import { gapReservation, type HoldingZone } from './zone-ground';

/** Of a hung item what the wall shows of it; the calculation behind it comes from `checkHung`. */
export interface HungVerdict {
  readonly id: string;
  readonly verdict: Verdict;
  /** Screwed to fixing points: its magnets are not asked to carry it. */
  readonly isScrewed: boolean;
  /** How many times over it holds, and how many are asked for; undefined where nothing can be said. */
  readonly factor?: number;
  readonly asked?: number;
  readonly governs?: ModeName;
  /** Of what may be used up in the mode that governs; above 1 it does not hold. */
  readonly utilisation?: number;
  /** Why it is not plain `holds`, each with what to do. */
  readonly reasons: readonly string[];
  /** Ids of the zones and marks of the panels that its magnets lie on. */
  readonly zones: readonly string[];
  readonly panels: readonly string[];
}

/** An item with everything that its verdict rests on. */
export interface JudgedHung {
  readonly item: HungItem;
  readonly placed: PlacedItem;
  readonly judgement: Judgement;
  readonly verdict: HungVerdict;
  /** Of the panels that it hangs on. */
  readonly bonds: readonly PanelBond[];
}

export function wallOfItems(job: Job, wall: Wall, zones: readonly HoldingZone[]): WallOfItems {
  const magnets = magnetsOf(job);
  const faces = facesOf(job, wall, zones, magnets);
  return {
    job,
    wall,
    faces,
    magnets,
    contact: contactOf(wall, zones),
    ...amongItems(wall.hung ?? [], magnets),
  };
}

/** What depends on the other items of a wall. */
export function amongItems(
  items: readonly HungItem[],
  magnets: WallOfItems['magnets'],
): Pick<WallOfItems, 'crowd' | 'itemAt'> {
  return { crowd: crowdOf(items, magnets), itemAt: itemsAt(items) };
}

/** An item by itself, before anybody asks what the adhesive behind it bears. */
export type JudgedAlone = Pick<JudgedHung, 'item' | 'placed' | 'judgement'>;

/**
 * Every hung item of a wall, in the order of the list.
 *
 * @param known items that are judged already, on this very wall and with the same magnets near them
 */
export function judgeHung(on: WallOfItems, known?: ReadonlyMap<HungItem, JudgedAlone>): JudgedHung[] {
  const first = (on.wall.hung ?? []).map((item) => known?.get(item) ?? judgeAlone(on, item));
  const bonds = bondsOf(
    first.flatMap(({ item, judgement, placed }) =>
      isScrewed(item) ? [] : [{ item, judgement, behind: placed.behind }],
    ),
  );
  return first.map(({ item, placed, judgement }) => {
    const own = bonds.filter(({ items }) => items.includes(item.id));
    return { item, placed, judgement, bonds: own, verdict: verdictOf(item, placed, judgement, own) };
  });
}

/** What the wall shows of its items, and what there is to decide. */
export function hungResults(
  job: Job,
  wall: Wall,
  zones: readonly HoldingZone[],
): { readonly hung: readonly HungVerdict[]; readonly hungFindings: readonly Finding[] } {
  if (!wall.hung?.length) return { hung: [], hungFindings: [] };
  const judged = judgeHung(wallOfItems(job, wall, zones));
  const findings = [...hungFindings(wall, judged), ...pieceFindings(wall)];
  return { hung: judged.map(({ verdict }) => verdict), hungFindings: findings };
}

export function isScrewed({ fixingPoints = [] }: HungItem): boolean {
  return fixingPoints.length > 0;
}

export function judgeAlone(on: WallOfItems, item: HungItem): JudgedAlone {
  const placed = placeItem(on, item);
  if (placed.held) return { item, placed, judgement: judgeItem(placed.held) };
  const judgement: Judgement = {
    verdict: 'cannot be judged',
    asked: 0,
    modes: [],
    magnets: [],
    isBarred: false,
    reasons: placed.faults,
  };
  return { item, placed, judgement };
}

function verdictOf(
  item: HungItem,
  { behind, held }: PlacedItem,
  judgement: Judgement,
  bonds: readonly PanelBond[],
): HungVerdict {
  const faces = behind.filter((face) => face !== undefined);
  const places = {
    id: item.id,
    zones: [...new Set(faces.map(({ zone }) => zone.area.zone.id))],
    panels: [...new Set(faces.flatMap(({ panel }) => panel ?? []))],
  };
  if (isScrewed(item))
    return {
      ...places,
      isScrewed: true,
      verdict: 'cannot be judged',
      reasons: [
        'It is screwed to a fixing point: what that carries depends on screws and ground, and is for whoever answers for the fixing.',
      ],
    };
  const { factor, asked, governs, modes, reasons } = judgement;
  const worst = worseOf(judgement.verdict, bonds);
  const utilisation = modes.find(({ name }) => name === governs)?.utilisation;
  const gaps = new Set(
    faces.flatMap(({ zone, ground }) => (ground.kind === 'steel' ? (gapReservation(zone) ?? []) : [])),
  );
  return {
    ...places,
    isScrewed: false,
    verdict: worst,
    ...(factor !== undefined && { factor }),
    ...(held && { asked }),
    ...(governs && { governs }),
    ...(utilisation !== undefined && { utilisation }),
    reasons: [
      ...reasons,
      ...bonds.flatMap(({ panel, result }) => result.reasons.map((reason) => `Panel ${panel}: ${reason}`)),
      ...gaps,
    ],
  };
}

/**
 * The item's verdict with that of the adhesive behind it. What nobody states of an adhesive takes a verdict away only where it
 * matters: where a magnet pulls at the edge of a panel.
 */
export function worseOf(verdict: Verdict, bonds: readonly PanelBond[]): Verdict {
  if (verdict === 'does not hold' || verdict === 'cannot be judged') return verdict;
  if (bonds.some(({ result }) => result.verdict === 'does not hold')) return 'does not hold';
  return bonds.some(({ isPeelUnstated }) => isPeelUnstated) ? 'cannot be judged' : verdict;
}

/** What is to be decided of the items of a wall: each that does not plainly hold, with its first reason. */
function hungFindings(wall: Wall, judged: readonly JudgedHung[]): Finding[] {
  return judged.flatMap(({ item, verdict: { verdict, reasons, isScrewed } }): Finding[] => {
    if (verdict === 'holds' || isScrewed) return [];
    const name = `${sentence(nameOfHung(item))} on ${nameOfWall(wall)}`;
    const says = `${name} ${verdict}. ${reasons[0] ?? ''}`.trim();
    return [
      {
        level: verdict === 'holds only if tested' ? 'note' : 'warning',
        code: `hung-${verdict.replaceAll(' ', '-')}`,
        wall: wall.id,
        object: item.id,
        text: says,
      },
    ];
  });
}
