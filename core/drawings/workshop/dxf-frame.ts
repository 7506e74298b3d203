import { real, type Group } from './dxf';

/*
 * What every file of the release must hold around its entities: header, the nine tables, the blocks of both spaces and the
 * root dictionary, each with its handle (AutoCAD 2000 DXF Reference).
 */

export interface LayerLook {
  readonly name: string;
  readonly colour: number;
  readonly handle: string;
}

interface Extent {
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly top: number;
}

export function headerAndTables(layers: readonly LayerLook[], extent: Extent, nextHandle: string): Group[] {
  return [...header(extent, nextHandle), ...emptySection('CLASSES'), ...tables(layers, extent)];
}

function header({ left, bottom, right, top }: Extent, nextHandle: string): Group[] {
  const variable = (name: string, ...values: Group[]): Group[] => [[9, name], ...values];
  return [
    [0, 'SECTION'],
    [2, 'HEADER'],
    ...variable('$ACADVER', [1, 'AC1015']),
    ...variable('$DWGCODEPAGE', [3, 'ANSI_1252']),
    ...variable('$EXTMIN', [10, real(left)], [20, real(bottom)], [30, '0.0']),
    ...variable('$EXTMAX', [10, real(right)], [20, real(top)], [30, '0.0']),
    // 2: decimal; 4: millimetres; 1: metric.
    ...variable('$LUNITS', [70, 2]),
    ...variable('$LUPREC', [70, 2]),
    ...variable('$INSUNITS', [70, 4]),
    ...variable('$MEASUREMENT', [70, 1]),
    ...variable('$HANDSEED', [5, nextHandle]),
    [0, 'ENDSEC'],
  ];
}

function tables(layers: readonly LayerLook[], extent: Extent): Group[] {
  const ofLayer = ({ name, colour, handle }: LayerLook): Group[] => [
    ...record('LAYER', handle, '2', 'AcDbLayerTableRecord', name),
    [62, colour],
    [6, 'CONTINUOUS'],
  ];
  const ofLine = (handle: string, name: string, words: string): Group[] => [
    ...record('LTYPE', handle, '5', 'AcDbLinetypeTableRecord', name),
    [3, words],
    [72, 65],
    [73, 0],
    [40, '0.0'],
  ];
  const ofBlock = (handle: string, name: string): Group[] => [
    [0, 'BLOCK_RECORD'],
    [5, handle],
    [330, '1'],
    [100, 'AcDbSymbolTableRecord'],
    [100, 'AcDbBlockTableRecord'],
    [2, name],
  ];
  const all = [{ name: '0', colour: 7, handle: '10' }, ...layers];
  return [
    [0, 'SECTION'],
    [2, 'TABLES'],
    ...table('VPORT', '8', 1, viewport(extent)),
    ...table('LTYPE', '5', 3, [
      ...ofLine('14', 'ByBlock', ''),
      ...ofLine('15', 'ByLayer', ''),
      ...ofLine('16', 'CONTINUOUS', 'Solid line'),
    ]),
    ...table('LAYER', '2', all.length, all.flatMap(ofLayer)),
    ...table('STYLE', '3', 1, [
      ...record('STYLE', '11', '3', 'AcDbTextStyleTableRecord', 'STANDARD'),
      [40, '0.0'],
      [41, '1.0'],
      [50, '0.0'],
      [71, 0],
      [42, '2.5'],
      [3, 'txt'],
      [4, ''],
    ]),
    ...table('VIEW', '6', 0, []),
    ...table('UCS', '7', 0, []),
    ...table('APPID', '9', 1, record('APPID', '12', '9', 'AcDbRegAppTableRecord', 'ACAD')),
    ...dimensionStyles(),
    ...table('BLOCK_RECORD', '1', 2, [...ofBlock('1F', '*Model_Space'), ...ofBlock('1B', '*Paper_Space')]),
    [0, 'ENDSEC'],
  ];
}

/** The first view shows all of the drawing. */
function viewport({ left, bottom, right, top }: Extent): Group[] {
  return [
    ...record('VPORT', '2E', '8', 'AcDbViewportTableRecord', '*ACTIVE'),
    [10, '0.0'],
    [20, '0.0'],
    [11, '1.0'],
    [21, '1.0'],
    [12, real((left + right) / 2)],
    [22, real((bottom + top) / 2)],
    [40, real(Math.max(top - bottom, (right - left) / 1.5) * 1.1)],
    [41, '1.5'],
  ];
}

function dimensionStyles(): Group[] {
  return [
    [0, 'TABLE'],
    [2, 'DIMSTYLE'],
    [5, 'A'],
    [330, '0'],
    [100, 'AcDbSymbolTable'],
    [70, 1],
    [100, 'AcDbDimStyleTable'],
    [0, 'DIMSTYLE'],
    // Of this record alone, the handle has the code 105.
    [105, '27'],
    [330, 'A'],
    [100, 'AcDbSymbolTableRecord'],
    [100, 'AcDbDimStyleTableRecord'],
    [2, 'STANDARD'],
    [70, 0],
    [0, 'ENDTAB'],
  ];
}

function table(name: string, handle: string, count: number, records: readonly Group[]): Group[] {
  return [
    [0, 'TABLE'],
    [2, name],
    [5, handle],
    [330, '0'],
    [100, 'AcDbSymbolTable'],
    [70, count],
    ...records,
    [0, 'ENDTAB'],
  ];
}

function record(type: string, handle: string, owner: string, kind: string, name: string): Group[] {
  return [
    [0, type],
    [5, handle],
    [330, owner],
    [100, 'AcDbSymbolTableRecord'],
    [100, kind],
    [2, name],
    [70, 0],
  ];
}

/** What stands before and after the entities. */
export function blocksAndObjects(): { before: Group[]; after: Group[] } {
  const block = (owner: string, begin: string, end: string, name: string): Group[] => [
    [0, 'BLOCK'],
    [5, begin],
    [330, owner],
    [100, 'AcDbEntity'],
    [8, '0'],
    [100, 'AcDbBlockBegin'],
    [2, name],
    [70, 0],
    [10, '0.0'],
    [20, '0.0'],
    [30, '0.0'],
    [3, name],
    [1, ''],
    [0, 'ENDBLK'],
    [5, end],
    [330, owner],
    [100, 'AcDbEntity'],
    [8, '0'],
    [100, 'AcDbBlockEnd'],
  ];
  const dictionary = (handle: string, owner: string, ...entries: Group[]): Group[] => [
    [0, 'DICTIONARY'],
    [5, handle],
    [330, owner],
    [100, 'AcDbDictionary'],
    [281, 1],
    ...entries,
  ];
  return {
    before: [
      [0, 'SECTION'],
      [2, 'BLOCKS'],
      ...block('1F', '20', '21', '*Model_Space'),
      ...block('1B', '1C', '1D', '*Paper_Space'),
      [0, 'ENDSEC'],
    ],
    after: [
      [0, 'SECTION'],
      [2, 'OBJECTS'],
      ...dictionary('C', '0', [3, 'ACAD_GROUP'], [350, 'D']),
      ...dictionary('D', 'C'),
      [0, 'ENDSEC'],
    ],
  };
}

function emptySection(name: string): Group[] {
  return [
    [0, 'SECTION'],
    [2, name],
    [0, 'ENDSEC'],
  ];
}
