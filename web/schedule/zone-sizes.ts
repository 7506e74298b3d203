import { countText } from '../../core/drawings/figure-text';
import type { ZoneEdge } from '../../core/job/zone-edges';
import type { ZoneAdvice } from '../../core/run/zone-advice';
import { areaFigure, areaUnit, lengthWords } from '../look/figures';

/** The edges of a zone as one names them. */
export const edgeNames: readonly { readonly edge: ZoneEdge; readonly label: string }[] = [
  { edge: 'left', label: 'left' },
  { edge: 'right', label: 'right' },
  { edge: 'bottom', label: 'foot' },
  { edge: 'top', label: 'top' },
];

/** "240 mm narrower on the right, 60 mm taller at the top" */
export function changeInWords({ edges }: Pick<ZoneAdvice, 'edges'>): string {
  return edgeNames
    .filter(({ edge }) => edges[edge])
    .map(({ edge, label }) => {
      const by = edges[edge]!;
      const isSide = edge === 'left' || edge === 'right';
      const word = isSide ? (by > 0 ? 'wider' : 'narrower') : by > 0 ? 'taller' : 'shorter';
      return `${lengthWords(Math.abs(by))} ${word} ${isSide ? 'on the' : 'at the'} ${label}`;
    })
    .join(', ');
}

/** "saves 2 stock sheets, 12.80 EUR, with 3 cut panels more and 0.24 m² less steel" */
export function savingInWords({ saves }: Pick<ZoneAdvice, 'saves'>): string {
  const gains = [
    saves.stockSheets > 0 && countText(saves.stockSheets, 'stock sheet'),
    saves.cutPanels > 0 && countText(saves.cutPanels, 'cut panel'),
    saves.money,
  ].filter((gain) => typeof gain === 'string');
  const area = areaFigure(Math.abs(saves.area) * 1e10);
  const prices = [
    saves.cutPanels < 0 && `${countText(-saves.cutPanels, 'cut panel')} more`,
    area !== '0.00' && `${area} ${areaUnit()} ${saves.area > 0 ? 'less' : 'more'} steel`,
  ].filter((price) => typeof price === 'string');
  return `saves ${gains.join(', ')}${prices.length > 0 ? `, with ${prices.join(' and ')}` : ''}`;
}
