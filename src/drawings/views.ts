import type { Design } from '#shared/bearing/design.ts'
import { assemblySheet } from '#src/drawings/sheets/assembly.ts'
import type { Drawing } from './model.ts'
import type { Paper } from './papers.ts'

export const VIEWS = ['assembly'] as const
export type View = (typeof VIEWS)[number]

/** What there is to see of a bearing. */
export const drawingOf: Readonly<Record<View, (design: Design, paper: Paper) => Drawing>> = { assembly: assemblySheet }
