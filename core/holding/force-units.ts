/* Forces are newtons everywhere in this folder; makers and clients speak of kilograms and pounds. */

/** Standard acceleration of free fall, m/s²; exact (3rd CGPM 1901, ISO 80000-3). */
export const standardGravity = 9.80665;
/** International avoirdupois pound, kg; exact (yard and pound agreement, 1959). */
export const pound = 0.45359237;

/** Weight of a mass, N. Also a force stated in kilograms, as makers state a pull. */
export function newtonsOfKilograms(mass: number): number {
  return mass * standardGravity;
}

export function kilogramsOfNewtons(force: number): number {
  return force / standardGravity;
}

/** A force in pounds (lbf), N. */
export function newtonsOfPounds(force: number): number {
  return force * pound * standardGravity;
}

export function poundsOfNewtons(force: number): number {
  return force / (pound * standardGravity);
}
