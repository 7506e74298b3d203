import type { Finding } from '../finding';
import { buildUpKind, buildUpKinds } from './build-up-kinds';
import { nameOfWall, nameOfZone, sentence } from './names';
import type { Job, Layout, StockSheet, Wall, Zone } from './schema';
import { steelOf } from './steel-kind';

/** Zones whose build-up and layout disagree, and layouts that ask for what their stock sheets cannot give. */
export function layoutWarnings(job: Job, wall: Wall): Finding[] {
  return wall.zones.flatMap((zone) => {
    const where = `${nameOfZone(zone)} on ${nameOfWall(wall)}`;
    const say = (level: 'warning' | 'note', code: string, text: string): Finding => {
      return { level, code, wall: wall.id, object: zone.id, text: sentence(text) };
    };
    return [
      ...buildUpAgainstLayout(zone, where, say),
      ...(zone.layout ? stockAgainstLayout(job, zone.layout, where, say) : []),
    ];
  });
}

type Say = (level: 'warning' | 'note', code: string, text: string) => Finding;

function buildUpAgainstLayout(zone: Zone, where: string, say: Say): Finding[] {
  const steel = buildUpKind(zone.buildUp).magnetic === 'steel';
  if (steel && !zone.layout) {
    return [
      say(
        'warning',
        'steel-without-layout',
        `${where} has steel panels but no layout, so none are laid; give it a stock sheet.`,
      ),
    ];
  }
  if (!buildUpKinds.some((kind) => kind.id === zone.buildUp)) {
    return [
      say(
        'note',
        'unknown-build-up',
        `${where} has the build-up "${zone.buildUp.slice(0, 40)}", which is not known here and is shown as plain; choose one from the list.`,
      ),
    ];
  }
  if (!steel && zone.layout) {
    return [
      say(
        'warning',
        'layout-without-steel',
        `${where} has a layout of steel panels, but its build-up has no steel; choose a build-up with steel panels or take the layout out.`,
      ),
    ];
  }
  return [];
}

function stockAgainstLayout(job: Job, layout: Layout, where: string, say: Say): Finding[] {
  const sheet = job.stock.find(({ id }) => id === layout.stock);
  if (!sheet) return [];
  const findings: Finding[] = [];
  const narrow = Math.min(sheet.width, sheet.height);
  if (layout.leastWidth > narrow) {
    findings.push(
      say(
        'warning',
        'least-width-too-large',
        `${where} wants panels at least ${layout.leastWidth} mm wide, but stock sheet ${sheet.id} is ${narrow} mm, so every panel is a sliver; make the least width smaller.`,
      ),
    );
  }
  for (const id of [...(layout.stocks ?? []), ...(layout.cutFrom ?? [])]) {
    const other = job.stock.find((candidate) => candidate.id === id);
    const difference = other && unlike(sheet, other);
    if (difference) {
      findings.push(
        say(
          'warning',
          'unlike-stock',
          `${where} may use stock sheet ${id}, but its ${difference} is not that of ${sheet.id}; take ${id} out of the layout.`,
        ),
      );
    }
  }
  return findings;
}

/** Panels of one zone are of one steel, thickness, coating and face. */
function unlike(a: StockSheet, b: StockSheet): string | null {
  if (steelOf(a) !== steelOf(b)) return 'steel';
  if (a.thickness !== b.thickness) return 'thickness';
  if (a.coating !== b.coating) return 'coating';
  return a.hasFace !== b.hasFace ? 'face' : null;
}
