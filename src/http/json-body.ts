import type { FastifyInstance } from 'fastify'
import { notValid, type ProblemError } from './problem.ts'
import { EMPTY_BODY, FORBIDDEN_NAMES, notJson, tooDeep, tooManyContainers, tooManyNames } from './sentences.ts'

/** No input has a quarter of this depth. To nest 65,000 lists took the parser ten times as long as any other such body. */
const MOST_DEPTH = 64

/** No input has half as many. Of 12,000 objects with a name of its own each the parser makes 12,000 classes. */
const MOST_NAMES = 2_000

/**
 * Lists and objects together. The largest valid input has 1,232. Tens of thousands of empty ones cost the parser little, and
 * the collector that clears them away ten times as much.
 */
const MOST_CONTAINERS = 2_000

/**
 * JSON is the one form of a body. The parser is Fastify's, which refuses `__proto__` and `constructor.prototype`; this
 * adds where a text stops being JSON, for a person who forgot the quotes round a fraction.
 */
export function readJsonBodies(app: FastifyInstance): void {
  app.removeContentTypeParser('text/plain') // it would answer 400, not 415
  const parse = app.getDefaultJsonParser('error', 'error')
  app.addContentTypeParser('application/json', { parseAs: 'string' }, (request, body, done) => {
    const text = String(body)
    const refusal = refusalOf(text)
    if (refusal !== undefined) return done(wrongBody(refusal), undefined)
    void parse(request, text, (error, value) =>
      error === null ? done(null, value) : done(unreadable(text), undefined),
    )
  })
}

const [QUOTE, BACKSLASH, COLON] = [0x22, 0x5c, 0x3a]
const [OPEN_LIST, CLOSE_LIST, OPEN_OBJECT, CLOSE_OBJECT] = [0x5b, 0x5d, 0x7b, 0x7d]

/**
 * Why a text is not given to the parser, from the signs outside of its strings alone: that takes a tenth of the time.
 * Whether it is JSON at all is for the parser to say.
 */
function refusalOf(json: string): string | undefined {
  let depth = 0
  let names = 0
  let containers = 0
  let isString = false
  for (let index = 0; index < json.length; index += 1) {
    const code = json.charCodeAt(index)
    if (code === QUOTE) isString = !isString
    else if (isString) index += code === BACKSLASH ? 1 : 0
    else if (code === COLON) names += 1
    else if (code === OPEN_LIST || code === OPEN_OBJECT) {
      depth += 1
      containers += 1
    } else if (code === CLOSE_LIST || code === CLOSE_OBJECT) depth -= 1
    if (depth > MOST_DEPTH) return tooDeep(MOST_DEPTH)
    if (names > MOST_NAMES) return tooManyNames(MOST_NAMES)
    if (containers > MOST_CONTAINERS) return tooManyContainers(MOST_CONTAINERS)
  }
  return undefined
}

function unreadable(text: string): ProblemError {
  if (text.trim() === '') return wrongBody(EMPTY_BODY)
  try {
    JSON.parse(text)
  } catch (error) {
    const [, line, column] = /line (\d+) column (\d+)/.exec(String(error)) ?? []
    return wrongBody(line === undefined || column === undefined ? notJson() : notJson({ line, column }))
  }
  return wrongBody(FORBIDDEN_NAMES)
}

const wrongBody = (message: string): ProblemError => notValid([{ path: '', message }])
