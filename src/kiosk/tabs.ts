import { element } from './elements.ts'

const NAMES = ['choose', 'fit', 'sheet'] as const

/** The three tabs, by pointer and by keyboard (arrows, Home, End). */
export function startTabs(): void {
  const tabs = NAMES.map((name) => element(`tab-${name}`, HTMLButtonElement))
  const open = (index: number): void => {
    for (const [at, tab] of tabs.entries()) {
      const isOpen = at === index
      tab.setAttribute('aria-selected', String(isOpen))
      tab.tabIndex = isOpen ? 0 : -1
      element(NAMES[at] ?? '', HTMLElement).hidden = !isOpen
    }
  }
  for (const [index, tab] of tabs.entries()) {
    tab.addEventListener('click', () => open(index))
    tab.addEventListener('keydown', ({ key }) => {
      const next = nextIndex(key, index, tabs.length)
      if (next === undefined) return
      open(next)
      tabs[next]?.focus()
    })
  }
}

function nextIndex(key: string, index: number, count: number): number | undefined {
  if (key === 'ArrowRight') return (index + 1) % count
  if (key === 'ArrowLeft') return (index + count - 1) % count
  if (key === 'Home') return 0
  return key === 'End' ? count - 1 : undefined
}
