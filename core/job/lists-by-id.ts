import * as v from 'valibot';

/** Stands before every id while the library looks at it, so that no id is a name that it drops. */
const mark = '=';

/**
 * Lists under the ids of what they belong to: `{ "A": […], "B": […] }`. The library's own record also takes a list for
 * an object and loses ids that are called like parts of JavaScript ("constructor"); here lists are refused and every
 * id is kept.
 */
export function listsById<const List extends v.BaseSchema<unknown, unknown[], v.BaseIssue<unknown>>>(
  list: List,
): v.RecordSchema<v.StringSchema<undefined>, List, undefined> {
  const schema = v.record(v.string(), list);
  const run: (typeof schema)['~run'] = (dataset, config) => {
    const input = dataset.value;
    if (typeof input !== 'object' || input === null || Array.isArray(input)) {
      v._addIssue(schema, 'type', dataset, config);
      return dataset as unknown as ReturnType<typeof run>;
    }
    const marked = Object.fromEntries(Object.entries(input).map(([id, value]) => [mark + id, value]));
    const result = schema['~run']({ typed: false, value: marked }, config);
    for (const { path } of result.issues ?? []) {
      if (path) Object.assign(path[0], { key: String(path[0].key).slice(mark.length), input });
    }
    const read = Object.entries(result.value as object).map(([id, value]) => [id.slice(mark.length), value]);
    return { ...result, value: Object.fromEntries(read) as unknown } as ReturnType<typeof run>;
  };
  return { ...schema, '~run': run };
}
