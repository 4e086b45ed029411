import { vi } from 'vitest'

/**
 * Says that the other threads of this process have such a share of a processor, whatever else this machine does.
 *
 * @returns ends that
 */
export function shareOfProcessor(share: number): () => void {
  const others = vi.spyOn(process, 'cpuUsage')
  others.mockImplementation(() => ({ user: 1_000 * share * performance.now(), system: 0 }))
  const own = vi.spyOn(process, 'threadCpuUsage').mockReturnValue({ user: 0, system: 0 })
  return () => {
    others.mockRestore()
    own.mockRestore()
  }
}
