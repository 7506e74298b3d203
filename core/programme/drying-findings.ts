import type { ResolvedLayer } from '../build-up/resolve';
import type { Finding } from '../finding';
import { usualWaits } from './usual-rates';

/** Which layers dry or cure for a time that nobody has given, so that a usual one stands in for it; one note each. */
export function dryingFindings(layers: Iterable<ResolvedLayer>): Finding[] {
  const findings = new Map<string, Finding>();
  for (const { layer, product } of layers) {
    const { next, cure } = usualWaits[layer.kind];
    const dries = product?.recoatLeast ?? product?.touchDry;
    const assumed = [
      ...(dries === undefined && next > 0 ? [`${next} h to dry`] : []),
      ...(product?.cure === undefined && cure > 0 ? [`${cure} h to cure`] : []),
    ];
    if (assumed.length === 0) continue;
    const name = product?.name ?? `The layer “${layer.kind.replaceAll('-', ' ')}” without a product`;
    findings.set(name, {
      level: 'note',
      code: 'usual-drying-time',
      text: `${name} gives no time for it: the programme takes ${assumed.join(' and ')}, as is usual; enter what the data sheet says.`,
    });
  }
  return [...findings.values()];
}
