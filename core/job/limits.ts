/*
 * How large a job may be. Real jobs stay far inside; the limits keep a broken or hostile file from stopping the
 * program, and every refusal names the limit it met.
 */

/** mm. Coordinates stay within ± this, so that the integers of the clipping kernel stay exact. */
export const farthest = 400_000;
/** mm, width and height of one wall. */
export const longestWall = 400_000;
/** mm. One step of the clipping kernel: anything smaller has no size in it. */
export const leastSize = 0.01;
/** mm. Steel is not sold in larger flat sheets (common practice, no source). */
export const largestStockSheet = 20_000;
export const thickestStockSheet = 100;
/** mm. More than this is a typing error, and the grown shapes must stay inside the kernel's range. */
export const largestAllowance = 10_000;
/** Degrees between two walls: a narrower corner has no room in it. */
export const leastCornerAngle = 1;
export const largestJointGap = 1_000;
export const highestPrice = 1e9;

export const mostPanels = 200_000;
export const mostWalls = 1_000;
export const mostObjectsOfAKind = 2_000;
/** Choices by hand in one zone: each is looked at for every start that is compared. */
export const mostHandChoices = 200;
export const mostFittingKinds = 500;
export const longestKindName = 40;
export const mostStock = 1_000;
export const mostProducts = 2_000;
export const mostPacks = 20;
export const mostBuildUps = 500;
export const mostLayers = 40;
export const mostOfferEntries = 500;
export const mostHolidays = 1_000;
export const mostRackPieces = 5_000;
export const mostRevisions = 1_000;
export const mostAlternatives = 100;
export const mostVertices = 2_000;
/** Straight edges of all shapes of a job, arcs drawn as polygons. */
export const mostEdges = 300_000;
export const mostEdgesOfShape = 50_000;

/** Bytes of one photo, and of all photos of a job together: its file, a third longer than they, stays within its length. */
export const largestPhoto = 8_000_000;
export const mostPhotoBytes = 40_000_000;
/** px */
export const longestPhotoSide = 20_000;
export const mostPhotos = 500;

/** mm: wider or higher is no magnet that something hangs by. */
export const largestMagnet = 1_000;
export const mostMagnets = 1_000;
/** N. */
export const largestForce = 100_000;
/** kg. */
export const heaviestItem = 1_000;
export const mostReadings = 100;
export const mostPullTests = 50;
export const mostMagnetsOfItem = 200;
export const mostHung = 5_000;
export const mostHungKinds = 500;

export const mostMarkings = 100;
/** Of a marking, in one direction: more cannot be told apart on a wall or on its sheet. */
export const mostLines = 500;
export const mostColumns = 60;
export const mostRows = 100;
export const mostSquares = 60;
export const longestHeading = 60;
/** mm. */
export const widestMarkingLine = 100;
/** Bytes of a picture of lines (SVG). */
export const largestSvg = 2_000_000;

export const longestId = 40;
export const longestText = 2_000;
/** Characters of terms that a firm gives in its own words. */
export const longestTerms = 20_000;
/** Characters of a job file. */
export const longestFile = 64_000_000;
/** Lists and objects in one another, anywhere in a file. */
export const deepestNesting = 100;
/** Values in a file outside its frozen revisions. */
export const mostValues = 2_000_000;
/** Faults listed before the rest are only counted. */
export const mostFaultsListed = 50;
