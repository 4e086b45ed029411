/** The views of a bearing. */
export const VIEWS = ['assembly', 'templates', 'gauges'] as const
export type View = (typeof VIEWS)[number]
