type Document = { readonly paths?: Readonly<Record<string, unknown>> }

type Operation = { readonly method: 'GET' | 'POST'; readonly path: string }

/** The operation that takes the example in a file: `design-inches.json` belongs to the operation `design`. */
function operationOf(document: Document, file: string): Operation {
  const operationId = file.replace(/[-.].*$/, '')
  for (const [path, operations] of Object.entries(document.paths ?? {})) {
    if (typeof operations !== 'object' || operations === null) continue
    for (const [method, operation] of Object.entries(operations as Record<string, { readonly operationId?: string }>)) {
      if (operation.operationId === operationId) return { method: method === 'get' ? 'GET' : 'POST', path }
    }
  }
  throw new Error(`no operation has the id ${operationId}, which ${file} begins with`)
}

/** The request of an example as `inject` takes it: a query where the operation is a GET. */
export function injectionOf(document: Document, file: string, request: object) {
  const { method, path } = operationOf(document, file)
  if (method === 'POST') return { method, url: path, payload: request }
  const query = Object.fromEntries(Object.entries(request).map(([name, value]) => [name, String(value)]))
  return { method, url: path, query }
}
