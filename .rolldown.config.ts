import { cpSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { defineConfig } from 'rolldown'
import { BROWSER_ENTRIES, browserScript } from './src/http/browser-script.ts'
import { sourceHash } from './src/source-hash.ts'

const DIST = 'dist/server'

/** The tested program, bundled: every module is the one that the tests run. Node needs no package and no TypeScript for it. */
const output = {
  dir: DIST,
  format: 'cjs',
  minify: true,
  entryFileNames: '[name].cjs',
  chunkFileNames: '[name].cjs',
} as const

/**
 * Fastify loads the first two where it has no serializer and where it is asked without HTTP: the service gives it one, and listens.
 * What bundles is not bundled: the scripts for a browser are made here.
 */
const NEVER_LOADED = ['@fastify/fast-json-stringify-compiler', 'light-my-request', 'rolldown']

/** What a PDF is set in. */
const FONTS = ['DejaVuSans.ttf', 'DejaVuSans-Bold.ttf']

type Locked = { readonly version: string; readonly license?: string; readonly dev?: true; readonly optional?: true }

/** Every package that the lock file has for running, with its licence and the texts that it comes with. */
function notice(): string {
  const { packages }: { packages: Record<string, Locked> } = JSON.parse(readFileSync('package-lock.json', 'utf8'))
  const parts = Object.entries(packages)
    .filter(([folder, { dev, optional }]) => folder !== '' && !dev && !optional)
    .map(([folder, { version, license }]) => {
      const name = folder.split('node_modules/').at(-1) ?? folder
      const texts = readdirSync(folder)
        .filter((file) => /^(licen[cs]e|copying|notice)/i.test(file))
        .sort()
        .map((file) => readFileSync(join(folder, file), 'utf8').replaceAll('\r', '').trim())
      return [`${name} ${version}${license ? ` (${license})` : ''}`, ...texts].join('\n\n')
    })
  return ['Racewright is made with these packages.', ...parts].join(`\n\n${'-'.repeat(80)}\n\n`).concat('\n')
}

/** Made once, for all who run the bundle. */
const scripts = Object.fromEntries(
  await Promise.all(
    BROWSER_ENTRIES.map(async (entry) => [entry, await browserScript({ root: process.cwd(), entry })] as const),
  ),
)

export default defineConfig([
  {
    // A worker thread starts from a file of its own, beside the server's.
    input: { server: 'src/server.ts', thread: 'src/workers/thread.ts' },
    platform: 'node',
    // Node takes the types out of the sources without it, and so does this.
    tsconfig: false,
    // The bundle answers as its sources do, with their entity tags.
    transform: {
      define: {
        ENGINE_OF_BUNDLE: JSON.stringify(sourceHash(process.cwd())),
        SCRIPTS_OF_BUNDLE: JSON.stringify(scripts),
      },
    },
    external: NEVER_LOADED,
    output: { ...output, cleanDir: true },
    plugins: [
      {
        name: 'files that are read, not loaded',
        writeBundle() {
          writeFileSync(join(DIST, '../NOTICE'), notice())
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
