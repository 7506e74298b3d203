import {
  dryingKinds,
  layerKinds,
  notchShapes,
  productUnits,
  toolKinds,
  type Product,
} from '../job/product-schema';
import { figure, figureOf, list, oneOf, words, type Column } from '../record-columns';

export const columns: readonly Column<Product>[] = [
  words('id', ['id'], 'an id of up to 40 letters, digits, - and _'),
  words('name', ['name'], 'a name'),
  oneOf('layer', ['layer'], layerKinds),
  oneOf('unit', ['unit'], productUnits),
  {
    name: 'packs (size @ price)',
    at: ['packs'],
    wants: 'packs such as “2.5 @ 48.90 | 5 @ 89”, sizes above 0 and prices from 0',
    write: ({ packs }) => packs.map(({ size, price }) => `${size} @ ${price}`).join(' | '),
    read: (cell, isDecimalComma) => {
      const packs = cell.split('|').map((pack) => {
        const [size, price = '0', ...more] = pack.split('@').map((part) => figureOf(part, isDecimalComma));
        return size === undefined || price === undefined || more.length > 0
          ? undefined
          : { size, price: Number(price) };
      });
      return packs.includes(undefined) ? undefined : packs;
    },
  },
  figure('spreading rate (m² per unit)', ['spreadingRate']),
  figure('solids by volume (%)', ['volumeSolids'], 'a figure above 0 and up to 100'),
  figure('dry film (µm)', ['dryFilm']),
  figure('thickness (mm)', ['thickness']),
  figure('density (kg/l)', ['density']),
  figure('weight (kg/m²)', ['weight']),
  figure('lap shear (N/mm²)', ['shearStrength']),
  figure('peel (N/mm)', ['peelStrength']),
  figure('roll width (mm)', ['rollWidth']),
  figure('coats', ['coats'], 'a whole figure from 1 to 20'),
  oneOf('drying', ['drying'], dryingKinds),
  {
    name: 'mixing (parts)',
    at: ['mixing', 'parts'],
    wants: 'two parts such as 4:1, with a pot life beside them',
    write: ({ mixing }) => mixing?.parts.join(':') ?? '',
    read: (cell, isDecimalComma) => {
      const parts = cell.split(':').map((part) => figureOf(part, isDecimalComma));
      return parts.length === 2 && !parts.includes(undefined) ? parts : undefined;
    },
  },
  oneOf('mixing by', ['mixing', 'by'], ['volume', 'weight']),
  figure('pot life (min)', ['mixing', 'potLife']),
  figure('pot life at (°C)', ['mixing', 'potLifeAt'], 'a temperature from −60 to 150'),
  figure('open time (min)', ['mixing', 'openTime']),
  figure('touch dry (h)', ['touchDry'], 'a figure from 0'),
  figure('next coat from (h)', ['recoatLeast'], 'a figure from 0'),
  figure('next coat up to (h)', ['recoatMost'], 'a figure from 0'),
  figure('cure (h)', ['cure'], 'a figure from 0'),
  figure('least temperature (°C)', ['temperatureLeast'], 'a temperature from −60 to 150'),
  figure('greatest humidity (%)', ['humidityMost'], 'a figure from 0 to 100'),
  list('grounds', ['grounds'], (product) => product.grounds),
  oneOf('tool', ['tool', 'kind'], toolKinds),
  figure('nap (mm)', ['tool', 'nap']),
  oneOf('notch', ['tool', 'notch', 'shape'], notchShapes),
  figure('notch a (mm)', ['tool', 'notch', 'bridge'], 'a figure from 0'),
  figure('notch b (mm)', ['tool', 'notch', 'width']),
  figure('notch c (mm)', ['tool', 'notch', 'depth']),
  figure('trowel tilt (°)', ['tool', 'notch', 'tilt'], 'a figure above 0 and up to 90'),
  figure('loss (share)', ['loss'], 'a share from 0 to less than 1, such as 0.05'),
  figure('pace (m² per h)', ['pace']),
  list('cautions', ['cautions'], (product) => product.cautions),
  words('note', ['note'], 'a text of up to 2000 characters'),
  words('batch', ['batch'], 'a text of up to 2000 characters'),
  {
    name: 'typical',
    at: ['typical'],
    wants: 'yes or no',
    write: ({ typical }) => (typical === undefined ? '' : typical ? 'yes' : 'no'),
    read: (cell) => ({ yes: true, no: false })[cell.toLowerCase()],
  },
];
