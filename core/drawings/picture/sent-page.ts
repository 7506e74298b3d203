import { sha256 } from '@noble/hashes/sha2.js';
import { chosenTitle } from '../../job/alternatives';
import { dayInWords } from '../../job/day-in-words';
import { toBase64 } from '../../job/photo-bytes';
import type { Job } from '../../job/schema';
import type { ComparedRow } from '../../offer/alternatives';
import { termsOf } from '../../offer/usual-prices';
import { reservationsOf } from '../../survey/ground-blanks';
import type { WorkedOut } from '../../worked-out';
import { budgetOnly } from '../budget-words';
import { clientNotes } from '../client-foot';
import { zoneNotices } from '../client-view-zones';
import type { TextMeasure } from '../page';
import type { Pictures } from '../pictures';
import { escapeXml } from '../svg';
import { stepsInWords } from './cutaway';
import { finishOfZone } from './finish';
import { freeScene, type FreeScene } from './scene';
import { sceneSvg } from './scene-svg';

/** One way to do the job, as the client is shown it. */
export interface SentAlternative {
  readonly title: string;
  readonly worked: WorkedOut;
}

export interface SentPage {
  readonly job: Job;
  /** At least one; the first is the one that is offered. */
  readonly alternatives: readonly SentAlternative[];
  /** Figures of all alternatives side by side; prices only if whoever sends it lets them be seen. [] for no table. */
  readonly rows: readonly ComparedRow[];
  readonly pictures: Pictures;
}

/** What the page is dressed with: all of it goes into the page, since it fetches nothing. */
export interface PageDress {
  readonly style: string;
  readonly script: string;
  /** WOFF2. */
  readonly fonts: readonly { readonly weight: 400 | 600; readonly bytes: Uint8Array }[];
}

/**
 * One HTML file to send to the client: opens without a network, asks no host for anything, and is a still picture where
 * scripts are blocked. Its content security policy lets only its own script and style work, by their hashes (CSP Level 3).
 * Every text of the job is escaped.
 */
