import type { FastifyInstance } from 'fastify'
import { notValid, type ProblemError } from './problem.ts'

/**
 * JSON is the one form of a body. The parser is Fastify's, which refuses `__proto__` and `constructor.prototype`; this
 * adds where a text stops being JSON, for a person who forgot the quotes round a fraction.
 */
export function readJsonBodies(app: FastifyInstance): void {
  app.removeContentTypeParser('text/plain') // it would answer 400, not 415
  const parse = app.getDefaultJsonParser('error', 'error')
  app.addContentTypeParser('application/json', { parseAs: 'string' }, (request, body, done) => {
    const text = String(body)
    void parse(request, text, (error, value) =>
      error === null ? done(null, value) : done(unreadable(text), undefined),
    )
  })
}

function unreadable(text: string): ProblemError {
  if (text.trim() === '') return notJson('the body is empty: send the input as JSON')
  try {
    JSON.parse(text)
  } catch (error) {
    const place = /line (\d+) column (\d+)/.exec(String(error))
    const where = place === null ? '' : ` at line ${place[1]}, column ${place[2]}`
    return notJson(
      `the body is not JSON${where}: names and fractions are written in double quotes, as in "bore": "5/8"`,
    )
  }
  return notJson('the names "__proto__" and "constructor" are not known here')
}

const notJson = (message: string): ProblemError => notValid([{ path: '', message }])
