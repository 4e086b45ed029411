import { EMBED_VIEWS } from '#src/embed/schema.ts'
import { escaped, page } from '#src/http/html.ts'
import { queryText } from '#src/http/query-text.ts'
import { type Example, examplesOf } from '#src/openapi/examples.ts'
import { DOCS, GROUPS } from '#src/words/docs.ts'
import { DOCS_STYLE } from './style.ts'

type Schema = {
  readonly $ref?: string
  readonly type?: string | readonly string[]
  readonly description?: string
  readonly properties?: Readonly<Record<string, Schema>>
  readonly required?: readonly string[]
  readonly items?: Schema
  readonly enum?: readonly unknown[]
  readonly const?: unknown
  readonly oneOf?: readonly Schema[]
  readonly anyOf?: readonly Schema[]
}
type Media = { readonly content?: Readonly<Record<string, { readonly schema?: Schema }>> }
type Operation = {
  readonly operationId: string
  readonly tags?: readonly string[]
  readonly summary?: string
  readonly description?: string
  readonly parameters?: readonly {
    readonly name: string
    readonly in: string
    readonly schema?: Schema
    readonly description?: string
    readonly required?: boolean
  }[]
  readonly requestBody?: Media
  readonly responses: Readonly<Record<string, Media & { readonly description?: string }>>
}

/** The part of the OpenAPI document that the page shows. */
export type Described = {
  readonly info: { readonly description?: string; readonly version: string }
  readonly tags?: readonly { readonly name: string }[]
  readonly paths: Readonly<Record<string, Readonly<Record<string, Operation>>>>
  readonly components: { readonly schemas: Readonly<Record<string, Schema>> }
}

/** A path with its methods: what can be asked by POST and by GET is one thing to a reader. */
type Path = { readonly path: string; readonly get?: Operation; readonly post?: Operation; readonly told: Operation }

/** The document as a page to read and to try: the story of each path first, its shapes last. */
export function docsPage({ info, tags = [], paths, components }: Described, script: string): string {
  const all = Object.entries(paths).flatMap(([path, { get, post }]): readonly Path[] => {
    const told = post ?? get
    return told === undefined ? [] : [{ path, told, ...(get && { get }), ...(post && { post }) }]
  })
  const groups = tags.map(({ name }) => ({ name, of: all.filter(({ told }) => told.tags?.includes(name)) }))
  const content = groups.map(({ name, of }) => [
    `<h2>${GROUPS[name] ?? escaped(name)}</h2><ul>`,
    ...of.map(({ told }) => `<li><a href="#${told.operationId}">${escaped(told.summary ?? '')}</a></li>`),
    '</ul>',
  ])
  const body = [
    `<header><h1>${DOCS.title}</h1>${prose(info.description ?? '')}`,
    `<p><a href="/">${DOCS.workshop}</a> · <a href="/openapi.json">${DOCS.document}</a> ${escaped(info.version)}</p></header>`,
    `<nav aria-label="${DOCS.contents}">${content.flat().join('')}</nav><main>`,
    ...groups.flatMap(({ name, of }) => [`<h2>${GROUPS[name] ?? escaped(name)}</h2>`, ...of.map(section)]),
    `<h2 id="shapes">${DOCS.shapes}</h2><p>${DOCS.shapesLead}</p>`,
    ...Object.entries(components.schemas).map(shape),
    '</main>',
  ]
  return page(DOCS.title, { style: DOCS_STYLE, script }, body.join(''))
}

function section({ path, get, post, told }: Path): string {
  const examples = examplesFor(told)
  const [first] = examples
  const methods = [...(post ? ['POST'] : []), ...(get ? ['GET'] : [])].join(', ')
  return [
    `<section id="${told.operationId}"><h3>${escaped(told.summary ?? '')}</h3><p><code>${methods} ${escaped(path)}</code></p>`,
    prose(told.description ?? ''),
    get === undefined ? '' : runnableGet(path, get, first),
    post === undefined || first === undefined ? '' : runnablePost(path, post, examples),
    shapesOf(told),
    '</section>',
  ].join('')
}

/** A path that draws or shows a bearing has no example of its own: that of a design serves. */
function examplesFor({ operationId, requestBody, parameters = [] }: Operation): readonly Example[] {
  const own = examplesOf(operationId).filter(({ status }) => status === 200)
  const takesDesign = requestBody !== undefined || parameters.some(({ name }) => name === 'balls.count')
  return own.length > 0 || !takesDesign ? own : examplesOf('design').slice(0, 1)
}

/** A path with the first of what each of its parts may be. */
const filledIn = (path: string, { parameters = [] }: Operation): string =>
  parameters
    .filter((parameter) => parameter.in === 'path')
    .reduce((filled, { name, schema }) => filled.replace(`{${name}}`, String(schema?.enum?.[0] ?? '')), path)

