/** How far a cut of asked depth x comes out from it: standard deviation √(absolute² + (relative · x)²) [mm]. */
export interface ToolError {
  readonly absolute: number
  readonly relative: number
}

/* Usual errors of tools: common practice, no source. */
export const SHARP_TOOL: ToolError = { absolute: 0.2, relative: 0.1 }
export const ABRASIVE: ToolError = { absolute: 0.05, relative: 0.05 }

export const cutDeviation = ({ absolute, relative }: ToolError, depth: number): number =>
  Math.sqrt(absolute * absolute + relative * depth * (relative * depth))
