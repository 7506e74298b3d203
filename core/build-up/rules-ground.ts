import { commonPractice, has, nameOfLayer, type Rule, type RuleContext } from './rule';
import { filmLayers, layerNames, workAlone } from './layer-kinds';

/*
 * What the ground and the place ask of the whole build-up. That steel on a damp, outdoor or heated wall is a risk, and how
 * level a ground must be under it, stands with the survey (`core/survey/ground-findings.ts`).
 */

export const groundRules: readonly Rule[] = [
  {
    code: 'unknown-product',
    level: 'warning',
    test: (context) => unknownProduct(context) !== undefined,
    text: (context) => {
      const { kind, product } = unknownProduct(context)!.layer;
      return `its ${layerNames[kind]} names the product “${product!.slice(0, 40)}”, which the job does not have`;
    },
    reason: 'Nothing of such a layer is known: no thickness, no mass, no quantity and no time to dry.',
    source: commonPractice,
    mend: 'add the product, or choose another for the layer',
  },
  {
    code: 'old-paint-untested',
    level: 'warning',
    test: ({ ground, layers }) =>
      layers.length > 0 && isPainted(ground.material) && ground.adhesion === undefined,
    text: ({ ground }) =>
      `nobody has tested how well the ${ground.material === 'old-coating' ? 'old coating' : 'paint'} of the wall holds, and old paint may hold lead`,
    reason: 'The whole build-up hangs on the weakest coat below it.',
    source: `${commonPractice}; pull-off strength as in ISO 4624, classes of a cross-cut as in ISO 16276-2 (from memory)`,
    mend: 'make a pull-off or cross-cut test, record it under Ground at Survey, and have old paint tested for lead before it is sanded',
  },
  {
    code: 'coat-on-damp-wall',
    level: 'warning',
    test: (context) =>
      context.layers.length > 0 &&
      !has(context, 'steel') &&
      (context.ground.exposure === 'damp' || context.ground.exposure === 'outdoor'),
    text: ({ ground }) =>
      `the wall is ${ground.exposure === 'damp' ? 'damp' : 'outdoors'}, and coats and films for rooms blister and come off there`,
    reason: 'Moisture from behind pushes off what closes the surface; sun and frost do the same outdoors.',
    source: commonPractice,
    mend: 'find the cause and dry the wall, or choose another wall',
  },
  {
    code: 'film-on-heated-wall',
    level: 'note',
    test: (context) =>
      !has(context, 'steel') && context.layers.length > 0 && context.ground.exposure === 'heated-behind',
    text: () => 'the wall is heated from behind',
    reason: 'Warmth speeds drying, softens adhesives and gives old coats off as gas.',
    source: commonPractice,
    mend: 'turn the heating off while the layers dry, and ask the makers what warmth they stand',
  },
  {
    code: 'fire-evidence',
    level: 'warning',
    test: ({ ground, layers }) => ground.escapeRoute === true && combustible({ layers }).length > 0,
    text: ({ ground, layers }) => {
      const names = combustible({ layers });
      const wants = ground.fire && ground.fire !== 'none' ? ` of ${ground.fire} (EN 13501-1)` : '';
      return `the wall is on an escape route, and evidence${wants} must cover the whole build-up, ${names.join(', ')} included`;
    },
    reason: 'A build-up can burn otherwise than its parts, and an escape route asks for the strictest class.',
    source: 'EN 13501-1 for the classes (from memory); what is required is for the local code',
    mend: 'ask whoever answers for fire safety, and order nothing before the evidence is there',
  },
];

function unknownProduct({ layers }: RuleContext) {
  return layers.find(({ layer, product }) => layer.product !== undefined && product === null);
}

function isPainted(material: string | undefined): boolean {
  return material === 'sound-paint' || material === 'old-coating';
}

/** Names of adhesives, films and finishes, each once. */
function combustible({ layers }: Pick<RuleContext, 'layers'>): string[] {
  const organic = layers.filter(
    ({ layer: { kind } }) =>
      !workAlone.includes(kind) &&
      (['adhesive', 'writable', 'clear-writable', 'decorative', 'chalk'].includes(kind) ||
        filmLayers.includes(kind)),
  );
  return [...new Set(organic.map(nameOfLayer))];
}
