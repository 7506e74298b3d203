import { difference, intersection } from '../geometry/clip';
import { enclosingRectangleArea } from '../geometry/enclosing-rectangle';
import { boxesMeet, boxOf, isBox, polygonArea, regionArea, type Region } from '../geometry/polygon';
import { nameOfPlaced } from '../job/names';
import type { MeasurementRuleId } from '../job/quantities-schema';
import { toHundredth, type Mm } from '../units';
import type { SurveyedWall } from '../survey/surveyed-wall';
import { rimShared } from './shared-rim';
import type { ZoneMeasures } from './zone-measures';

/** How an offer measures; what is bought always follows from the true area. */
export interface MeasurementRule {
  readonly id: MeasurementRuleId;
  readonly name: string;
  /** Where it stands, and how that was read. */
  readonly source: string;
  readonly read: 'clause' | 'secondary' | 'memory' | 'own';
  /** Whether an opening of that size, m², is taken off although it lies wholly inside what is measured. */
  readonly takesOff: (size: number) => boolean;
  /** The same for openings in floors. */
  readonly takesOffFloor: (size: number) => boolean;
  /** Whether an opening at the edge of what is measured is taken off whatever its size. */
  readonly takesOffAtEdge: boolean;
  /** Whether the reveals of an opening of that size count. */
  readonly countsReveals: (size: number) => boolean;
  /** Whether what is no rectangle is measured by the smallest rectangle that encloses it. */
  readonly enclosesPolygons?: boolean;
  /** What runs right across a zone, such as a column or a beam, is taken off if it is wider than this, mm. */
  readonly interruptedAbove?: Mm;
}

const always = () => true;
const above = (least: number) => (size: number) => size > least;

export const measurementRules: readonly MeasurementRule[] = [
  {
    id: 'net',
    name: 'Net: every opening out, reveals in',
    source: 'geometry of the wall',
    read: 'own',
    takesOff: always,
    takesOffFloor: always,
    takesOffAtEdge: true,
    countsReveals: always,
  },
  {
    id: 'din-18363',
    name: 'VOB/C DIN 18363: openings above 2.5 m² out',
    source:
      'VOB/C ATV DIN 18363, 5.2.1.1 (single size above 2.5 m², in floors above 0.5 m²) and 5.2.1.2 (columns and the like wider than 30 cm); reveals by 5.1.2, polygons by 5.1.8',
    read: 'clause',
    takesOff: above(2.5),
    takesOffFloor: above(0.5),
    takesOffAtEdge: false,
    countsReveals: always,
    enclosesPolygons: true,
    interruptedAbove: 300,
  },
  {
    id: 'nrm2',
    name: 'NRM2: voids above 1.00 m² out',
    source: 'NRM2, sections 28 and 29: the size from memory; that voids at the edge are taken off, too',
    read: 'memory',
    takesOff: above(1),
    takesOffFloor: above(1),
    takesOffAtEdge: true,
    countsReveals: always,
  },
  {
    id: 'smm7',
    name: 'SMM7: voids above 0.50 m² out',
    source: 'SMM7, M20 and M60: the size from memory; that voids at the edge are taken off, too',
    read: 'memory',
    takesOff: above(0.5),
    takesOffFloor: above(0.5),
    takesOffAtEdge: true,
    countsReveals: always,
  },
  {
    id: 'voids-at-boundary',
    name: 'Voids at the boundary out, voids inside not',
    source:
      'a national Standard Method of Measurement, A2(b): a least size counts for voids wholly inside alone; with no size stated none of them is taken off',
    read: 'clause',
    takesOff: () => false,
    takesOffFloor: () => false,
    takesOffAtEdge: true,
    countsReveals: always,
  },
  {
    id: 'is-1200',
    name: 'IS 1200 practice: openings from 0.5 m² out, reveals above 3 m²',
    source:
      'a trade page on IS 1200: below 0.5 m² none, to 3 m² on one face (the one measured) without reveals, above with reveals',
    read: 'secondary',
    takesOff: (size) => size >= 0.5,
    takesOffFloor: (size) => size >= 0.5,
    takesOffAtEdge: false,
    countsReveals: above(3),
  },
];

export function measurementRule(id: MeasurementRuleId): MeasurementRule {
  return measurementRules.find((rule) => rule.id === id)!;
}

