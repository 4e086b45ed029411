import { cpSync, writeFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { emptyFolder } from '#tests/support/empty-folder.ts'
import { type Ran, run } from '#tests/support/run.ts'

export const GENERATORS = ['redocly', 'hey-api'] as const
export type Generator = (typeof GENERATORS)[number]

const CALLERS = join(import.meta.dirname, 'callers')
const SECOND = join(import.meta.dirname, 'hey-api')
const DOCUMENT = resolve('openapi/openapi.json')

/** Writes a client for the document into a folder; Hey API has its own compiler beside it, which is older than ours. */
const GENERATE: Readonly<Record<Generator, (folder: string) => Promise<Ran | undefined>>> = {
  redocly: (folder) => run('npm', ['run', '-s', 'client', '--', '--output', join(folder, 'client.ts')]),
  'hey-api': (folder) => {
    const output = { path: join(folder, 'client'), module: { extension: '.ts' } }
    const config = join(folder, 'openapi-ts.config.mjs')
    writeFileSync(config, `export default ${JSON.stringify({ input: DOCUMENT, output })}\n`)
    return run(process.execPath, [join(SECOND, 'node_modules/@hey-api/openapi-ts/bin/run.js'), '--file', config], {
      cwd: folder,
    })
  },
}
const COMPILER: Readonly<Record<Generator, string>> = {
  redocly: resolve('node_modules/typescript/bin/tsc'),
  'hey-api': join(SECOND, 'node_modules/typescript/bin/tsc'),
}

/**
 * Programs that call the service through a generated client, compiled as strictly as a caller can, all at once, for most of the
 * compiler's work is the client; and then run.
 *
 * @param programs by name; each imports whatever it asks from `./service.ts`
 * @returns what each prints, which must be JSON
 * @throws Error with what the generator, the compiler or a program says, where one of them fails
 */
export async function runWithClient<Name extends string>(
  generator: Generator,
  programs: Readonly<Record<Name, string>>,
  address: string,
): Promise<Readonly<Record<Name, unknown>>> {
  const folder = emptyFolder()
  succeeded(await GENERATE[generator](folder))
  writeFileSync(join(folder, 'package.json'), '{ "type": "module" }')
  cpSync(join(CALLERS, `${generator}.ts`), join(folder, 'service.ts'))
  const files = Object.entries<string>(programs).map(([name, program]) => {
    writeFileSync(join(folder, `${name}.ts`), program)
    return [name, `${name}.ts`] as const
  })

  const strictly = [
    '--strict',
    '--noEmit',
    '--module',
    'nodenext',
    '--target',
    'es2023',
    '--lib',
    'es2023,dom,dom.iterable',
  ]
  const types = ['--typeRoots', resolve('node_modules/@types'), '--types', 'node']
  const own = ['--allowImportingTsExtensions', '--skipLibCheck', ...files.map(([, file]) => file)]
  succeeded(await run(process.execPath, [COMPILER[generator], ...strictly, ...types, ...own], { cwd: folder }))
  const seen = await Promise.all(
    files.map(async ([name, file]) => {
      const ran = await run(process.execPath, [file], { cwd: folder, env: { ADDRESS: address } })
      return [name, JSON.parse(succeeded(ran))] as const
    }),
  )
  return Object.fromEntries(seen) as Record<Name, unknown>
}

function succeeded(ran: Ran | undefined): string {
  if (ran === undefined) throw new Error('the program must be installed: npm test does that')
  if (ran.code !== 0) throw new Error(`${ran.out}\n${ran.err}`)
  return ran.out
}
