import { execFile } from 'node:child_process'

export type Ran = { readonly code: number; readonly out: string; readonly err: string }

type Options = { readonly cwd?: string; readonly input?: string; readonly env?: Readonly<Record<string, string>> }

/** Runs a program to its end, as a caller's shell would; `undefined` where this machine has no such program. */
export function run(
  program: string,
  args: readonly string[],
  { cwd = process.cwd(), input = '', env: own = {} }: Options = {},
): Promise<Ran | undefined> {
  return new Promise((resolve) => {
    const env = { ...process.env, REDOCLY_TELEMETRY: 'off', NO_COLOR: '1', ...own }
    const child = execFile(program, [...args], { cwd, env, maxBuffer: 2 ** 26 }, (error, out, err) => {
      if (error !== null && 'code' in error && error.code === 'ENOENT') resolve(undefined)
      else resolve({ code: error === null ? 0 : Number(error.code ?? 1), out, err })
    })
    child.stdin?.on('error', () => {})
    child.stdin?.end(input)
  })
}
