import { cpSync } from 'node:fs'
import { join } from 'node:path'
import { defineConfig, type Plugin } from 'rolldown'
import { sourceHash } from './src/source-hash.ts'

const DIST = 'dist/server'

/** Node runs it as it is: no package, no TypeScript, one module where there were five hundred. */
const output = {
  dir: DIST,
  format: 'cjs',
  minify: true,
  entryFileNames: '[name].cjs',
  chunkFileNames: '[name].cjs',
} as const

/** Log lines go to standard output: pino's transports, threads of their own, are not used. */
const PINO_INSTEAD: Readonly<Record<string, string>> = { 'thread-stream': 'module.exports = undefined' }

/** Stands in for TypeBox. */
const PLAIN_SCHEMAS = 'src/http/plain-schemas.ts'

/** What a PDF is set in. */
const FONTS = ['DejaVuSans.ttf', 'DejaVuSans-Bold.ttf']

const late = (name: string) => `process.getBuiltinModule('${name}')`

/**
 * Modules that are dear to load, and what the bundle has in their place. A proxy speaks TLS and HTTP/2 for us, so those
 * are loaded by whoever touches them. Fastify's own serializer and validator are replaced by ours (which brings Ajv,
 * later), and nobody asks it without HTTP. Whether its plugins fit its version is checked whenever the service runs from
 * its sources, with the same versions.
 */
const FASTIFY_INSTEAD: Readonly<Record<string, string>> = {
  'node:https': `module.exports = new Proxy({}, { get: (_, name) => ${late('node:https')}[name] })`,
  'node:http2': `module.exports = new Proxy({}, { get: (_, name) => ${late('node:http2')}[name] })`,
  '@fastify/ajv-compiler': 'module.exports = undefined',
  '@fastify/fast-json-stringify-compiler': 'module.exports = undefined',
  'light-my-request': 'module.exports = undefined',
  'node:perf_hooks': 'module.exports = { performance }',
  semver: 'module.exports = { satisfies: () => true }',
}
/** Entity tags and policies can wait for it, and so can the page for the workshop. */
const OURS_INSTEAD: Readonly<Record<string, string>> = {
  'node:crypto': `export const hash = (...given) => ${late('node:crypto')}.hash(...given)`,
  'node:fs/promises': `export const readFile = (...given) => ${late('node:fs/promises')}.readFile(...given)`,
}

const INSTEAD: readonly (readonly [importers: RegExp, modules: Readonly<Record<string, string>>])[] = [
  [/\/node_modules\/fastify\//, FASTIFY_INSTEAD],
  [/\/node_modules\/pino\//, PINO_INSTEAD],
  [/\/src\/(http|api|kiosk)\//, OURS_INSTEAD],
]

const instead: Plugin = {
  name: 'instead',
  resolveId(id, importer = '') {
    const from = importer.replaceAll('\\', '/')
    const found = INSTEAD.find(([importers]) => importers.test(from))
    return found !== undefined && Object.hasOwn(found[1], id) ? `\0instead-of-${id}` : null
  },
  load(id) {
    if (!id.startsWith('\0instead-of-')) return null
    const name = id.slice('\0instead-of-'.length)
    return INSTEAD.find(([, modules]) => Object.hasOwn(modules, name))?.[1][name] ?? null
  },
}

export default defineConfig([
  {
    // A worker thread starts from a file of its own, beside the server's.
    input: { server: 'src/server.ts', thread: 'src/workers/thread.ts' },
    platform: 'node',
    // The bundle answers as its sources do, with their entity tags.
    transform: { define: { ENGINE_OF_BUNDLE: JSON.stringify(sourceHash(process.cwd())) } },
    resolve: { alias: { typebox: join(import.meta.dirname, PLAIN_SCHEMAS) } },
    output: { ...output, cleanDir: true },
    plugins: [
      instead,
      {
        name: 'files that are read, not loaded',
        writeBundle() {
          cpSync('node_modules/@fastify/swagger-ui/static', join(DIST, '../static'), { recursive: true })
          for (const font of FONTS)
            cpSync(`node_modules/dejavu-fonts-ttf/ttf/${font}`, join(DIST, '../fonts', font), { recursive: true })
        },
      },
    ],
  },
  {
    // What the pool of threads starts in each of them; it looks for it by this name, in the folder it is itself in.
    input: { worker: 'node_modules/piscina/dist/worker.js' },
    platform: 'node',
    // Sets a thread's priority, where it is there; we ask for none.
    external: [/^@napi-rs\/nice/],
    output: { ...output, entryFileNames: '[name].js' },
    plugins: [
      {
        name: 'a folder of CommonJS',
        generateBundle() {
          this.emitFile({ type: 'asset', fileName: 'package.json', source: '{ "type": "commonjs" }\n' })
        },
      },
    ],
  },
])
