import { boxOf } from '../geometry/polygon';
import { nameOfPlaced, nameOfWall, nameOfZone, sentence } from '../job/names';
import { piecesOfPlan, type FilmPiece } from '../quantities/film-pieces';
import { rollCuts, type RollCuts } from '../quantities/roll-cuts';
import { settingsOf } from '../quantities/settings';
import type { TakeOff } from '../quantities/take-off';
import type { ZoneFilm } from '../quantities/wall-needs';
import { toHundredth } from '../units';
import type { WorkedOut } from '../worked-out';
import { checkOnSite, doNotScale } from './cautions';
import { meets, pieceBox, stripPicture } from './film-strips-picture';
import { dealOut, heightOf, layHeading, layRows, stack, type FlowColumn, type FlowRow } from './flow-table';
import type { Item, LodeplanDocument, TextMeasure } from './page';
import { boxWidth } from './paper';
import { paperFigures, sentenceOnPaper, type PaperFigures } from './paper-figures';
import { tradePage, upright, type TradeDocument } from './trade-page';

const name = 'film-strips';

/**
 * How film is cut from its rolls and hung: for each film of each zone its strips drawn from the datum, then a list of what is
 * cut, from which roll, how wide and where it hangs. No pages where no film is laid in strips.
 *
 * @param takeOff of the same job
 */
export function filmStripsSheet(worked: WorkedOut, takeOff: TakeOff, measure: TextMeasure): LodeplanDocument {
  const { job } = worked;
  const title = `${job.name}: film strips`;
  if (takeOff.films.length === 0) return { name, title, pages: [] };
  const figures = paperFigures(job.units);
  const document: TradeDocument = {
    job,
    title: 'Film strips',
    documentType: 'Film cutting list',
    notes: notesOf(worked, takeOff, figures),
    cautions: [],
  };
  const cuts = cutsByProduct(worked, takeOff);
  const room = (sheet: number) => tradePage(document, sheet, 2, measure, 'as shown').space;
  let first = true;
  const pages: Item[][] = [];
  for (const film of takeOff.films) {
    const { space } = { space: room(first ? 1 : 2) };
    const parts = filmBlocks(worked, takeOff, film, cuts, figures, boxWidth(space), measure);
    const heading = layHeading(parts.columns, measure);
    const above = heightOf(parts.above) + heading.height;
    const dealt = dealOut(
      layRows(parts.columns, parts.rows, measure),
      room(2).top - room(2).bottom - heading.height,
      space.top - space.bottom - above,
    );
    dealt.forEach((rows, i) => {
      const own = room(first ? 1 : 2);
      pages.push(
        stack(
          [...(i === 0 ? parts.above : []), ...(rows.length > 0 ? [heading] : []), ...rows],
          own.left,
          own.top,
        ),
      );
      first = false;
    });
  }
  return {
    name,
    title,
    pages: pages.map((items, i) =>
      upright([...tradePage(document, i + 1, pages.length, measure, 'as shown').items, ...items]),
    ),
  };
}

type CutsOf = ReadonlyMap<string, RollCuts>;

function cutsByProduct({ walls }: WorkedOut, { films, lines, needs }: TakeOff): CutsOf {
  const found = new Map<string, RollCuts>();
  for (const { product: id, wall, zone, layer } of films) {
    const line = lines.find(({ item }) => item === `product ${id}`);
    const product = walls
      .find(({ survey }) => survey.wall.id === wall)
      ?.zones.find(({ area }) => area.zone.id === zone)?.buildUp.resolved.layers[layer]?.product;
    const cuts = line && product && rollCuts(product, line, needs);
    if (cuts) found.set(id, cuts);
  }
  return found;
}

const pictureHeight = 95;

