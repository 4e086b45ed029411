/** Words of the step that asks whether a bearing will run. */
export const RUN = {
  grooves: 'How far your grooves come out, either way',
  lots: 'How far a lot of balls is off its size, either way',
  usual:
    'Standard deviations. Left empty: 0.1 mm for a groove, and 0.6 of the scatter of the balls for a lot. Common practice, no source.',
  gap: 'Ball gap',
  good: 'good',
  load: 'Load across the axle',
  loads: 'Load and speed',
} as const

export const bandLine = (low: string, high: string): string => `Good from ${low} to ${high}.`
