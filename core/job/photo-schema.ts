import * as v from 'valibot';
import { mostPoints } from '../geometry/homography-faults';
import * as limits from './limits';
import { namedFields } from './named-fields';
import { length, text, identifier, pair } from './schema-values';

/* Photos of the job, the one under a wall's drawing, and those pinned to places. */

export const photoId = v.pipe(
  v.string(),
  v.regex(/^[0-9a-f]{64}$/),
  v.description('SHA-256 of its bytes, in hex.'),
);
const photoSide = v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(limits.longestPhotoSide));

export const photoTypes = ['image/jpeg', 'image/png', 'image/webp'] as const;
/** A picture on a zone may also be of lines. */
export const pictureTypes = [...photoTypes, 'image/svg+xml'] as const;

export const photo = v.pipe(
  namedFields({
    id: photoId,
    type: v.picklist(pictureTypes),
    width: photoSide,
    height: photoSide,
    bytes: v.optional(v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(limits.largestPhoto))),
    name: v.optional(v.pipe(text, v.description('Of the file it was loaded from.'))),
    taken: v.optional(v.pipe(text, v.description('Day it was taken, ISO 8601.'))),
    data: v.optional(v.pipe(v.string(), v.description('Its bytes in base64; only in a saved file.'))),
  }),
  v.description('A photo that walls or pins of the job show, or a picture that a marking is.'),
);

export const photoPoint = v.pipe(
  namedFields({ px: v.strictTuple([length, length]), at: pair }),
  v.description('A point of the photo (px from its upper left corner, y down) and its place on the wall.'),
);

export const wallPhoto = v.pipe(
  namedFields({
    photo: photoId,
    points: v.optional(v.pipe(v.array(photoPoint), v.maxLength(mostPoints)), []),
    fade: v.optional(
      v.pipe(length, v.minValue(0), v.maxValue(1), v.description('0: as taken; 1: faded away.')),
      0.3,
    ),
    shown: v.optional(v.boolean(), true),
  }),
  v.description('The photo under the drawing, rectified by its points.'),
);

export const pin = v.pipe(
  namedFields({
    id: identifier,
    photo: photoId,
    at: pair,
    date: v.optional(text, ''),
    note: v.optional(text, ''),
  }),
  v.description('A dated photo of a place on the wall.'),
);
