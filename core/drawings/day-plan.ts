import { buildUpOf } from '../build-up/resolve';
import type { Job } from '../job/schema';
import { nameOfWall, nameOfZone } from '../job/names';
import { dayMinutes, dayOf, isWorkingDay, lastDayOf, workBefore, type Minute } from '../programme/calendar';
import type { DatedTask, DatedWait, Programme } from '../programme/programme';
import type { Mix } from '../quantities/mixing-plan';
import { itemOfProduct } from '../quantities/need';
import type { TakeOff } from '../quantities/take-off';

/** What one day of the programme holds for the crew. */
export interface WorkDay {
  /** Day number. */
  readonly day: number;
  /** From 1, days without work not counted. */
  readonly number: number;
  readonly steps: readonly DayStep[];
  /** What is still drying, hardening or curing at some time of the day, from the first step on. */
  readonly waits: readonly DatedWait[];
}

export interface DayStep {
  readonly task: DatedTask;
  readonly start: Minute;
  readonly finish: Minute;
  readonly begunBefore: boolean;
  readonly goesOn: boolean;
}

/** Days on which the crew works, in order; a task that runs over night has a step on each of its days. */
export function workDays({ tasks, waits, settings }: Programme): WorkDay[] {
  const { calendar } = settings;
  const work = tasks.filter((task) => task.work > 0);
  const days = new Set(
    work.flatMap(({ start, finish }) => {
      const first = dayOf(start);
      return Array.from({ length: lastDayOf(finish) - first + 1 }, (_, i) => first + i);
    }),
  );
  return [...days]
    .sort((a, b) => a - b)
    .filter((day) => isWorkingDay(calendar, day))
    .map((day) => ({ day, steps: stepsOf(day) }))
    .filter(({ steps }) => steps.length > 0)
    .map(({ day, steps }, i): WorkDay => {
      const [from, to] = [day * dayMinutes, (day + 1) * dayMinutes];
      // What dried in the night is no news any more.
      const begin = Math.max(from, Math.min(...steps.map(({ start }) => start)));
      const own = waits.filter(({ start, finish }) => start < to && finish > begin);
      return { day, number: i + 1, steps, waits: own.sort((a, b) => a.finish - b.finish) };
    });

  function stepsOf(day: number): DayStep[] {
    const [from, to] = [day * dayMinutes, (day + 1) * dayMinutes];
    return work
      .map((task) => ({ task, start: Math.max(task.start, from), finish: Math.min(task.finish, to) }))
      .filter(
        ({ start, finish }) => start < finish && workBefore(calendar, start) < workBefore(calendar, finish),
      )
      .sort((a, b) => a.start - b.start || a.finish - b.finish)
      .map((step) => ({
        ...step,
        begunBefore: step.task.start < from,
        goesOn: step.task.finish > to,
      }));
  }
}

/** `A Proofing wall, Z1 Proofs`; empty for what concerns the whole job. */
export function placeOfTask(job: Job, { wall, zone }: Pick<DatedTask, 'wall' | 'zone'>): string {
  const on = job.walls.find(({ id }) => id === wall);
  const of = on?.zones.find(({ id }) => id === zone);
  return [on, of].flatMap((one) => (one ? [[one.id, one.name].filter(Boolean).join(' ')] : [])).join(', ');
}

export interface Lot {
  readonly name: string;
  readonly amount: number;
  readonly unit: string;
}

/** What is laid in a task of one coat, with loss; [] where it is not known. */
export function amountsOf(task: DatedTask, { needs, lines }: TakeOff): Lot[] {
  const { uses } = task;
  if (!uses) return [];
  const lots = new Map<string, Lot>();
  for (const need of needs) {
    if (need.wall !== task.wall || need.zone !== task.zone) continue;
    if (need.layer !== uses.layer || (need.coat !== uses.coat && need.coat !== 0)) continue;
    // What goes by the layer and not by the coat is there from its first one.
    if (need.coat === 0 && uses.coat > 1) continue;
    const line = lines.find(({ item }) => item === need.item);
    const known = lots.get(need.item)?.amount ?? 0;
    lots.set(need.item, { name: line?.name ?? need.item, unit: need.unit, amount: known + need.withLoss });
  }
  return [...lots.values()];
}

export interface DayMix {
  readonly number: number;
  /** Whether the rest of the mix in the plan is laid elsewhere: what is not laid now is not mixed now. */
  readonly isPart: boolean;
  readonly amount: number;
  readonly components: Mix['components'];
  readonly maskingOff: number | null;
  readonly product: string;
  readonly unit: string;
  readonly componentUnit: string;
  readonly potLife: number;
}

/** The mixes of a two-component product that are laid in a task, each as far as it is laid there. */
export function mixesOf(task: DatedTask, job: Job, { mixing, lines }: TakeOff): DayMix[] {
  const { uses } = task;
  const wall = job.walls.find(({ id }) => id === task.wall);
  const zone = wall?.zones.find(({ id }) => id === task.zone);
  if (!uses || !wall || !zone) return [];
  const product = buildUpOf(job, zone, wall.ground).layers[uses.layer]?.product;
  if (!product?.mixing) return [];
  const face = `${nameOfZone(zone)} on ${nameOfWall(wall)}`;
  const isHere = (section: string) =>
    section === face ||
    section.startsWith(`${face}, part `) ||
    section.startsWith(`panel ${wall.id}-${zone.id}-`);
  const line = lines.find(({ item }) => item === itemOfProduct(product.id));
  return mixing
    .filter(
      (plan) =>
        plan.product === product.id && plan.coat === uses.coat && plan.delivery === (wall.delivery ?? ''),
    )
    .flatMap(({ mixes, componentUnit, potLife }) =>
      mixes.flatMap(({ number, parts, area, amount, components, maskingOff }): DayMix[] => {
        const here = parts.filter(({ section }) => isHere(section));
        if (here.length === 0) return [];
        const isPart = here.length < parts.length;
        const share = isPart ? here.reduce((sum, part) => sum + part.area, 0) / area : 1;
        return [
          {
            number,
            isPart,
            amount: amount * share,
            components: components && [components[0] * share, components[1] * share],
            ...{ maskingOff, componentUnit, potLife },
            product: product.name,
            unit: line?.unit ?? '',
          },
        ];
      }),
    );
}
