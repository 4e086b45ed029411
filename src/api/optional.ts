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
