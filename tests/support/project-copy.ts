import { cpSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { emptyFolder } from './empty-folder.ts'

const COPIED = ['src', 'shared', 'openapi', 'package.json', 'package-lock.json', 'tsconfig.json', '.rolldown.config.ts']

/** One text of one file, and what stands there in the other build. */
type Change = { readonly file: string; readonly from: string; readonly to: string }

/** The project in a folder of its own, with changes: another build of it. The folder is gone when the test is over. */
export function projectCopy(...changes: readonly Change[]): string {
  const root = emptyFolder()
  for (const name of COPIED) cpSync(name, join(root, name), { recursive: true })
  symlinkSync(resolve('node_modules'), join(root, 'node_modules'))
  for (const { file, from, to } of changes) {
    const text = readFileSync(join(root, file), 'utf8')
    if (!text.includes(from)) throw new Error(`${file} does not have ${from}`)
    writeFileSync(join(root, file), text.replaceAll(from, to))
  }
  return root
}