function filmBlocks(
  worked: WorkedOut,
  { needs }: TakeOff,
  film: ZoneFilm,
  cuts: CutsOf,
  figures: PaperFigures,
  width: number,
  measure: TextMeasure,
) {
  const { filmOverlap, filmTrim } = settingsOf(worked.job);
  const allowances = { overlap: toHundredth(filmOverlap), trim: toHundredth(filmTrim) };
  const wall = worked.walls.find(({ survey }) => survey.wall.id === film.wall)!;
  const zone = wall.zones.find(({ area }) => area.zone.id === film.zone)!;
  const { product } = zone.buildUp.resolved.layers[film.layer]!;
  const pieces = piecesOfPlan(film.plan, allowances);
  const picture = stripPicture(
    { survey: wall.survey, zone, plan: film.plan, pieces, write: figures.length },
    { width, height: pictureHeight },
    measure,
  );
  const columns = columnsOf(film.plan.direction, figures.unit);
  const heading: FlowRow = {
    kind: 'group',
    text: sentence(
      `${nameOfZone(zone.area.zone)} on ${nameOfWall(wall.survey.wall)}: ${product?.name ?? film.product}`,
    ),
    aside: `roll ${figures.words(product?.rollWidth ?? 0)} wide`,
  };
  const own = needs.filter(
    ({ wall: at, zone: on, layer, pieces: has }) =>
      at === film.wall && on === film.zone && layer === film.layer && has,
  );
  const rows = own.flatMap((need): FlowRow[] => {
    const rolls = cuts.get(film.product)?.ofNeed.get(need);
    const coat: FlowRow[] = own.length > 1 ? [{ kind: 'group', text: `Coat ${need.coat}` }] : [];
    return [...coat, ...pieces.map((piece, i) => rowOf(piece, rolls?.[i], film, wall.survey, figures))];
  });
  return {
    above: [
      ...layRows(columns, [heading], measure),
      ...(picture ? [picture] : layRows(columns, [tooLarge], measure)),
    ],
    columns,
    rows,
  };
}

const tooLarge: FlowRow = {
  kind: 'row',
  cells: ['Too large to be drawn on this sheet; the list says where each strip hangs.'],
};

function columnsOf(direction: 'upright' | 'level', unit: string): FlowColumn[] {
  const [across, along] =
    direction === 'upright'
      ? ['Left – right edge', 'Hangs from – to']
      : ['Foot – top edge', 'Hangs from – to'];
  return [
    { heading: 'Strip', align: 'left', width: 12 },
    { heading: 'Roll', align: 'left', width: 12 },
    { heading: `Cut off, ${unit}`, align: 'right', width: 22 },
    { heading: 'Width', align: 'right', width: 18 },
    { heading: across, align: 'right', width: 34 },
    { heading: along, align: 'right', width: 32 },
    { heading: 'Cut out', align: 'left', width: 40 },
  ];
}

function rowOf(
  piece: FilmPiece,
  roll: number | undefined,
  { plan }: ZoneFilm,
  { wall, keepOuts }: WorkedOut['walls'][number]['survey'],
  { length, cut }: PaperFigures,
): FlowRow {
  const box = pieceBox(piece, plan);
  const out = keepOuts
    .filter(({ bare }) => meets(boxOf(bare.ring), box))
    .map(({ kind, id }) => {
      const placed =
        kind === 'opening'
          ? wall.openings.find((one) => one.id === id)
          : wall.fittings.find((one) => one.id === id);
      return placed ? nameOfPlaced(placed, kind === 'opening' ? 'opening' : 'fitting') : id;
    });
  const span = (from: number, to: number) => `${length(from)} – ${length(to)}`;
  return {
    kind: 'row',
    cells: [
      piece.mark,
      roll === undefined ? '–' : String(roll),
      cut(piece.ends - piece.begins),
      cut(piece.reachTo - piece.reachFrom),
      span(piece.from, piece.to),
      span(piece.begins, piece.ends),
      out.join(', ') || '–',
    ],
  };
}

function notesOf({ job }: WorkedOut, { films, findings }: TakeOff, figures: PaperFigures): string[] {
  const { filmOverlap, filmTrim } = settingsOf(job);
  const isExact = films.every(({ plan }) => plan.exact);
  return [
    `${checkOnSite} ${doNotScale}`,
    `Figures run from the datum of the wall and from the finished floor. “Cut off” is the length from the roll, with ${figures.words(filmTrim)} over at either end; “width” is what the strip needs, with ${figures.words(filmTrim)} over at an edge and half of ${figures.words(filmOverlap)} at a seam. Left, right, foot and top edges are of what shows; where it hangs is with what is over.`,
    `At a seam lay the next strip ${figures.words(filmOverlap)} over the last and cut through both on the seam’s line, a straight edge under the knife; take both waste strips away. Do not cut into what lies beneath.`,
    'Hang strips in the order of their numbers, all the same way round as the arrows point. Cut out openings and fittings when the strip is laid.',
    ...findings
      .filter(
        ({ code }) =>
          code === 'film-seam-on-joint' || code === 'film-too-narrow' || code === 'film-longer-than-roll',
      )
      .map(({ text }) => sentenceOnPaper(text, job.units)),
    ...(isExact ? [] : ['Where an edge slopes, another plan might take a little less film.']),
  ];
}
