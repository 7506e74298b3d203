import * as v from 'valibot';
import * as limits from './limits';

/* Values that stand in many places of the job file. */

export const length = v.pipe(v.number(), v.finite());
export const coordinate = v.pipe(length, v.minValue(-limits.farthest), v.maxValue(limits.farthest));
export const size = v.pipe(length, v.minValue(limits.leastSize), v.maxValue(limits.farthest));
export const stockSize = v.pipe(length, v.minValue(limits.leastSize), v.maxValue(limits.largestStockSheet));
export const allowance = v.pipe(length, v.minValue(0), v.maxValue(limits.largestAllowance));
export const text = v.pipe(v.string(), v.maxLength(limits.longestText));
export const identifier = v.pipe(v.string(), v.minLength(1), v.maxLength(limits.longestId));
export const pair = v.strictTuple([coordinate, coordinate]);
