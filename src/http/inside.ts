import type { FastifyInstance, FastifyRequest } from 'fastify'
import { notValidBy } from './not-valid.ts'
import { type JsonSchema, schemaNamesOf } from './schema.ts'

/** A path as other parts of the service can ask it: what it takes, and what answers it as JSON. */
type InsidePath = {
  readonly schema: JsonSchema
  readonly answer: (input: unknown, request: FastifyRequest) => Promise<unknown>
}

declare module 'fastify' {
  interface FastifyInstance {
    /** Every computing path and every path of reference data, by its `operationId`. */
    insidePaths: Map<string, InsidePath>
    /**
     * Asks a path within the request of a caller, in whose name its work is admitted: the input is held to the schema of the
     * path, as a body is.
     *
     * @returns the JSON of a 200
     * @throws ProblemError with all that a caller of the path would be told
     * @throws RangeError for an `operationId` that no path has
     */
    askInside(operationId: string, input: object, request: FastifyRequest): Promise<unknown>
  }
}

/** Lets parts of the service ask its paths without HTTP. Before the routes. */
export function answerInside(app: FastifyInstance): void {
  app.decorate('insidePaths', new Map())
  app.decorate('askInside', async (operationId, input, request) => {
    const path = app.insidePaths.get(operationId)
    if (path === undefined) throw new RangeError(`operationId must be that of a path, got ${operationId}`)
    const errors = await errorsOf(path.schema, input, request)
    if (errors.length > 0) throw notValidBy(errors, input, path.schema, schemaNamesOf(app))
    return path.answer(input, request)
  })
}

/** A validator that is still to be compiled answers later, and then fails with its errors. */
async function errorsOf(schema: JsonSchema, input: object, request: FastifyRequest): Promise<readonly object[]> {
  const validate = request.compileValidationSchema(schema)
  try {
    return (await validate(input)) ? [] : (validate.errors ?? [{}])
  } catch (errors) {
    if (Array.isArray(errors)) return errors
    throw errors
  }
}
