/** The machines with which the rings are made: choices of a job sheet. */
export const METHODS = ['saw-and-lathe', 'lathe-only', 'router-and-lathe'] as const
export type Method = (typeof METHODS)[number]
