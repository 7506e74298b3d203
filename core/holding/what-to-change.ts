import type { AdviceKind } from './advice';
import { usualCondition } from './friction';
import { surfaceOf, type HoldingGround, type SteelGround } from './ground';
import type { HeldItem } from './item';
import { judgeItem, type Judgement } from './judge-item';

/** Something that is changed elsewhere than at the item: in the build-up, at the stock sheet, on site. */
export interface Elsewhere {
  readonly kind: AdviceKind;
  readonly words: string;
  readonly at?: 'Zones' | 'Panels';
  readonly judgement: Judgement;
}

/** Sheets that are had, mm; common practice, no source. */
const thicknesses = [0.7, 1, 1.5, 2] as const;

/**
 * What would help beside other magnets and places: less over the steel, thicker steel, a shorter reach, a clean face, a stop.
 * Nothing of it is a change of the item, so that it is said in words with what it leads to.
 */
export function whatToChange(item: HeldItem, now: Judgement): Elsewhere[] {
  const onSteel = (change: (ground: SteelGround) => Partial<SteelGround>): HeldItem => ({
    ...item,
    magnets: item.magnets.map((place) => ({ ...place, ground: changedSteel(place.ground, change) })),
  });
  const isDusty = item.magnets.some(
    ({ ground }) => (item.condition ?? usualCondition(surfaceOf(ground))) === 'dusty',
  );
  const isChalk = item.magnets.some(({ ground }) => surfaceOf(ground) === 'chalk');
  const thicker = thicknesses.map((thickness) => ({
    kind: 'thicker-steel' as const,
    at: 'Panels' as const,
    words: `Take steel of ${thickness} mm.`,
    judgement: judgeItem(onSteel((ground) => ({ thickness: Math.max(ground.thickness, thickness) }))),
  }));
  const enough = thicker.find(({ judgement: { verdict } }) => verdict.startsWith('holds')) ?? thicker.at(-1)!;
  return [
    {
      kind: 'less-over-steel',
      at: 'Zones',
      words: 'Lay half a millimetre less over the steel.',
      judgement: judgeItem(onSteel(lessOver)),
    },
    enough,
    {
      kind: 'half-reach',
      words: 'Bring its weight half as far from the wall.',
      judgement: judgeItem({
        ...item,
        loads: item.loads.map((load) => ({ ...load, reach: load.reach / 2 })),
      }),
    },
    ...(isDusty && !isChalk
      ? [
          {
            kind: 'clean-face' as const,
            words: 'Clean the face under its magnets, keep it dry, and say so at the item.',
            judgement: judgeItem({ ...item, condition: 'clean-dry' }),
          },
        ]
      : []),
    ...(now.isBarred
      ? [
          {
            kind: 'stop' as const,
            words: 'Fit a mechanical stop that catches it, and say so at the item.',
            judgement: judgeItem({ ...item, hasStop: true }),
          },
        ]
      : []),
  ];
}

/** What was measured on the wall as it is says nothing of another. */
function changedSteel(
  ground: HoldingGround,
  change: (ground: SteelGround) => Partial<SteelGround>,
): HoldingGround {
  return ground.kind === 'steel' ? { ...ground, tests: [], ...change(ground) } : ground;
}

/** Never less than a tenth; what the gap may vary by stays. */
function lessOver({ gap, gapLeast, gapMost }: SteelGround): Partial<SteelGround> {
  const less = Math.max(0, Math.min(0.5, gap - 0.1));
  return {
    gap: gap - less,
    ...(gapLeast !== undefined && { gapLeast: Math.max(0, gapLeast - less) }),
    ...(gapMost !== undefined && { gapMost: gapMost - less }),
  };
}
