import type { PanelKind, Pose } from '../kinds';
import { MaximalSpaces } from './maximal-spaces';

/** How the next place is chosen: longest touch, or least left over along the side that leaves less, or lowest. */
export type FillScore = 'contact' | 'short-side' | 'bottom-left';

/** Panels covered by more rectangles than this are placed by their box alone: the trial would take too long. */
const MOST_PARTS = 12;

/**
 * Fills one stock sheet with given panels one by one, each at the place that scores best. Panels that are no
 * rectangles take only the rectangles that cover them, so that others come to lie in their notches and holes.
 */
export class Fill {
  /** Of the last `place`: number of the pose and lower left corner, in the order placed. */
  readonly pose: Int32Array;
  readonly x: Int32Array;
  readonly y: Int32Array;
  /** Trials so far, ever. */
  work = 0;

  private readonly spaces = new MaximalSpaces();
  /** What is taken, four numbers each. */
  private boxes = new Int32Array(4 * 64);
  private boxCount = 0;
  private width = 0;
  private height = 0;
  private score: FillScore = 'contact';
  private bestValue = 0;
  private bestTie = 0;
  private bestPose = -1;
  private bestX = 0;
  private bestY = 0;

  constructor(
    private readonly kinds: readonly PanelKind[],
    private readonly kerf: number,
    panelCount: number,
  ) {
    this.pose = new Int32Array(panelCount);
    this.x = new Int32Array(panelCount);
    this.y = new Int32Array(panelCount);
  }

  /**
   * @param order kinds of the panels in the order they are placed
   * @param width, height of the sheet, kerf on it
   * @returns whether all found a place
   */
  place(order: Int32Array, count: number, width: number, height: number, score: FillScore): boolean {
    this.width = width;
    this.height = height;
    this.score = score;
    this.boxCount = 0;
    this.spaces.clear(width, height);
    for (let i = 0; i < count; i++) {
      const kind = this.kinds[order[i]!]!;
      this.bestPose = -1;
      for (let pose = 0; pose < kind.poses.length; pose++) this.tryPose(kind, pose);
      if (this.bestPose < 0) return false;
      this.pose[i] = this.bestPose;
      this.x[i] = this.bestX;
      this.y[i] = this.bestY;
      this.take(kind.poses[this.bestPose]!, this.bestX, this.bestY);
    }
    return true;
  }

  private take({ cover }: Pose, x: number, y: number): void {
    const { kerf } = this;
    if (4 * (this.boxCount + cover.length) > this.boxes.length) {
      const longer = new Int32Array(2 * this.boxes.length + 4 * cover.length);
      longer.set(this.boxes);
      this.boxes = longer;
    }
    for (const [left, bottom, right, top] of cover) {
      const at = 4 * this.boxCount++;
      this.boxes[at] = x + left;
      this.boxes[at + 1] = y + bottom;
      this.boxes[at + 2] = x + right + kerf;
      this.boxes[at + 3] = y + top + kerf;
      this.spaces.occupy(x + left, y + bottom, x + right + kerf, y + top + kerf, kerf + 1);
    }
  }

  private tryPose(kind: PanelKind, number: number): void {
    const pose = kind.poses[number]!;
    const w = pose.width + this.kerf;
    const h = pose.height + this.kerf;
    this.work += this.spaces.count;
    for (let i = 0; i < this.spaces.count; i++) {
      const { at } = this.spaces;
      const left = at[4 * i]!;
      const bottom = at[4 * i + 1]!;
      const spareX = at[4 * i + 2]! - left - w;
      const spareY = at[4 * i + 3]! - bottom - h;
      if (spareX < 0 || spareY < 0) continue;
      const corners = this.score === 'contact' ? 4 : 1;
      for (let corner = 0; corner < corners; corner++) {
        if ((corner & 1 && spareX === 0) || (corner & 2 && spareY === 0)) continue;
        this.consider(
          pose,
          number,
          corner & 1 ? left + spareX : left,
          corner & 2 ? bottom + spareY : bottom,
          spareX < spareY ? spareX : spareY,
        );
      }
    }
    if (!kind.isRectangle && pose.cover.length > 1 && pose.cover.length <= MOST_PARTS) {
      this.tryInterlocked(pose, number);
    }
  }

  /** As `eachInterlockedPlace`: one covering rectangle in a corner of a free one, the others wherever they come. */
  private tryInterlocked(pose: Pose, number: number): void {
    const { kerf } = this;
    for (const [left, bottom, right, top] of pose.cover) {
      for (let i = 0; i < this.spaces.count; i++) {
        const { at } = this.spaces;
        const spareX = at[4 * i + 2]! - at[4 * i]! - (right - left + kerf);
        const spareY = at[4 * i + 3]! - at[4 * i + 1]! - (top - bottom + kerf);
        if (spareX < 0 || spareY < 0) continue;
        for (let corner = 0; corner < 4; corner++) {
          if ((corner & 1 && spareX === 0) || (corner & 2 && spareY === 0)) continue;
          const x = at[4 * i]! - left + (corner & 1 ? spareX : 0);
          const y = at[4 * i + 1]! - bottom + (corner & 2 ? spareY : 0);
          this.work += 1 + this.spaces.count / 8;
          if (this.liesFree(pose, x, y)) this.consider(pose, number, x, y, 0);
        }
      }
    }
  }

  private liesFree({ cover }: Pose, x: number, y: number): boolean {
    const { kerf } = this;
    for (const [left, bottom, right, top] of cover) {
      if (!this.spaces.isFree(x + left, y + bottom, x + right + kerf, y + top + kerf)) return false;
    }
    return true;
  }

  private consider(pose: Pose, number: number, x: number, y: number, spare: number): void {
    const { score } = this;
    let value: number;
    let tie = -spare;
    if (score === 'contact') value = this.contactOf(pose, x, y);
    else if (score === 'short-side') value = -spare;
    else {
      value = -(y + pose.height);
      tie = -x;
    }
    if (this.bestPose >= 0 && (value < this.bestValue || (value === this.bestValue && tie <= this.bestTie))) {
      return;
    }
    this.bestValue = value;
    this.bestTie = tie;
    this.bestPose = number;
    this.bestX = x;
    this.bestY = y;
  }

  private contactOf({ cover }: Pose, x: number, y: number): number {
    const { kerf } = this;
    let contact = 0;
    this.work += this.boxCount / 8;
    for (const [left, bottom, right, top] of cover) {
      contact += this.contactOfBox(x + left, y + bottom, x + right + kerf, y + top + kerf);
    }
    return contact;
  }

  /** Lengths of sides that touch the sheet's edge or a neighbour. */
  private contactOfBox(left: number, bottom: number, right: number, top: number): number {
    const { boxes } = this;
    let contact = 0;
    if (left === 0) contact += top - bottom;
    if (bottom === 0) contact += right - left;
    if (right === this.width) contact += top - bottom;
    if (top === this.height) contact += right - left;
    for (let i = 0; i < 4 * this.boxCount; i += 4) {
      const l = boxes[i]!;
      const b = boxes[i + 1]!;
      const r = boxes[i + 2]!;
      const t = boxes[i + 3]!;
      if (l === right || r === left) {
        const shared = (t < top ? t : top) - (b > bottom ? b : bottom);
        if (shared > 0) contact += shared;
      }
      if (b === top || t === bottom) {
        const shared = (r < right ? r : right) - (l > left ? l : left);
        if (shared > 0) contact += shared;
      }
    }
    return contact;
  }
}
