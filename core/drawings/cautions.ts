/*
 * Cautions as they stand on documents, each in the fewest words that still say what to do. Which of them
 * apply is for each document to say.
 */

export const checkOnSite = 'Check on site before cutting.';
export const doNotScale = 'Do not scale off this drawing.';

export const cautions = {
  electrics:
    'Switch off and isolate before working round sockets, switches and lights. Steel near electrical boxes, ' +
    'bonding and earthing: a licensed electrician and the local wiring rules decide.',
  concealed: 'Find concealed cables and pipes before drilling or sanding.',
  edges: 'Cut steel has sharp edges: wear gloves, deburr every edge.',
  lifting:
    'Some panels are too heavy for one person: two people or a lifting aid; the local rules for lifting decide.',
  dust: 'Sanding makes dust: mask and extraction. Paint in old buildings may hold lead.',
  twoComponent:
    'Two-component products: ventilate, wear gloves and eye protection, follow the maker’s safety data sheet; never lay a mix that has begun to set.',
  detectors:
    'Detectors are blind behind steel: the plan of cables and panels as built stays with the owner of the wall.',
  magnets:
    'Strong magnets: keep away from pacemakers and other implants, cards and screens; mind fingers; never ' +
    'where children could swallow them.',
  overhead: 'Hang nothing heavy above beds, seats or walkways without a mechanical fixing.',
} as const;
