/*
 * A slice of the comparison of best starts with every start of a raster, the whole of which takes the better part of an
 * hour:
 *
 *     node test/bench/run-built.mjs raster-bench rectilinear|sloping FROM TO
 */
import { compareWithRaster, kinds } from './starts-bench';

const [kind, from, to] = process.argv.slice(2);
if (kind !== 'rectilinear' && kind !== 'sloping') {
  console.error('Say which walls, "rectilinear" or "sloping", and from which number up to which.');
  process.exit(1);
}
compareWithRaster(kind, Number(from ?? 0), Number(to ?? kinds[kind].count));
