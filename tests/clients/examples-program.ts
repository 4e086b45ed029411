import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

const FOLDER = join(import.meta.dirname, '../../openapi/examples')

export type Example = {
  readonly name: string
  readonly operationId: string
  readonly request: object
  readonly status: number
  readonly response: { readonly arrangement?: string }
}

/** Every example of the document, in the order of their names. */
export const EXAMPLES: readonly Example[] = readdirSync(FOLDER)
  .toSorted()
  .map((file) => {
    const example: Omit<Example, 'name'> = JSON.parse(readFileSync(join(FOLDER, file), 'utf8'))
    const name = file.replace('.json', '')
    return { ...example, name, operationId: name.replace(/-.*/, ''), status: example.status ?? 200 }
  })

/**
 * A caller's program that sends every example and prints what comes back, by name. Requests and answers stand in it as
 * literals, so the compiler holds each of them to the client's types.
 *
 * @param isReference whether an operation takes a query instead of a body
 */
export function examplesProgram(isReference: (operationId: string) => boolean): string {
  const operations = [...new Set(EXAMPLES.map(({ operationId }) => operationId))]
  const types = operations.map((operationId) => `type ${responseOf(operationId)}`)
  const sent = EXAMPLES.map(({ name, operationId, request, status, response }) => {
    const asked = `${operationId}({ ${isReference(operationId) ? 'query' : 'body'}: ${JSON.stringify(request)} })`
    const shown = `${JSON.stringify(response)} satisfies ${status === 200 ? responseOf(operationId) : 'Problem'}`
    const answered = `await ${status === 200 ? 'answerTo' : 'problemOf'}(${asked})`
    return `seen[${JSON.stringify(name)}] = { answered: ${answered}, shown: ${shown} }`
  })
  return [
    `import { answerTo, problemOf, type Problem, ${operations.join(', ')}, ${types.join(', ')} } from './service.ts'`,
    'const seen: Record<string, { answered: unknown; shown: unknown }> = {}',
    ...sent,
    'console.log(JSON.stringify(seen))',
  ].join('\n')
}

const responseOf = (operationId: string): string => `${operationId[0]?.toUpperCase()}${operationId.slice(1)}Response`
