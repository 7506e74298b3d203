import { describe, expect, it } from 'vitest';
import {
  drawingSpace,
  largestScale,
  pageSize,
  ratioOf,
  scaleDesignation,
  scales,
} from '../../core/drawings/paper';

describe('ISO 216: sizes of paper', () => {
  it('are those of the table for A4 and A3', () => {
    expect(pageSize({ format: 'A4', landscape: false })).toEqual({ width: 210, height: 297 });
    expect(pageSize({ format: 'A3', landscape: true })).toEqual({ width: 420, height: 297 });
  });
});

describe('ISO 5457:1999: the drawing space', () => {
  it('is 180 × 277 on A4 and 390 × 277 on A3', () => {
    const size = (page: Parameters<typeof drawingSpace>[0]) => {
      const { left, bottom, right, top } = drawingSpace(page);
      return [right - left, top - bottom];
    };
    expect(size({ format: 'A4', landscape: false })).toEqual([180, 277]);
    expect(size({ format: 'A3', landscape: true })).toEqual([390, 277]);
  });
});

describe('ISO 5455:1979, 5.1: scales', () => {
  it('are full size and the reductions of the table, and no other', () => {
    expect(scales.map(ratioOf)).toEqual(
      '1:1 1:2 1:5 1:10 1:20 1:50 1:100 1:200 1:500 1:1000 1:2000 1:5000 1:10000'.split(' '),
    );
  });

  it('are named by the word and the ratio (clause 3)', () => {
    expect(scaleDesignation({ paper: 1, real: 20 })).toBe('SCALE 1:20');
  });

  it.each([
    [5400, 2700, 340, 180, '1:20'],
    [6800, 3600, 340, 180, '1:20'],
    [6801, 3600, 340, 180, '1:50'],
    [340, 180, 340, 180, '1:1'],
    [400_000, 3000, 340, 180, '1:2000'],
  ])('%i × %i mm in %i × %i mm is drawn at %s', (width, height, roomWidth, roomHeight, ratio) => {
    expect(ratioOf(largestScale(width, height, roomWidth, roomHeight)!)).toBe(ratio);
  });

  it('ends where even the smallest is too large', () => {
    expect(largestScale(1e9, 1, 340, 180)).toBeUndefined();
  });
});
