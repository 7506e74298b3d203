import { describe, expect, it } from 'vitest';
import { parsePacks } from '../../../web/price/packs-text';
import { mixingFields, notchFields, productFields } from '../../../web/price/product-fields';
import { parseField, type SettingField } from '../../../web/price/setting-fields';

const field = (kind: SettingField['kind']): SettingField => ({ path: 'at', label: 'what', kind });
const faultOf = (kind: SettingField['kind'], text: string) => {
  const entry = parseField(field(kind), text);
  return 'fault' in entry ? entry.fault : null;
};
const byPath = (path: string) =>
  [...productFields, ...notchFields, ...mixingFields].find((one) => one.path === path)!;

describe('what is typed into a field of the Price station', () => {
  it('is refused where it is empty and needed, else taken out', () => {
    expect(faultOf({ of: 'number', most: 100, needed: true }, ' ')).toBe('Type a number from 0 to 100.');
    expect(faultOf({ of: 'money', needed: true }, '')).toBe('Type an amount, such as 6.40.');
    expect(faultOf({ of: 'text', needed: true }, '')).toBe('Type something here, or take the row out.');
    expect(parseField(field({ of: 'money' }), '')).toEqual({ value: undefined });
  });

  it('leaves an empty list of packs, not none', () => {
    expect(parseField(field({ of: 'packs' }), '')).toEqual({ value: [] });
  });

  it.each(['-1', 'text', '<b>x</b>', 'NaN', 'Infinity', '1e9', 'x'.repeat(10_000)])(
    'is no number above 0 as %.12s',
    (text) => {
      expect(parseField(byPath('spreadingRate'), text)).toEqual({
        fault: 'Type a number above 0, at most 1000000.',
      });
    },
  );

  it.each(['spreadingRate', 'thickness', 'tool.notch.width', 'mixing.parts.0'])(
    'is no %s as 0, as the job file takes none',
    (path) => {
      expect('fault' in parseField(byPath(path), '0')).toBe(true);
      expect(parseField(byPath(path), '0,25')).toEqual({ value: 0.25 });
    },
  );

  it.each(['mixing.potLife', 'tool.notch.bridge'])(
    'cannot be emptied where %s goes on without it',
    (path) => {
      expect('fault' in parseField(byPath(path), '')).toBe(true);
    },
  );

  it('is no longer than the job file takes, each part for itself', () => {
    expect(faultOf({ of: 'text' }, 'x'.repeat(2001))).toContain('2001 characters');
    expect(faultOf({ of: 'text' }, 'x'.repeat(2000))).toBeNull();
    expect(faultOf({ of: 'texts' }, `${'x'.repeat(1500)};${'y'.repeat(1500)}`)).toBeNull();
  });

  it('is said again in part only where it is long', () => {
    const packs = parsePacks('x'.repeat(10_000));
    expect('fault' in packs && packs.fault.length).toBeLessThan(140);
    expect(faultOf({ of: 'days' }, 'x'.repeat(10_000))!.length).toBeLessThan(140);
  });
});
