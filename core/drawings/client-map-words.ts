import type { Region } from '../geometry/polygon';
import type { MapBand, MapQuestion } from '../holding/holding-map';
import type { Magnet, MagnetShape } from '../holding/magnet';
import { weightDown } from '../holding/map-words';
import type { LengthUnits } from '../lengths';
import { paperFigures } from './paper-figures';

/** Parts of a wall of which a client is told the same. */
export interface ClientBand extends Pick<MapBand, 'verdict' | 'isNearEdge'> {
  /** On the wall: `100 g`. */
  readonly short: string;
  /** `Up to 100 g on one hook` */
  readonly title: string;
  readonly detail: string;
  readonly region: Region;
}

export function clientBands(bands: readonly MapBand[], units?: LengthUnits): ClientBand[] {
  const alike = new Map<string, ClientBand>();
  for (const band of bands) {
    const said = { ...wordsOf(band, units), verdict: band.verdict, isNearEdge: band.isNearEdge };
    const key = `${said.title} ${said.detail}`;
    alike.set(key, { ...said, region: [...(alike.get(key)?.region ?? []), ...band.region] });
  }
  return [...alike.values()];
}

function wordsOf(band: MapBand, units?: LengthUnits): Pick<ClientBand, 'short' | 'title' | 'detail'> {
  const { verdict, onHook, ifTested, isNearEdge, isOverPeople } = band;
  const beneath = isOverPeople ? ', and people are beneath' : '';
  if (verdict === 'cannot be judged')
    return {
      short: 'not known yet',
      title: 'Not known yet',
      detail: `Hang nothing here before a magnet has been tried on this very surface${beneath}.`,
    };
  if (onHook === 0 && ifTested === 0)
    return {
      short: 'nothing',
      title: 'Nothing on a hook',
      detail: isOverPeople
        ? 'People are beneath: magnets alone must not hold things here.'
        : 'A magnet does not hold enough here.',
    };
  const weight = onHook > 0 ? onHook : ifTested;
  const amount = comma(weightDown(weight, units));
  const where = isNearEdge
    ? 'Near an edge, a joint, a hole or a screw'
    : 'Away from edges, joints, holes and screws';
  if (verdict === 'holds')
    return {
      short: amount,
      title: `Up to ${amount} on one hook`,
      detail: `${where}${beneath}. ${asHeavyAs(weight)}`,
    };
  return {
    short: `${amount}, once tried`,
    title: `Perhaps ${amount} on one hook`,
    detail: `Only after three times as much has been tried at that very place. ${where}${beneath}.`,
  };
}

/** Of office paper, g: 80 g/m² (ISO 536) on a sixteenth of a square metre (A4, ISO 216). */
const sheetWeight = 5;

function asHeavyAs(kilograms: number): string {
  const sheets = Math.floor((kilograms * 1000) / sheetWeight);
  return sheets >= 2 ? `About as heavy as ${sheets} sheets of office paper.` : '';
}

/** What the figures are for, and how they are to be taken. */
export function clientMapIntro({ magnet, reach, use }: MapQuestion, units?: LengthUnits): string {
  const { words } = paperFigures(units);
  return `This shows one ${magnetInWords(magnet, words)} with a hook on it, the weight hanging ${words(reach)} from the wall, for ${clientUse[use]}. Weights include magnet and hook. Keep magnets well apart. Where nothing is marked, no magnet holds.`;
}

const clientUse: Readonly<Record<MapQuestion['use'], string>> = {
  'light-at-reach': 'something light within reach',
  handled: 'something that is knocked or handled daily',
  'could-hurt': 'something whose fall could hurt',
};

const shapes: Readonly<Record<MagnetShape, string>> = {
  disc: 'round magnet',
  pot: 'round magnet in a steel pot',
  ring: 'ring magnet',
  block: 'block magnet',
  foil: 'piece of magnetic foil',
};

function magnetInWords(
  { shape, diameter, length, height, cover, name }: Magnet,
  words: (mm: number) => string,
): string {
  const size = length === undefined ? `${words(diameter)} across` : `${words(diameter)} by ${words(length)}`;
  const face = cover > 0 ? ', its face covered,' : '';
  return `${shapes[shape]}, ${size} and ${words(height)} thick${face} (${comma(name)})`;
}

function comma(text: string): string {
  return text.replace(/(?<=\d)\.(?=\d)/g, ',');
}
