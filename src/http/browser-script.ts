import { join } from 'node:path'

/** In the bundle this name is replaced by the scripts that were made with it, by their entry. */
declare const SCRIPTS_OF_BUNDLE: Readonly<Record<string, string>> | undefined

/** Everything that runs in a browser, by the module that it starts with. */
export const BROWSER_ENTRIES: readonly string[] = [
  'src/kiosk/main.tsx',
  'src/kiosk/later.ts',
  'src/kiosk/offline/service-worker.ts',
]

/** Replacements for modules that need Node. */
const INSTEAD: Readonly<Record<string, string>> = {
  '#src/http/computing-route.ts': 'src/kiosk/offline/computing-route.ts',
  'node:crypto': 'src/kiosk/offline/node-builtins.ts',
  'node:http': 'src/kiosk/offline/node-builtins.ts',
}

type Entry = {
  /** The project's folder. */
  readonly root: string
  /** The path of the first module from there. */
  readonly entry: string
}

/**
 * A module for a browser and all that it imports, as one small script without types. A page of one piece has all its code
 * from one build, arrives whole or not at all, and is stored in one go.
 *
 * The bundled service brings its scripts along; from its sources it makes them when they are first asked for.
 *
 * @throws Error for a module that cannot be found or read
 */
export async function browserScript({ root, entry }: Entry): Promise<string> {
  const made = typeof SCRIPTS_OF_BUNDLE === 'undefined' ? undefined : SCRIPTS_OF_BUNDLE[entry]
  return made ?? bundled({ root, entry })
}

async function bundled({ root, entry }: Entry): Promise<string> {
  const { rolldown } = await import('rolldown') // of no use to a service whose scripts are made
  const bundle = await rolldown({
    input: `./${entry}`,
    cwd: root,
    platform: 'browser',
    tsconfig: false,
    // No getter of ours does anything: a table that nobody reads goes, spread into another or not.
    treeshake: { propertyReadSideEffects: false },
    resolve: { alias: Object.fromEntries(Object.entries(INSTEAD).map(([from, path]) => [from, join(root, path)])) },
    transform: { jsx: { runtime: 'automatic', importSource: 'preact' } },
    logLevel: 'silent',
  })
  const { output } = await bundle.generate({ format: 'es', minify: true, codeSplitting: false })
  await bundle.close()
  // A script that stands in a page would end at its own text.
  return output[0].code.replaceAll(/<(\/script|!--)/gi, '\\x3C$1')
}
