/** What of a bearing is drawn. */
export const VIEWS = ['assembly', 'templates', 'gauges'] as const
export type View = (typeof VIEWS)[number]
