import type { Finding } from '../finding';
import { isElectric, ownKindsOf } from '../job/fitting-kinds';
import { nameOfPlaced, nameOfWall, nameOfZone, sentence } from '../job/names';
import type { Job } from '../job/schema';
import type { SurveyedWall } from '../survey/surveyed-wall';
import type { Mm } from '../units';
import type { ZoneArea } from '../zones/zone-area';
import type { EdgePiece } from './edge-pieces';
import { figuresOfBuildUp } from './figures';
import type { ResolvedBuildUp } from './resolve';

export type ConsequenceKind =
  'extension-ring' | 'longer-screws' | 'architrave' | 'reveal-return' | 'skirting' | 'radiator-bracket';

/** Something beside the layers that their thickness changes. */
export interface Consequence {
  readonly kind: ConsequenceKind;
  /** Id of the opening or fitting; null: the wall itself. */
  readonly object: string | null;
  /** Pieces, or mm of edge. */
  readonly amount: number;
  readonly unit: 'piece' | 'mm';
  /** By how much the face comes forward there, mm; null where it is not known. */
  readonly by: Mm | null;
}

/** mm. A face that comes forward by less changes nothing. Common practice, no source. */
export const noticeable: Mm = 1;

/**
 * What has to be changed where a zone's layers bring the face of the wall forward: boxes in or beside it, frames and
 * reveals along it, the skirting under it, radiators on it. Common practice, no source. [] for coats and films.
 *
 * @param pieces of the edge of the zone's area
 */
export function consequencesOf(
  job: Job,
  { wall }: SurveyedWall,
  pieces: readonly EdgePiece[],
  buildUp: ResolvedBuildUp,
): Consequence[] {
  const by = forwardBy(buildUp);
  if (by !== null && by < noticeable) return [];
  const own = ownKindsOf(job);
  const lengths = new Map<string, Mm>();
  let skirting = 0;
  for (const { cause, length } of pieces) {
    if (cause.kind === 'opening' || cause.kind === 'fitting') {
      lengths.set(cause.id, (lengths.get(cause.id) ?? 0) + length);
    } else if (cause.kind === 'rim' && cause.side === 'floor') skirting += length;
  }
  const along = (id: string) => lengths.get(id) ?? 0;
  return [
    ...wall.fittings.flatMap(({ id, kind }): Consequence[] => {
      if (along(id) === 0) return [];
      if (isElectric(kind, own)) {
        return [
          { kind: 'extension-ring', object: id, amount: 1, unit: 'piece', by },
          { kind: 'longer-screws', object: id, amount: screwsOfPlate, unit: 'piece', by },
        ];
      }
      return kind === 'radiator'
        ? [{ kind: 'radiator-bracket', object: id, amount: 1, unit: 'piece', by }]
        : [];
    }),
    ...wall.openings.flatMap(({ id, kind }): Consequence[] => {
      const length = along(id);
      if (length === 0) return [];
      const framed: Consequence = { kind: 'architrave', object: id, amount: length, unit: 'mm', by };
      const returned: Consequence = { kind: 'reveal-return', object: id, amount: length, unit: 'mm', by };
      if (kind === 'door' || kind === 'hatch') return [framed];
      return kind === 'window' ? [framed, returned] : [returned];
    }),
    ...(skirting > 0
      ? [{ kind: 'skirting', object: null, amount: skirting, unit: 'mm', by } satisfies Consequence]
      : []),
  ];
}

/** Screws that hold a faceplate. Common practice, no source. */
const screwsOfPlate = 2;

/** How far the face comes forward, mm; null where the thickness is not known. */
export function forwardBy(buildUp: ResolvedBuildUp): Mm | null {
  return figuresOfBuildUp(buildUp, undefined).thickness.value;
}

/** The same in sentences: one for the boxes of a zone, one for each thing else. */
export function consequenceFindings(
  { wall }: SurveyedWall,
  { zone }: ZoneArea,
  consequences: readonly Consequence[],
): Finding[] {
  const where = `${nameOfZone(zone)} on ${nameOfWall(wall)}`;
  const say = (code: string, object: string, text: string): Finding => ({
    level: 'note',
    code,
    wall: wall.id,
    object,
    text: sentence(text),
  });
  const boxes = consequences.filter(({ kind }) => kind === 'extension-ring');
  const first = boxes[0];
  return [
    ...(first
      ? [
          say(
            'boxes-come-forward',
            boxes.length === 1 ? first.object! : zone.id,
            `${where} brings the face ${forward(first.by)} at ${boxNames(wall.fittings, boxes)}: order ${boxes.length === 1 ? 'an extension ring' : `${boxes.length} extension rings`} and longer screws, so that every plate seats flat on the finished face and clear of the steel; a licensed electrician fits them.`,
          ),
        ]
      : []),
    ...consequences.flatMap(({ kind, object, by }): Finding[] => {
      const opening = wall.openings.find(({ id }) => id === object);
      if (kind === 'architrave' && opening) {
        const text = `${where} brings the face ${forward(by)} along ${nameOfPlaced(opening, 'opening')}: take the architrave off first and see whether it still covers the joint, or end the layers in a stop bead beside it.`;
        return [say('architrave-too-shallow', opening.id, text)];
      }
      if (kind === 'reveal-return' && opening) {
        const text = `${where} makes the reveal of ${nameOfPlaced(opening, 'opening')} deeper ${by === null ? 'by its thickness' : `by ${figure(by)} mm`}: decide whether its return is filled and finished too.`;
        return [say('reveal-deeper', opening.id, text)];
      }
      if (kind === 'skirting') {
        const text = `${where} comes down to the floor ${forward(by)}: take the skirting off first, or end the layers above it.`;
        return [say('skirting-too-shallow', zone.id, text)];
      }
      const radiator = wall.fittings.find(({ id }) => id === object);
      if (kind !== 'radiator-bracket' || !radiator) return [];
      const text = `${where} brings the face ${forward(by)} behind ${nameOfPlaced(radiator, 'fitting')}: have it taken off and hung again on longer brackets by whoever may work on the heating.`;
      return [say('radiator-comes-forward', radiator.id, text)];
    }),
  ];
}

function boxNames(fittings: SurveyedWall['wall']['fittings'], boxes: readonly Consequence[]): string {
  const names = boxes.slice(0, 3).map(({ object }) => {
    return nameOfPlaced(
      fittings.find(({ id }) => id === object)!,
      'fitting',
    );
  });
  const left = boxes.length - names.length;
  const parts = left > 0 ? [...names, `${left} more`] : names;
  return parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)!}`;
}

/** `2.8 mm forward` */
function forward(by: Mm | null): string {
  return by === null ? 'forward' : `${figure(by)} mm forward`;
}

function figure(by: Mm): number {
  return Math.round(by * 10) / 10;
}
