import { hash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { stripTypeScriptTypes } from 'node:module'
import { dirname, join } from 'node:path/posix'

/** A module that a page needs: its path from the project's root, and its code without types. */
type BrowserModule = { readonly path: string; readonly code: string }

/** All of a page's modules, and a name that changes with any of them. */
type BrowserModules = { readonly build: string; readonly modules: readonly BrowserModule[] }

const IMPORT = /\bfrom\s*'([^']+)'|\bimport\s*'([^']+)'|\bimport\('([^']+)'\)/g

/**
 * A page's module and all that it imports, as a browser runs them: Node takes the types out, and leaves every name of a
 * module as it was, for the page's import map to lead on. Nothing else of the project can be had.
 *
 * @param of `root`, the project's folder, and `entry`, the path of the first module from there
 * @throws Error for a module that imports a package, which no browser would find
 */
export function browserModules(of: { readonly root: string; readonly entry: string }): BrowserModules {
  const modules = new Map<string, string>()
  const add = (path: string): void => {
    if (modules.has(path)) return
    const code = stripTypeScriptTypes(readFileSync(join(of.root, path), 'utf8'))
    modules.set(path, code)
    for (const [, ...names] of code.matchAll(IMPORT)) add(pathOf(path, names.find(Boolean) ?? ''))
  }
  add(of.entry)
  const sorted = Array.from(modules, ([path, code]) => ({ path, code })).sort((a, b) => (a.path < b.path ? -1 : 1))
  const build = hash('sha256', JSON.stringify(sorted), 'base64url').slice(0, 12)
  return { build, modules: sorted }
}

function pathOf(from: string, name: string): string {
  if (name.startsWith('./')) return join(dirname(from), name)
  if (name.startsWith('#shared/') || name.startsWith('#src/')) return name.slice(1)
  throw new Error(`${from} imports ${name}, which no browser would find`)
}
