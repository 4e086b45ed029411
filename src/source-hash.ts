import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { join, relative } from 'node:path'

/** Everything that decides what the service answers: our code, how it is bundled, and the exact packages under it. */
const SOURCES = ['src', 'shared', '.rolldown.config.ts', 'package-lock.json']

/**
 * A name for the sources of a project: equal for equal files, whatever the machine, and different as soon as any of them
 * differs.
 *
 * @param root the project's folder
 * @returns 12 hexadecimal digits
 * @throws Error when a source cannot be read
 */
export function sourceHash(root: string): string {
  const sum = createHash('sha256')
  for (const path of SOURCES.flatMap((name) => filesUnder(root, name)).sort()) {
    const content = readFileSync(join(root, path))
    sum.update(`${path}\n${content.length}\n`).update(content)
  }
  return sum.digest('hex').slice(0, 12)
}

/** Paths from the root, with strokes. Hidden files inside a folder belong to an editor, not to the project. */
function filesUnder(root: string, name: string): readonly string[] {
  if (name.includes('.')) return [name]
  return readdirSync(join(root, name), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && !entry.name.startsWith('.'))
    .map(({ parentPath, name: file }) => relative(root, join(parentPath, file)).replaceAll('\\', '/'))
}
