/*
 * What stands on the page that describes the paths, beside the descriptions of the paths themselves.
 */

export const DOCS = {
  title: 'Racewright: paths',
  workshop: 'The page for a screen in the workshop',
  document: 'The OpenAPI document',
  contents: 'Contents',
  open: 'Open',
  tryBearing: 'Try this bearing',
  example: 'Example',
  body: 'Request, as JSON',
  send: 'Send',
  answer: 'Answer',
  takes: 'It takes',
  answers: 'It answers',
  shapes: 'Shapes',
  shapesLead: 'Every shape that a request or an answer has, by its name.',
  field: 'Field',
  kind: 'Kind',
  meaning: 'Meaning',
  required: 'required',
  oneOf: 'One of',
} as const

/** The heading of each group of paths. */
export const GROUPS: Readonly<Record<string, string>> = {
  bearing: 'Bearings',
  drawings: 'Drawings and sheets',
  reference: 'Reference data',
  service: 'The service itself',
}