function runnableGet(path: string, get: Operation, example: Example | undefined): string {
  const query = example === undefined ? '' : (queryText(Object(example.request)) ?? '')
  const address = `${filledIn(path, get)}${query === '' ? '' : `?${query}`}`
  const [view] = EMBED_VIEWS
  const bearing =
    get.operationId === 'designByQuery' ? ` · <a href="/embed/${view}?${escaped(query)}">${DOCS.tryBearing}</a>` : ''
  return `<p><a href="${escaped(address)}">${DOCS.open}</a>${bearing}</p><pre tabindex="0">GET ${escaped(address)}</pre>`
}

function runnablePost(path: string, post: Operation, examples: readonly Example[]): string {
  const bodyOf = ({ request }: Example): string => JSON.stringify(request, null, 2)
  const [first] = examples
  const options = examples.map(
    (example) => `<option value="${escaped(bodyOf(example))}">${escaped(example.summary)}</option>`,
  )
  const choice = examples.length < 2 ? '' : `<p><label>${DOCS.example} <select>${options.join('')}</select></label></p>`
  return [
    `<form action="${escaped(filledIn(path, post))}">${choice}`,
    `<label>${DOCS.body}<textarea spellcheck="false" rows="12">${first === undefined ? '' : escaped(bodyOf(first))}</textarea></label>`,
    `<button>${DOCS.send}</button><pre tabindex="0" role="status" aria-label="${DOCS.answer}" hidden></pre></form>`,
  ].join('')
}

/** Links to the schemas of a path's request and answer. */
function shapesOf({ parameters = [], requestBody, responses }: Operation): string {
  const query = parameters.filter((parameter) => parameter.in === 'query')
  const bodies = Object.values(requestBody?.content ?? {}).flatMap(({ schema }) => (schema ? [kindOf(schema)] : []))
  const answered = Object.entries(responses).map(([status, { description = '', content = {} }]) => {
    const kinds = Object.entries(content).map(
      ([type, { schema }]) => `<code>${escaped(type)}</code> ${schema ? kindOf(schema) : ''}`,
    )
    return `<tr><td>${status}</td><td>${kinds.join('<br>')}</td><td>${escaped(description)}</td></tr>`
  })
  return [
    bodies.length === 0 ? '' : `<p>${DOCS.takes} ${bodies.join(', ')}.</p>`,
    requestBody === undefined && query.length > 0
      ? table(
          query.map(
            ({ name, schema = {}, description, required = false }) => [name, schema, required, description] as const,
          ),
        )
      : '',
    `<details><summary>${DOCS.answers}</summary><table><tbody>${answered.join('')}</tbody></table></details>`,
  ].join('')
}

/** One shape: its fields, or the shapes that it may be. */
function shape([name, schema]: readonly [string, Schema]): string {
  const { description = '', properties, required = [], oneOf, anyOf } = schema
  const variants = oneOf ?? anyOf
  const rows = Object.entries(properties ?? {}).map(
    ([field, own]) => [field, own, required.includes(field), own.description] as const,
  )
  return [
    `<details id="shape-${name}"><summary><code>${name}</code></summary>${prose(description)}`,
    variants === undefined ? '' : `<p>${DOCS.oneOf} ${variants.map(kindOf).join(', ')}.</p>`,
    rows.length === 0 ? (variants === undefined ? `<p>${kindOf({ ...schema })}</p>` : '') : table(rows),
    '</details>',
  ].join('')
}

type Row = readonly [name: string, schema: Schema, required: boolean, description: string | undefined]

const table = (rows: readonly Row[]): string =>
  [
    `<table><thead><tr><th scope="col">${DOCS.field}</th><th scope="col">${DOCS.kind}</th><th scope="col">${DOCS.meaning}</th></tr></thead><tbody>`,
    ...rows.map(
      ([name, schema, required, description = '']) =>
        `<tr><th scope="row"><code>${escaped(name)}</code>${required ? ` ${DOCS.required}` : ''}</th><td>${kindOf(schema)}</td><td>${code(description)}</td></tr>`,
    ),
    '</tbody></table>',
  ].join('')

/** The kind of a value, in a few words. */
function kindOf(schema: Schema): string {
  const { $ref, type, items, oneOf, anyOf, properties } = schema
  if ($ref !== undefined) {
    const name = escaped($ref.split('/').at(-1) ?? '')
    return `<a href="#shape-${name}">${name}</a>`
  }
  if (schema.enum !== undefined) return schema.enum.map((value) => `<code>${escaped(String(value))}</code>`).join(' ')
  if ('const' in schema) return `<code>${escaped(String(schema.const))}</code>`
  const variants = oneOf ?? anyOf
  if (variants !== undefined) return variants.map(kindOf).join(' or ')
  if (items !== undefined) return `list of ${kindOf(items)}`
  if (properties !== undefined)
    return Object.entries(properties)
      .map(([name, own]) => `<code>${escaped(name)}</code> ${kindOf(own)}`)
      .join(', ')
  return escaped([type ?? []].flat().join(' or '))
}

/** A description: its names are between backticks. */
const code = (text: string): string => escaped(text).replaceAll(/`([^`]+)`/g, '<code>$1</code>')
const prose = (text: string): string => (text === '' ? '' : `<p>${code(text)}</p>`)
