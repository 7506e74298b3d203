import { boxesMeet, boxOf } from '../geometry/polygon';
import { productsOf } from '../build-up/resolve';
import { nameOfPlaced, nameOfWall, nameOfZone, sentence } from '../job/names';
import { itemOfProduct } from '../quantities/need';
import { piecesOfPlan, type FilmPiece } from '../quantities/film-pieces';
import type { StripPlan } from '../quantities/film-strips';
import { rollCuts } from '../quantities/roll-cuts';
import { settingsOf } from '../quantities/settings';
import type { TakeOff } from '../quantities/take-off';
import type { ZoneFilm } from '../quantities/wall-needs';
import type { SurveyedWall } from '../survey/surveyed-wall';
import { toHundredth, type Hundredth } from '../units';
import type { WorkedOut } from '../worked-out';
import { checkOnSite, doNotScale } from './cautions';
import { rollColumns, rollRows, type FilmOnRolls } from './film-rolls-table';
import { stripPicture } from './film-strips-picture';
import {
  dealOut,
  heightOf,
  layHeading,
  layRows,
  stack,
  type FlowBlock,
  type FlowColumn,
  type FlowRow,
} from './flow-table';
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
  const onRolls = filmsOnRolls(worked, takeOff);
  const roomOf = (sheet: number) => tradePage(document, sheet, 2, measure, 'as shown').space;
  const pages: Item[][] = [];
  const addPages = ({ above, columns, rows }: FilmTable) => {
    const own = roomOf(pages.length === 0 ? 1 : 2);
    const next = roomOf(2);
    const heading = layHeading(columns, measure);
    const dealt = dealOut(
      layRows(columns, rows, measure),
      next.top - next.bottom - heading.height,
      own.top - own.bottom - heightOf(above) - heading.height,
    );
    dealt.forEach((part, i) => {
      const { left, top } = roomOf(pages.length === 0 ? 1 : 2);
      const table = part.length > 0 ? [heading, ...part] : [];
      pages.push(stack([...(i === 0 ? above : []), ...table], left, top));
    });
  };
  for (const film of takeOff.films) {
    addPages(filmTable(worked, takeOff, film, onRolls, figures, boxWidth(roomOf(1)), measure));
  }
  if (onRolls.length > 0) {
    addPages({ above: [], columns: rollColumns, rows: rollRows(onRolls, takeOff, figures) });
  }
  return {
    name,
    title,
    pages: pages.map((items, i) =>
      upright([...tradePage(document, i + 1, pages.length, measure, 'as shown').items, ...items]),
    ),
  };
}

function filmsOnRolls({ job }: WorkedOut, { films, lines, needs }: TakeOff): FilmOnRolls[] {
  const products = productsOf(job);
  return [...new Set(films.map(({ product }) => product))].flatMap((id) => {
    const product = products.get(id);
    const line = lines.find(({ item }) => item === itemOfProduct(id));
    const cuts = product && line && rollCuts(product, line, needs);
    return cuts ? [{ id, name: product.name, cuts }] : [];
  });
}

const pictureHeight = 95;

interface FilmTable {
  readonly above: readonly FlowBlock[];
  readonly columns: readonly FlowColumn[];
  readonly rows: readonly FlowRow[];
}

function filmTable(
  worked: WorkedOut,
  { needs }: TakeOff,
  film: ZoneFilm,
  onRolls: readonly FilmOnRolls[],
  figures: PaperFigures,
  width: number,
  measure: TextMeasure,
): FilmTable {
  const { filmOverlap, filmTrim } = settingsOf(worked.job);
  const allowances = { overlap: toHundredth(filmOverlap), trim: toHundredth(filmTrim) };
  const wall = worked.walls.find(({ survey }) => survey.wall.id === film.wall)!;
  const zone = wall.zones.find(({ area }) => area.zone.id === film.zone)!;
  const { product } = zone.buildUp.resolved.layers[film.layer]!;
  const pieces = piecesOfPlan(film.plan, allowances);
  const picture = stripPicture(
    { plan: film.plan, region: film.region, pieces, write: figures.length },
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
    const rolls = onRolls.find(({ id }) => id === film.product)?.cuts.ofNeed.get(need);
    const coat: FlowRow[] = own.length > 1 ? [{ kind: 'group', text: `Coat ${need.coat}` }] : [];
    return [
      ...coat,
      ...pieces.map((piece, i) =>
        rowOf(piece, rolls?.[i], cutOutOf(piece, film.plan, wall.survey, allowances.trim), figures),
      ),
    ];
  });
  return {
    above: [...layRows(columns, [heading], measure), picture],
    columns,
    rows,
  };
}

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
  cutOut: readonly string[],
  { length, cut }: PaperFigures,
): FlowRow {
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
      cutOut.join(', ') || '–',
    ],
  };
}

/** Openings and fittings that lie in what shows of a piece; what only bounds it is trimmed like an edge. */
function cutOutOf(
  piece: FilmPiece,
  { direction }: StripPlan,
  { wall, keepOuts }: SurveyedWall,
  trim: Hundredth,
): string[] {
  const [from, to] = [piece.begins + trim, piece.ends - trim];
  const shown =
    direction === 'upright'
      ? { left: piece.from, right: piece.to, bottom: from, top: to }
      : { left: from, right: to, bottom: piece.from, top: piece.to };
  return keepOuts
    .filter(({ bare }) => boxesMeet(boxOf(bare.ring), shown, -1))
    .map(({ kind, id }) => {
      const placed = (kind === 'opening' ? wall.openings : wall.fittings).find((one) => one.id === id);
      return placed ? nameOfPlaced(placed, kind) : id;
    });
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
