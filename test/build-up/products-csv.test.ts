import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { readProducts, writeProducts } from '../../core/build-up/products-csv';
import { readyProducts } from '../../core/build-up/ready-products';

const head = 'id,name,layer,unit,packs (size @ price),coats,thickness (mm)';
const good = 'F1,Grey filler,filler,kg,5 @ 12.50 | 20 @ 41,2,0.5';

describe('a list of products', () => {
  it('comes back as it was written', () => {
    expect(readProducts(writeProducts(readyProducts))).toEqual({ products: readyProducts, faults: [] });
  });

  // RFC 4180, read by papaparse with its strictest settings.
  it('is a table with a row for each product and a cell for each heading', () => {
    const { data, errors } = Papa.parse<string[]>(writeProducts(readyProducts).trimEnd(), {
      delimiter: ',',
      newline: '\r\n',
    });
    expect(errors).toEqual([]);
    expect(data).toHaveLength(readyProducts.length + 1);
    expect(new Set(data.map((row) => row.length)).size).toBe(1);
  });

  it('reads columns in any order and leaves alone what it does not know', () => {
    const { products, faults } = readProducts('Shelf,UNIT,layer, Name ,id\n7,l,chalk,Slate coat,C1\n\n');
    expect(faults).toEqual([]);
    expect(products).toEqual([
      { id: 'C1', name: 'Slate coat', layer: 'chalk', unit: 'l', packs: [], coats: 1, drying: 'none' },
    ]);
  });

  it('reads what a spreadsheet of another language saved: a mark at the front, semicolons, decimal commas', () => {
    const text = `\uFEFF${head.replaceAll(',', ';')}\r\nF1;"Filler, grey";filler;kg;5 @ 12,50;2;0,5\r\n`;
    expect(readProducts(text)).toMatchObject({
      faults: [],
      products: [{ name: 'Filler, grey', packs: [{ size: 5, price: 12.5 }], thickness: 0.5 }],
    });
  });

  it.each([
    ['F2,Filler,putty,kg,,,', 'layer', '“putty” is not one of degreasing, keying,'],
    ['F2,Filler,filler,kg,5 for 12,,', 'packs (size @ price)', '“5 for 12” is not packs such as'],
    ['F2,Filler,filler,kg,,two,', 'coats', '“two” is not a whole figure from 1 to 20.'],
    ['F2,Filler,filler,kg,,1.5,', 'coats', '“1.5” is not a whole figure from 1 to 20.'],
    ['F2,Filler,filler,kg,,,0', 'thickness (mm)', '“0” is not a figure above 0.'],
    ['F2,Filler,filler,kg,,,"0,5"', 'thickness (mm)', '“0,5” is not a figure above 0.'],
    ['F2,,filler,kg,,,', 'name', 'It is empty; give a name.'],
    [',Filler,filler,kg,,,', 'id', 'It is empty; give an id of up to 40 letters'],
    ['F1,Other,filler,kg,,,', 'id', 'Row 2 has the id “F1” already; give one of them another.'],
    ['F2,Filler,filler,kg,,,,,', '', 'The row has 9 cells and the headings are 7'],
  ])('keeps the good rows and says of %s what is wrong in “%s”', (row, column, says) => {
    const { products, faults } = readProducts(`${head}\n${good}\n${row}\nF9,Last,filler,kg,,,\n`);
    expect(products.map(({ id }) => id)).toEqual(['F1', 'F9']);
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatchObject({ row: 3, column });
    expect(faults[0]!.text).toContain(says);
  });

  it('says every fault of a row', () => {
    const { faults } = readProducts(`${head}\nF2,Filler,putty,tin,,two,thick\n`);
    expect(faults.map(({ row, column }) => [row, column])).toEqual([
      [2, 'layer'],
      [2, 'unit'],
      [2, 'coats'],
      [2, 'thickness (mm)'],
    ]);
  });

  it('asks for a pot life where two parts are mixed', () => {
    const { faults } = readProducts('id,name,layer,unit,mixing (parts)\nW1,Gloss,writable,l,4:1\n');
    expect(faults).toMatchObject([{ row: 2, column: 'pot life (min)' }]);
    expect(faults[0]!.text).toContain('It is empty; give a figure above 0.');
  });

  it('asks for headings where there are none, or where one is there twice', () => {
    expect(readProducts(good).faults).toEqual([
      {
        row: 1,
        column: '',
        text: 'The first row lacks the headings id, name, layer, unit; put the headings of an exported list into it.',
      },
    ]);
    expect(readProducts(`${head},coats\n`).faults).toMatchObject([{ row: 1, column: 'coats' }]);
    expect(readProducts('').products).toEqual([]);
  });

  it('does not let a spreadsheet run what a name says', () => {
    const risky = { ...readyProducts[0]!, name: '=HYPERLINK("x")', note: '-1+1' };
    const text = writeProducts([risky]);
    expect(text).toContain(`"'=HYPERLINK(""x"")"`);
    expect(text).toContain("'-1+1");
    expect(readProducts(text).products).toEqual([risky]);
  });
});
