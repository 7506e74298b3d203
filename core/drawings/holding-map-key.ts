import type { Mm } from '../units';
import type { Block } from './notes-block';
import type { Item, Text, TextMeasure } from './page';
import { cornersOf } from './paper';
import { bandHatch, type PrintedBand } from './printed-bands';
import { clipStrokes } from './setting-out-view';
import { fitText } from './text';

const sample = { width: 15, height: 7.6 } as const;
const rowHeight: Mm = 10.5;
const betweenColumns: Mm = 5;
/** More than these go to the table alone. */
const most = 16;

/** The key of a holding map: each band as it is hatched, what a hook there carries, its pull and place. */
export function mapKey(bands: readonly PrintedBand[], width: Mm, measure: TextMeasure): Block {
  const listed = bands.slice(0, most);
  const count = Math.max(1, Math.floor(width / 85));
  const column = (width - (count - 1) * betweenColumns) / count;
  const rows = Math.ceil(listed.length / count);
  const beyond = bands.length > most ? 5 : 0;
  return {
    height: rows * rowHeight + beyond,
    at: (left, top) => [
      ...listed.flatMap((band, i) => {
        // Down one column, then the next.
        const [x, y] = [
          left + Math.floor(i / rows) * (column + betweenColumns),
          top - (i % rows) * rowHeight,
        ];
        return entry(band, x, y, column, measure);
      }),
      ...(beyond > 0 ? [theRest(bands.length, left, top - rows * rowHeight - 2.5)] : []),
    ],
  };
}

function entry(band: PrintedBand, left: Mm, top: Mm, width: Mm, measure: TextMeasure): Item[] {
  const box = { left, right: left + sample.width, bottom: top - sample.height, top };
  const ring = cornersOf(box);
  const words = left + sample.width + 2.5;
  const { number } = band;
  const style = { kind: 'text', face: 'condensed' } as const;
  const lines: Text[] = [
    {
      ...style,
      text: `(${number}) ${band.words}`,
      at: { x: words, y: top - 3.3 },
      height: 3.5,
      weight: 'semi-bold',
    },
    {
      ...style,
      text: detail(band, width - sample.width - 2.5, measure),
      at: { x: words, y: top - sample.height },
      height: 2.5,
    },
  ];
  return [
    ...clipStrokes(bandHatch(band, [ring]), box),
    { kind: 'stroke', points: ring, closed: true, width: 0.25 },
    ...lines.map((line) => fitText(line, width - sample.width - 2.5, measure)),
  ];
}

/** How the pull is known only where that has room: the table has it too. */
function detail({ pull, place, known }: PrintedBand, width: Mm, measure: TextMeasure): string {
  const short = pull ? `pull ${pull}, ${place}` : place;
  const long = known ? `${short}, ${known}` : short;
  if (measure(long, 2.5, { face: 'condensed' }) <= width) return long;
  return pull ? short : known || short;
}

function theRest(count: number, x: Mm, y: Mm): Text {
  const text = `(${most + 1}) to (${count}): see the table on the last sheets`;
  return { kind: 'text', text, at: { x, y }, height: 2.5, face: 'condensed' };
}
