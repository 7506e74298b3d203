import { changeWall } from './changes';
import { defaultFitting } from './defaults';
import { ownKindsOf } from './fitting-kinds';
import { isSameName } from './kind-names';
import type { Fitting, Job, OwnKind } from './schema';
import { isLocked } from './several';
import { boxOfObject } from './shape';

/**
 * A fitting as one of another kind. Size, form and clearance follow only as far as they are still the usual ones of its
 * kind before; what someone has measured stays, and so does the middle of the fitting.
 */
export function giveKind(fitting: Fitting, kind: string, own: readonly OwnKind[]): Fitting {
  const before = defaultFitting(fitting.kind, own);
  const { width, height } = boxOfObject(fitting);
  const isUsual =
    !fitting.shape &&
    Boolean(fitting.circle) === before.round &&
    width === before.width &&
    height === before.height;
  const { clearance } = defaultFitting(kind, own);
  const named = { ...fitting, kind, ...(fitting.clearance === before.clearance && { clearance }) };
  return isUsual && !isLocked(fitting) ? inFormOf(named, own) : named;
}

/** Every fitting of a kind in its form, size and clearance, about its own middle; locked and free-form ones stay. */
export function giveFigures(job: Job, name: string): Job {
  const own = ownKindsOf(job);
  return job.walls.reduce(
    (next, { id }) =>
      changeWall(next, id, (wall) => {
        const fittings = wall.fittings.map((fitting) => {
          if (!isSameName(fitting.kind, name) || isLocked(fitting) || fitting.shape) return fitting;
          const given = { ...inFormOf(fitting, own), clearance: defaultFitting(name, own).clearance };
          return isAlike(fitting, given) ? fitting : given;
        });
        return fittings.every((fitting, i) => fitting === wall.fittings[i]) ? wall : { ...wall, fittings };
      }),
    job,
  );
}

function inFormOf(fitting: Fitting, own: readonly OwnKind[]): Fitting {
  const { width, height, round } = defaultFitting(fitting.kind, own);
  const box = boxOfObject(fitting);
  const [middleX, middleY] = [box.x + box.width / 2, box.y + box.height / 2];
  const { x: _x, y: _y, width: _width, height: _height, circle, ...rest } = fitting;
  if (round) return { ...rest, circle: { ...circle, x: middleX, y: middleY, diameter: width } } as Fitting;
  return { ...rest, x: middleX - width / 2, y: middleY - height / 2, width, height } as Fitting;
}

function isAlike(a: Fitting, b: Fitting): boolean {
  const fields = ['x', 'y', 'width', 'height', 'clearance'] as const;
  return (
    fields.every((field) => a[field] === b[field]) && JSON.stringify(a.circle) === JSON.stringify(b.circle)
  );
}
