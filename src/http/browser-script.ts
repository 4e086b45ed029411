import { readFileSync } from 'node:fs'
import { stripTypeScriptTypes } from 'node:module'
import { dirname, join } from 'node:path/posix'

const IMPORT = /^import (?:\* as (\w+)|\{([^}]*)\}) from '([^']+)'$/gm
const EXPORT = /^export ((?:async )?function|const|class) (\w+)/gm

/**
 * A page's module and all that it imports as one module script, to stand in the page itself. A page of one piece has all
 * its code from one build, arrives whole or not at all, and is stored in one go.
 *
 * Node takes the types out. Each module then becomes a function that returns what it exports, and they stand in the order
 * of their imports, which have no cycles.
 *
 * @param of `root`, the project's folder, and `entry`, the path of the first module from there
 * @throws Error for a module that imports a package, or that is written in a form which is not read here
 */
export function browserScript(of: { readonly root: string; readonly entry: string }): string {
  const functions = new Map<string, string>()
  const add = (path: string): string => {
    const known = functions.get(path)
    if (known !== undefined) return nameOf(path)
    const code = stripTypeScriptTypes(readFileSync(join(of.root, path), 'utf8'))
    const linked = code.replaceAll(IMPORT, (_, whole: string | undefined, names: string | undefined, from: string) => {
      const module = add(pathOf(path, from))
      return `const ${whole ?? `{${(names ?? '').replaceAll(/\b(\w+) as (\w+)/g, '$1: $2')}}`} = ${module}`
    })
    const exported = Array.from(linked.matchAll(EXPORT), ([, , name]) => name)
    const body = linked.replaceAll(EXPORT, '$1 $2')
    const unread = /^\s*(?:import|export)\b.*|\bimport[.(].*|<!--|<\/script.*/im.exec(body)
    if (unread !== null) throw new Error(`${path} has what cannot stand in the script of a page: ${unread[0]}`)
    functions.set(path, `const ${nameOf(path)} = (() => {\n${body}\nreturn { ${exported.join(', ')} }\n})()\n`)
    return nameOf(path)
  }
  add(of.entry)
  return [...functions.values()].join('')
}

/** The path as an identifier: no two paths have the same, since none has a $ of its own. */
const nameOf = (path: string): string => `$${path.replaceAll(/[^\w]/g, (sign) => `$${sign.codePointAt(0)}`)}`

function pathOf(from: string, name: string): string {
  if (name.startsWith('./')) return join(dirname(from), name)
  if (name.startsWith('#shared/') || name.startsWith('#src/')) return name.slice(1)
  throw new Error(`${from} imports ${name}, which no browser would find`)
}
