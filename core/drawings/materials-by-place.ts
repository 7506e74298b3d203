import { nameOfWall, nameOfZone, sentence } from '../job/names';
import { sentenceInUnits, type LengthUnits } from '../lengths';
import type { ZoneFilm } from '../quantities/wall-needs';
import type { Need } from '../quantities/need';
import type { TakeOff } from '../quantities/take-off';
import type { WorkedOut } from '../worked-out';
import { amountText } from './amount-text';
import type { FlowColumn, FlowRow } from './flow-table';
import { paperFigures, type PaperFigures } from './paper-figures';

export const placeColumns: readonly FlowColumn[] = [
  { heading: 'Material', align: 'left', width: 42 },
  { heading: 'Coat', align: 'left', width: 14 },
  { heading: 'With loss', align: 'right', width: 22 },
  { heading: 'Worked out from', align: 'left', width: 92 },
];

/** Where the materials go, zone by zone; coats that take the same stand in one row. */
export function placeRows({ job, walls }: WorkedOut, { lines, needs, films, zoneAreas }: TakeOff): FlowRow[] {
  const nameOf = new Map(lines.map(({ item, name }) => [item, name]));
  const figures = paperFigures(job.units);
  const rowOf = (own: readonly Need[]): FlowRow => {
    const [first] = own as [Need];
    return {
      kind: 'row',
      cells: [
        nameOf.get(first.item) ?? first.item,
        coatsText(own),
        amountText(first.withLoss * own.length, first.unit),
        `${own.length > 1 ? `${own.length} × ` : ''}${onPaper(first.how, job.units)}`,
      ],
    };
  };
  const byZone = new Map<string, Need[]>();
  for (const need of needs) {
    const key = `${need.wall}/${need.zone}`;
    const own = byZone.get(key);
    if (own) own.push(need);
    else byZone.set(key, [need]);
  }
  const areas = new Map(zoneAreas.map((row) => [`${row.wall}/${row.zone}`, row.face]));
  const zones = walls.flatMap(({ survey: { wall }, zones: own }) =>
    own.flatMap(({ area: { zone } }): FlowRow[] => {
      const key = `${wall.id}/${zone.id}`;
      const rows = together(byZone.get(key) ?? []).map(rowOf);
      const strips = films
        .filter((film) => film.wall === wall.id && film.zone === zone.id)
        .map((film) => stripRow(film, nameOf, figures));
      const heading: FlowRow = {
        kind: 'group',
        text: sentence(`${nameOfZone(zone)} on ${nameOfWall(wall)}`),
        aside: `${figures.area(areas.get(key) ?? 0)} ${figures.areaUnit}, openings out`,
      };
      return rows.length > 0 ? [heading, ...rows, ...strips] : [];
    }),
  );
  const ofJob = together(needs.filter(({ wall }) => wall === '')).map(rowOf);
  return ofJob.length > 0 ? [...zones, { kind: 'group', text: 'The whole job' }, ...ofJob] : zones;
}

/** Needs of one layer that differ by their coat alone. */
function together(needs: readonly Need[]): Need[][] {
  const groups: Need[][] = [];
  for (const need of needs) {
    const alike = groups.find(
      ([first]) =>
        first!.item === need.item &&
        first!.layer === need.layer &&
        first!.of === need.of &&
        first!.how === need.how,
    );
    if (alike) alike.push(need);
    else groups.push([need]);
  }
  return groups;
}

/** All of its figures with a decimal comma, rates and factors too. */
function onPaper(how: string, units: LengthUnits = 'mm'): string {
  return sentenceInUnits(how, units).replace(/(?<=\d)\.(?=\d)/g, ',');
}

function coatsText(needs: readonly Need[]): string {
  const coats = needs.map(({ coat }) => coat).filter((coat) => coat > 0);
  if (coats.length === 0) return '–';
  return coats.length === 1 ? String(coats[0]) : `${Math.min(...coats)} to ${Math.max(...coats)}`;
}

function stripRow(
  { product, plan }: ZoneFilm,
  nameOf: ReadonlyMap<string, string>,
  figures: PaperFigures,
): FlowRow {
  const from = plan.direction === 'upright' ? 'left end of the datum' : 'datum level';
  const seams = plan.seams.map(figures.length).join('; ');
  const pieces = plan.strips
    .flatMap((strip) => strip.pieces)
    .map(({ from: a, to: b }) => figures.length(b - a))
    .join('; ');
  return {
    kind: 'row',
    cells: [
      nameOf.get(`product ${product}`) ?? product,
      'strips',
      '',
      `Cut ${pieces} long (${figures.unit}), trim included; ${seams ? `seams at ${seams} from the ${from}` : 'no seam'}.`,
    ],
  };
}
