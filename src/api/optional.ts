/** The same object without the fields that are undefined: an optional field is absent, never undefined. */
export function present<T extends object>(fields: { readonly [Name in keyof T]: T[Name] | undefined }): T {
  const kept: Partial<T> = {}
  for (const name in fields) {
    const value = fields[name]
    if (value !== undefined) kept[name] = value
  }
  // Every field of T that may not be absent was given: the parameter's type says so.
  return kept as T
}

/**
 * An answer whose fields may be undefined: JSON leaves those out. Where a table has many rows, all of one shape, V8 writes
 * them at twice the speed of rows that have a field more or less.
 */
export function written<T extends object>(fields: { readonly [Name in keyof T]: T[Name] | undefined }): T {
  return fields as T
}
