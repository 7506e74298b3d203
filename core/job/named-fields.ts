import * as v from 'valibot';

/**
 * An object with these fields and any others. The library's own loose object also takes a list for an object
 * and loses fields that are called like parts of JavaScript ("constructor"); here lists are refused and every
 * field is kept.
 */
export function namedFields<const Entries extends v.ObjectEntries>(
  entries: Entries,
): v.LooseObjectSchema<Entries, undefined> {
  const schema = v.looseObject(entries);
  const run: (typeof schema)['~run'] = (dataset, config) => {
    const input = dataset.value;
    if (Array.isArray(input)) {
      v._addIssue(schema, 'type', dataset, config);
      return dataset as unknown as ReturnType<typeof run>;
    }
    const result = schema['~run'](dataset, config);
    for (const key of ['constructor', 'prototype']) {
      if (isObject(input) && Object.hasOwn(input, key)) {
        (result.value as Record<string, unknown>)[key] = (input as Record<string, unknown>)[key];
      }
    }
    return result;
  };
  return { ...schema, '~run': run };
}

function isObject(value: unknown): value is object {
  return typeof value === 'object' && value !== null;
}