/** An opening in a zone, and what a rule does with it; hundredths squared. */
export interface MeasuredVoid {
  readonly id: string;
  readonly name: string;
  /** Of the whole opening, and of what lies in the zone. */
  readonly size: number;
  readonly inZone: number;
  readonly atEdge: boolean;
  readonly takenOff: boolean;
  /** Of its reveals in this zone: all, and what the rule counts. */
  readonly reveals: number;
  readonly revealsCounted: number;
}

export interface OfferArea {
  readonly rule: MeasurementRule;
  /** As it is coated: openings and fittings out, reveals in. Stands beside `area`, always. */
  readonly trueArea: number;
  /** As the rule measures it; fittings are out by `net` alone. */
  readonly area: number;
  readonly voids: readonly MeasuredVoid[];
}

/**
 * What a zone measures by a rule. Openings are judged one by one by their whole size on the wall (adjoining ones by
 * themselves), also where the zone has only a part of them; what is taken off is that part.
 */
export function offerArea(survey: SurveyedWall, measures: ZoneMeasures, rule: MeasurementRule): OfferArea {
  const voids = voidsOf(survey, measures, rule);
  const revealArea = measures.reveals.reduce((sum, { area }) => sum + area, 0);
  const trueArea = measures.faceArea + revealArea;
  const counted = voids.reduce(
    (sum, { takenOff, inZone, revealsCounted }) => sum - (takenOff ? inZone : 0) + revealsCounted,
    measuredWhole(measures, rule) - interruptedBy(survey, measures, rule),
  );
  return { rule, trueArea, area: rule.id === 'net' ? trueArea : counted, voids };
}

/** The zone before anything is taken off, hundredths squared. */
function measuredWhole({ gross, grossArea }: ZoneMeasures, { enclosesPolygons }: MeasurementRule): number {
  if (!enclosesPolygons) return grossArea;
  return gross.reduce(
    (sum, polygon) => sum + (isBox(polygon) ? polygonArea(polygon) : enclosingRectangleArea(polygon.outer)),
    0,
  );
}

/** Fittings that part a zone in two and are wider than the rule lets pass, hundredths squared. */
function interruptedBy(
  { keepOuts }: SurveyedWall,
  { gross }: ZoneMeasures,
  { interruptedAbove }: MeasurementRule,
): number {
  if (interruptedAbove === undefined) return 0;
  return keepOuts.reduce((sum, { kind, bare }) => {
    const box = boxOf(bare.ring);
    const width = Math.min(box.right - box.left, box.top - box.bottom);
    if (kind !== 'fitting' || width <= toHundredth(interruptedAbove)) return sum;
    const parts = gross.filter(({ outer }) => boxesMeet(boxOf(outer), box));
    const drawn: Region = [{ outer: bare.ring, holes: [] }];
    return difference(parts, drawn).length > parts.length
      ? sum + regionArea(intersection(drawn, parts))
      : sum;
  }, 0);
}

function voidsOf(survey: SurveyedWall, measures: ZoneMeasures, rule: MeasurementRule): MeasuredVoid[] {
  const { gross } = measures;
  return survey.wall.openings.flatMap((opening): MeasuredVoid[] => {
    const bare = survey.keepOuts.find(({ kind, id }) => kind === 'opening' && id === opening.id)?.bare;
    const box = bare && boxOf(bare.ring);
    if (!box || !gross.some(({ outer }) => boxesMeet(boxOf(outer), box))) return [];
    const drawn: Region = [{ outer: bare.ring, holes: [] }];
    const onWall = intersection(drawn, [{ outer: survey.outline.ring, holes: [] }]);
    const inZone = regionArea(intersection(drawn, gross));
    if (inZone === 0) return [];
    const size = regionArea(onWall);
    const atEdge = inZone < size || rimShared(drawn, gross) > 0;
    const reveals = measures.reveals
      .filter((reveal) => reveal.opening === opening.id)
      .reduce((sum, { area }) => sum + area, 0);
    return [
      {
        id: opening.id,
        name: nameOfPlaced(opening, 'opening'),
        size,
        inZone,
        atEdge,
        takenOff: (atEdge && rule.takesOffAtEdge) || rule.takesOff(size / 1e10),
        reveals,
        revealsCounted: rule.countsReveals(size / 1e10) ? reveals : 0,
      },
    ];
  });
}
