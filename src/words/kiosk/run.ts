/** Words of the step that asks whether a bearing will run. */
export const RUN = {
  grooves: 'How far your grooves come out, either way',
  lots: (elements: string) => `How far a lot of ${elements} is off its size, either way`,
  usual:
    'Standard deviations. Left empty: 0.1 mm for a groove, and 0.6 of the scatter of the balls for a lot. Common practice, no source.',
  noGap: 'The cage keeps the balls apart: no gap of them must fit, and there is no chance to work out.',
  load: { rings: 'Load across the axle', plates: 'Load that lies on the turntable' },
  loads: 'Load and speed',
} as const

export const bandLine = (low: string, high: string): string => `Good from ${low} to ${high}.`
