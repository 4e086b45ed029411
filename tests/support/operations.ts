type Document = { readonly paths?: Readonly<Record<string, unknown>> }

/** The path that takes the example in a file: `design-inches.json` belongs to the operation `design`. */
export function pathOf(document: Document, file: string): string {
  const operationId = file.replace(/[-.].*$/, '')
  for (const [path, operations] of Object.entries(document.paths ?? {})) {
    if (typeof operations !== 'object' || operations === null) continue
    for (const operation of Object.values(operations) as { readonly operationId?: string }[]) {
      if (operation.operationId === operationId) return path
    }
  }
  throw new Error(`no operation has the id ${operationId}, which ${file} begins with`)
}
