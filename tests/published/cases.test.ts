// The published cases that this project set out to meet, each with the file of this folder that holds it or the reason why
// none does. A case that is neither is missing.
import { existsSync, readFileSync } from 'node:fs'
import { expect, test } from 'vitest'

const IN_ALL = 108

const TESTED: Readonly<Record<string, readonly string[]>> = {
  'asme-wood-screws': ['screw-gauge', 'screw-withdrawal'],
  'astm-d143-janka': ['janka-definition'],
  'bearing-frequencies': [
    'bearing-freq-6205',
    'bearing-bpfo-1800rpm',
    'bearing-freq-catalogue-202K',
    'bearing-freq-catalogue-203K',
    'bearing-freq-catalogue-204K',
    'bearing-freq-catalogue-205K',
    'bearing-freq-catalogue-206K',
    'bearing-freq-catalogue-207K',
    'bearing-freq-catalogue-208K',
    'bearing-freq-catalogue-209K',
    'bearing-freq-catalogue-210K',
    'bearing-freq-catalogue-211K',
    'bearing-freq-catalogue-9106',
    'bearing-freq-catalogue-303K',
    'bearing-freq-catalogue-318W',
    'bearing-ftf-example',
  ],
  descartes: ['descartes-2-2-3', 'descartes-quad'],
  'engineering-toolbox-chords': ['chord-24-r3', 'chord-unit-radius'],
  'full-ring': ['full-ring-pitch'],
  'gauge-tolerance': ['gauge-10-percent-1', 'gauge-10-percent-2'],
  'harris-assembly-angle': ['conrad-assembly-angle'],
  'hertz-contacts': [
    'harris-209-curvature',
    'hertz-sphere-rigid-8mm',
    'hertz-two-25mm-balls',
    'hertz-effective-modulus-steel',
    'hamrock-brewe-209-inner',
    'hamrock-newer-fit',
    'hertz-exact-elliptic',
  ],
  'iso-76-conformity': ['iso76-groove-limits'],
  'jcgm-101': [
    'jcgm101-9.2.2-normal',
    'jcgm101-9.2.3-rectangular',
    'jcgm101-9.2.4-dominant',
    'jcgm101-9.3-mass',
    'jcgm101-9.5-gauge-block',
    'mc-square',
    'rss-three-rect',
  ],
  'lathe-speed': [
    'lathe-9000-4in',
    'lathe-9000-6in',
    'lathe-9000-8in',
    'lathe-9000-10in',
    'lathe-9000-12in',
    'lathe-9000-14in',
    'lathe-9000-16in',
    'lathe-9000-18in',
    'lathe-9000-20in',
    'lathe-range',
  ],
  'machinerys-handbook-chords': ['chord-table', 'chord-8-holes', 'chord-56'],
  'nist-linear-regression': ['nist-norris', 'nist-pontius'],
  'nist-univariate': ['nist-numacc1', 'nist-numacc2', 'nist-lew', 'nist-michelson', 'nist-mavro', 'nist-lottery'],
  'sjovall-load-integral': [
    'sjovall-jr-point',
    'sjovall-jr-line',
    'stribeck-zero-clearance',
    'stribeck-line',
    'half-zone-axial',
    'stribeck-practical',
    'stribeck-discrete',
  ],
  'steiner-chain': ['steiner-annular'],
  tables: [
    'wood-longitudinal',
    'wood-plywood',
    'janka-sugar-maple',
    'janka-northern-red-oak',
    'janka-American-beech',
    'janka-black-cherry',
    'janka-ponderosa-pine',
    'janka-shagbark-hickory',
    'janka-basswood',
  ],
  'wood-handbook-emc': [
    'emc-70F-30',
    'emc-70F-50',
    'emc-70F-65',
    'emc-70F-80',
    'emc-30F-30',
    'emc-100F-50',
    'emc-120F-80',
    'emc-rounded-70F-25',
    'emc-rounded-70F-60',
    'emc-rounded-70F-84',
    'emc-rounded-70F-87',
    'emc-rounded-70F-97',
    'emc-wengert',
  ],
  'wood-handbook-movement': [
    'wood-move-white-fir-mm',
    'wood-move-white-fir-in',
    'wood-move-white-fir-thickness-coefficient',
    'wood-move-red-oak-groove',
    'wood-move-mesquite',
    'wood-move-red-alder',
    'wood-shrink-glulam-4.34',
    'wood-shrink-ps20-lines',
    'wood-eq-13-3',
    'wood-rule-of-thumb',
  ],
  'wood-handbook-shrinkage': ['wood-coefficient-from-shrinkage'],
}

const WHY_NOT: Readonly<Record<string, string>> = {
  'iso76-permanent-deformation': 'a limit of dents for steel, which must not be used for wood: nothing here has it',
  'gum-h1':
    'its effective degrees of freedom and expanded uncertainty have no place in an answer here; its model is that of JCGM 101 9.5',
  'it14-10mm': 'no answer uses tolerance grades of ISO 286: a gap band comes from play and filling',
  'it14-100mm': 'no answer uses tolerance grades of ISO 286: a gap band comes from play and filling',
}

test.each(Object.keys(TESTED))('%s holds its cases', (file) => {
  const url = new URL(`./${file}.test.ts`, import.meta.url)
  expect(existsSync(url)).toBe(true)
  expect(readFileSync(url, 'utf8')).toContain('expect(')
})

test('every case is tested or says why not, once', () => {
  const named = [...Object.values(TESTED).flat(), ...Object.keys(WHY_NOT)]
  expect(new Set(named).size).toBe(named.length)
  expect(named.length).toBe(IN_ALL)
})