export function sentPage(
  { job, alternatives, rows, pictures }: SentPage,
  { style, script, fonts }: PageDress,
  measure: TextMeasure,
): string {
  const dressed = [...fonts.map(fontFace), style].join('\n');
  const policy = [
    "default-src 'none'",
    `script-src '${hashOf(script)}'`,
    `style-src '${hashOf(dressed)}'`,
    'img-src data:',
    'font-src data:',
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
  const known = new Map<string, string>();
  const sections = alternatives.map((alternative, i) =>
    section(alternative, i, alternatives.length > 1, known, pictures, measure),
  );
  return [
    '<!doctype html>',
    '<html lang="en">',
    '<head>',
    '<meta charset="utf-8">',
    `<meta http-equiv="Content-Security-Policy" content="${policy}">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    '<meta name="referrer" content="no-referrer">',
    `<title>${escapeXml(job.name)}</title>`,
    `<style>${dressed}</style>`,
    '</head>',
    '<body>',
    header(job, alternatives.length === 1),
    '<main>',
    ...(rows.length > 0 ? [comparison(alternatives, rows)] : []),
    ...sections,
    '</main>',
    `<script>${script}</script>`,
    '</body>',
    '</html>',
    '',
  ].join('\n');
}

function hashOf(text: string): string {
  return `sha256-${toBase64(sha256(new TextEncoder().encode(text)))}`;
}

function fontFace({ weight, bytes }: PageDress['fonts'][number]): string {
  return `@font-face{font-family:"Fira Sans";font-weight:${weight};src:url(data:font/woff2;base64,${toBase64(bytes)}) format("woff2")}`;
}

function header(job: Job, isAlone: boolean): string {
  const { offeredBy } = termsOf(job);
  const facts = [
    job.client && `For ${job.client}`,
    isAlone && chosenTitle(job),
    dayInWords(job.date),
    job.revision ? `revision ${job.revision}` : 'no revision issued',
  ].filter(Boolean);
  return [
    '<header>',
    ...(offeredBy ? [`<p class="soft lines">${escapeXml(offeredBy)}</p>`] : []),
    `<h1>${escapeXml(job.name)}</h1>`,
    `<p class="soft">${escapeXml(facts.join(', '))}</p>`,
    '</header>',
  ].join('\n');
}

function comparison(alternatives: readonly SentAlternative[], rows: readonly ComparedRow[]): string {
  const cell = (text: string, strong: boolean) =>
    `<td>${strong ? `<b>${escapeXml(text)}</b>` : escapeXml(text)}</td>`;
  const many = alternatives.length > 1;
  const heads = alternatives.map(
    ({ title }, i) => `<th scope="col"><a href="#alternative-${i + 1}">${escapeXml(title)}</a></th>`,
  );
  return [
    '<div class="table"><table>',
    ...(many ? [`<thead><tr><td></td>${heads.join('')}</tr></thead>`] : []),
    '<tbody>',
    ...rows.map(
      ({ label, values, differs }) =>
        `<tr><th scope="row">${escapeXml(label)}</th>${values.map((value) => cell(value, many && differs)).join('')}</tr>`,
    ),
    '</tbody></table></div>',
  ].join('\n');
}

function section(
  { title, worked }: SentAlternative,
  index: number,
  isNamed: boolean,
  known: Map<string, string>,
  pictures: Pictures,
  measure: TextMeasure,
): string {
  const walls = worked.walls.filter(({ zones }) => zoneNotices(zones.map(({ area }) => area)).length > 0);
  const figures = walls.map((wall, w) => {
    const scene = freeScene(wall, worked.job, measure, { pictures });
    const place = `${isNamed ? `${title}: ` : ''}${nameOf(scene)}`;
    return figure(scene, worked.job, `a${index + 1}w${w + 1}`, place, known, pictures);
  });
  return [
    `<section id="alternative-${index + 1}">`,
    ...(isNamed ? [`<h2>${escapeXml(title)}</h2>`] : []),
    ...figures,
    '</section>',
  ].join('\n');
}

function figure(
  scene: FreeScene,
  job: Job,
  id: string,
  place: string,
  known: Map<string, string>,
  pictures: Pictures,
): string {
  const { width, height, wall, notices, look } = scene;
  const name = nameOf(scene);
  const addressOf = (photo: string) => {
    const picture = pictures.get(photo);
    return picture ? `data:${picture.type};base64,${toBase64(picture.bytes)}` : null;
  };
  const svg = sceneSvg(scene, { id: 'scene', width, height, label: name, addressOf });
  const same = known.get(svg);
  if (same !== undefined) {
    return `<figure><h3>${escapeXml(name)}</h3><p>As in ${escapeXml(same)}.</p></figure>`;
  }
  known.set(svg, place);
  const steps = stepsInWords(scene);
  return [
    '<figure>',
    `<h3>${escapeXml(name)}</h3>`,
    ...(wall.survey.wall.surveyed === false
      ? [`<p class="lead">${escapeXml(budgetOnly)}: this wall has not been measured on site yet.</p>`]
      : []),
    `<div class="view" tabindex="0" role="group" aria-label="Picture of ${escapeXml(name)}">`,
    // Clips are called by name, and names are the page's: every picture has its own.
    svg.replaceAll('id="scene-', `id="${id}-`).replaceAll('clip-path="url(#scene-', `clip-path="url(#${id}-`),
    '</div>',
    '<div class="tools" hidden>',
    ...(look.behind.length > 0
      ? [
          '<label>Finished <input type="range" min="0" max="1" step="0.005" value="0" aria-label="What is behind the finish"> Behind it</label>',
        ]
      : []),
    '<button type="button" data-does="out" aria-label="Zoom out">−</button>',
    '<button type="button" data-does="in" aria-label="Zoom in">+</button>',
    '<button type="button" data-does="whole">Whole wall</button>',
    '<label><input type="checkbox" checked> Names</label>',
    '</div>',
    '<figcaption>',
    ...(steps.length > 0
      ? [
          '<ul class="steps" hidden><li>Finished</li>',
          ...steps.map(({ title, zones }) => `<li><b>${escapeXml(title)}</b>: ${escapeXml(zones)}</li>`),
          '</ul>',
        ]
      : []),
    '<ol class="legend">',
    ...notices.map((notice) => legendRow(scene, notice)),
    '</ol>',
    ...reservations(scene),
    `<p class="soft notes">${escapeXml(clientNotes(wall, notices, job).join(' '))}</p>`,
    '</figcaption>',
    '</figure>',
  ].join('\n');
}

function legendRow({ wall }: FreeScene, notice: FreeScene['notices'][number]): string {
  const { buildUp } = wall.zones.find(({ area }) => area === notice.zone)!;
  const { colour, chosen } = finishOfZone(notice.zone.zone, buildUp.resolved, wall.survey.wall);
  const said = [notice.use, notice.size, chosen].filter(Boolean).join(', ');
  return [
    '<li>',
    `<svg viewBox="0 0 10 8" aria-hidden="true"><rect x="0.1" y="0.1" width="9.8" height="7.8" fill="${colour}" stroke="#5d6870" stroke-width="0.2"/></svg>`,
    `<span><b>${notice.number} ${escapeXml(notice.title)}</b><br>${escapeXml(said)}</span>`,
    '</li>',
  ].join('');
}

function reservations({ wall }: FreeScene): string[] {
  const list = reservationsOf(wall.survey.wall);
  if (list.length === 0) return [];
  return [
    '<p class="lead">Reservations: what has not been recorded yet</p>',
    `<ul>${list.map((text) => `<li>– ${escapeXml(text)}</li>`).join('')}</ul>`,
  ];
}

function nameOf({ wall }: FreeScene): string {
  const { id, name } = wall.survey.wall;
  return name || `Wall ${id}`;
}
