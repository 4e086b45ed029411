import type { Terms } from '#src/words/terms.ts'

/** The words in which a footstep is spoken of. */
export const FOOTSTEP_TERMS: Terms = {
  bearing: 'footstep',
  bearings: 'footsteps',
  pitchDiameter: 'pitch diameter',
  innerRaceway: 'the cup',
  gapCircle: 'the inside of the cup',
  outerWall: 'outside the cup',
  innerWall: 'between the bore and the cup',
  landGap: 'space over the cup',
  inside: 'a pin',
  gap: 'ball gap',
  acrossIt: 'across the cup',
  uncutMate: 'a pin that is not cut yet',
  innerTooFar: 'too small',
  cutSize: 'diameter',
  radially: ' all round',
  element: { one: 'ball', many: 'balls' },
  raceway: { one: 'cup', many: 'cups' },
  part: { one: 'cup', many: 'cups' },
  across: 'across the inside of the cup',
  tooFar: 'too wide',
  further: 'wider',
  lessFar: 'narrower',
  ofCut: 'all round',
  play: 'play',
}
